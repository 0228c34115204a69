// SPDX-License-Identifier: Apache-2.0
package fourfold.insight;

import fourfold.facts.Families;
import java.util.List;
import java.util.Locale;

/**
 * What a parent chooses for a page of questions.
 *
 * @param tables families of these tables, met or not; empty for all families that were met
 * @param asked how they are asked
 * @param pick which of them come first
 * @param count the most questions, or families, on a page; at least 2
 */
public record PageChoice(List<Integer> tables, Asked asked, Pick pick, int count) {
    public PageChoice {
        tables = List.copyOf(tables);
        tables.forEach(Families::checkTable);
        if (count < 2) {
            throw new IllegalArgumentException("a page has two questions or more, not " + count);
        }
    }

    /** What is printed when nothing was chosen: whatever needs it most. */
    public static PageChoice usual(PageKind kind) {
        return new PageChoice(
                List.of(), kind == PageKind.MINUTE ? Asked.PRODUCTS : Asked.BOTH, Pick.DUE, Math.max(2, kind.most()));
    }

    /** The same for another number of questions. */
    public PageChoice withCount(int other) {
        return new PageChoice(tables, asked, pick, other);
    }

    /** How facts are asked. */
    public enum Asked {
        /** Each family as a product and as a division. */
        BOTH,
        /** 7 × 8. */
        PRODUCTS,
        /** 56 ÷ 7. */
        QUOTIENTS,
        /** 7 × ? = 56. */
        MISSING;

        /** Its name in texts and on the command line. */
        public String key() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    /** Which families come first. */
    public enum Pick {
        /** What needs practice most: the lowest level, then what fades, then what was right less often. */
        DUE,
        /** All mixed. */
        MIXED;

        /** Its name in texts and on the command line. */
        public String key() {
            return name().toLowerCase(Locale.ROOT);
        }
    }
}
