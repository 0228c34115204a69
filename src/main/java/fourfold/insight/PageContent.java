// SPDX-License-Identifier: Apache-2.0
package fourfold.insight;

import fourfold.facts.Fact;
import fourfold.facts.Family;
import fourfold.facts.MissingFactor;
import fourfold.facts.Prompt;
import fourfold.facts.Question;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** What stands on a page to print, without a word of any language. */
public sealed interface PageContent {
    /** Which page it is. */
    PageKind kind();

    /** Whose page it is; empty for one that fits any child. */
    default String name() {
        return "";
    }

    /**
     * Questions: a practice page, cards, a game.
     *
     * @param name the child's nickname
     * @param day of the child, on which the page was made
     * @param number by which its answers are entered; 0 if it has none
     * @param prompts at most {@link PageKind#most()}
     */
    record Questions(PageKind kind, String name, LocalDate day, int number, List<Prompt> prompts)
            implements PageContent {
        public Questions {
            prompts = List.copyOf(prompts);
        }
    }

    /**
     * Families as a whole.
     *
     * @param name the child's nickname
     * @param day of the child, on which the page was made
     * @param families at most {@link PageKind#most()}
     * @param waiting divisions whose sign has not come yet at home
     */
    record OfFamilies(PageKind kind, String name, LocalDate day, List<Family> families, Set<Question> waiting)
            implements PageContent {
        public OfFamilies {
            families = List.copyOf(families);
            waiting = Set.copyOf(waiting);
        }

        /** The question of a fact as it may be printed: 7 × ? = 56 while its sign waits. */
        public Prompt asked(Fact fact) {
            return waiting.contains(fact.question()) ? new MissingFactor(fact.question()) : fact.question();
        }
    }

    /**
     * The last page: the stairs are whole.
     *
     * @param day of the child, on which the last stone was laid
     */
    record Whole(String name, LocalDate day) implements PageContent {
        @Override
        public PageKind kind() {
            return PageKind.WHOLE;
        }
    }

    /** The table of all products. */
    record Table() implements PageContent {
        @Override
        public PageKind kind() {
            return PageKind.TABLE;
        }
    }

    /**
     * What the pages and games of the coming weeks need.
     *
     * @param name the child's nickname
     * @param day of the child, from which on the weeks are counted
     */
    record Supplies(String name, LocalDate day, ComingWeeks weeks) implements PageContent {
        @Override
        public PageKind kind() {
            return PageKind.SUPPLIES;
        }
    }

    /**
     * What a child did and came to in a period.
     *
     * @param kind for the child, or for whoever asks for a report
     * @param day of the child, on which the page was made
     * @param forecast what the last look ahead came to; empty if there was none
     */
    record Report(PageKind kind, LocalDate day, Portfolio portfolio, Optional<Forecast> forecast)
            implements PageContent {
        @Override
        public String name() {
            return portfolio.name();
        }
    }

    /**
     * A look ahead that was made earlier: when all families may be fluent.
     *
     * @param made the day it was made
     * @param early one of ten such children is there by then; empty if too few were by {@code until}
     * @param middle five of ten
     * @param late nine of ten; where it is empty there is no range to tell
     * @param until the last day that was looked at
     */
    record Forecast(
            LocalDate made,
            Optional<LocalDate> early,
            Optional<LocalDate> middle,
            Optional<LocalDate> late,
            LocalDate until) {}
}
