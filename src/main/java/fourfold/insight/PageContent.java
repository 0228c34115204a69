package fourfold.insight;

import fourfold.facts.Question;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/** What stands on a page to print, without a word of any language. */
public sealed interface PageContent {
    /**
     * Cards to cut out.
     *
     * @param name the child's nickname
     * @param questions at most {@link PaperQuestions#CARDS}
     */
    record Cards(String name, List<Question> questions) implements PageContent {
        public Cards {
            questions = List.copyOf(questions);
        }
    }

    /**
     * Questions to answer by hand.
     *
     * @param day of the child, on which the page was made
     * @param questions at most {@link PaperQuestions#MOST}
     */
    record Practice(String name, LocalDate day, List<Question> questions) implements PageContent {
        public Practice {
            questions = List.copyOf(questions);
        }
    }

    /**
     * The last page: the stairs are whole.
     *
     * @param day of the child, on which the last stone was laid
     */
    record Whole(String name, LocalDate day) implements PageContent {}

    /** The table of all products. */
    record Table() implements PageContent {}

    /**
     * Where a child stands.
     *
     * @param day of the child, on which the page was made
     * @param stones what was ever reached
     * @param drills the rates, oldest first
     * @param tables in the order in which they open
     * @param forecast what the last look ahead came to; empty if there was none
     */
    record Report(
            String name,
            LocalDate day,
            LifetimeProgress stones,
            List<DrillRates.OfDrill> drills,
            List<TableCount> tables,
            Weeks weeks,
            Optional<Forecast> forecast)
            implements PageContent {
        public Report {
            drills = List.copyOf(drills);
            tables = List.copyOf(tables);
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
