// SPDX-License-Identifier: Apache-2.0
package fourfold.upkeep;

import java.util.EnumMap;
import java.util.Map;

/**
 * How many rows of each kind were written; a kind that is not named has none.
 *
 * @param counts by kind, each 0 or more
 */
public record RowCounts(Map<Kind, Integer> counts) {
    /** No row at all. */
    public static final RowCounts NONE = new RowCounts(Map.of());

    /** What a row of a family's file may be. */
    public enum Kind {
        /** A child. */
        CHILD,
        /** A drill session. */
        DRILL,
        /** An answer. */
        ANSWER,
        /** A parent's action. */
        ACTION
    }

    public RowCounts {
        counts = Map.copyOf(counts);
    }

    /** The same with {@code more} rows of that kind added. */
    public RowCounts plus(Kind kind, int more) {
        Map<Kind, Integer> sum = new EnumMap<>(Kind.class);
        sum.putAll(counts);
        sum.merge(kind, more, Integer::sum);
        sum.values().removeIf(n -> n == 0);
        return new RowCounts(sum);
    }

    /** How many rows of that kind. */
    public int of(Kind kind) {
        return counts.getOrDefault(kind, 0);
    }
}
