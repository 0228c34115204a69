// SPDX-License-Identifier: Apache-2.0
package fourfold.progress;

import fourfold.facts.Families;
import fourfold.facts.Family;
import fourfold.facts.MissingFactor;
import fourfold.facts.Operation;
import fourfold.facts.Prompt;
import fourfold.facts.Question;
import fourfold.facts.Trace;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;

/** What the dates of the home's calendar mean for what a child has reached. */
public final class Dates {
    /** Where divisions come later by progress, they come so many weeks after their product. Our own choice. */
    public static final int WEEKS_TO_DIVISION = 4;

    /** So many days a parent is reminded that a table was taught. Our own choice. */
    private static final int DAYS_LATELY = 7;

    private Dates() {}

    /** The tables whose multiplication or division the parent said was taught, on the day looked at or in the week before. */
    public static Set<Integer> taughtLately(Progress progress) {
        return progress.steering().calendar().taught().entrySet().stream()
                .filter(said -> progress.openings().isWithin(said.getValue(), DAYS_LATELY))
                .map(said -> said.getKey().table())
                .collect(Collectors.toUnmodifiableSet());
    }

    /**
     * Whether the family waits for the date of its first table: the parent's calendar has not reached it, and the parent
     * has not asked for the family in another way. What was met before waits as well, unless the parent allows what is
     * known to be practised early.
     */
    public static boolean isBeforeItsDate(Progress progress, Family family) {
        Steering steering = progress.steering();
        return !progress.openings().isOpen(family)
                && !(progress.isMet(family) && steering.calendar().early())
                && !progress.isFocused(family)
                && !steering.resets().containsKey(family);
    }

    /** Whether nothing may be asked because what is not on hold waits for its date. */
    public static boolean isBeforeAll(Progress progress) {
        return Families.all().stream().anyMatch(f -> isBeforeItsDate(progress, f))
                && Families.all().stream()
                        .allMatch(f -> progress.isHeld(f)
                                || isBeforeItsDate(progress, f)
                                || !(progress.isMet(f) || progress.openings().mayCome(progress, f)));
    }

    /** Whether a division may be asked with its sign; until then it is asked as a missing factor, 7 × ? = 56. */
    public static boolean hasSign(Progress progress, Trace division) {
        return switch (progress.openings().sign(division.divisor())) {
            case OPEN -> true;
            case CLOSED -> false;
            case BY_PROGRESS ->
                !progress.steering().settings().divisionsLater()
                        || (progress.mastery(division.family().index()).level().atLeast(Mastery.ACCURATE)
                                && progress.openings().isAfter(progress.since(division.family()), WEEKS_TO_DIVISION));
        };
    }

    /** The question as it may be shown: with its sign, unless that has not come yet. */
    public static Prompt signed(Progress progress, Question question) {
        boolean waits = question.operation() == Operation.DIVIDE && !hasSign(progress, question.trace());
        return waits ? new MissingFactor(question) : question;
    }

    /**
     * Whether the family comes with a table that the calendar has opened and that has brought no family since: the first
     * one comes in the next drill, whatever else the child carries.
     */
    public static boolean isFirstOfANewTable(Progress progress, Family family) {
        return isFirstOf(progress, family.low()) || isFirstOf(progress, family.high());
    }

    private static boolean isFirstOf(Progress progress, int table) {
        return progress.openings()
                .sinceOpened(table)
                .filter(opened -> Families.inTable(table).stream()
                        .noneMatch(f -> progress.isMet(f) && progress.since(f) >= opened))
                .isPresent();
    }

    /**
     * The families that may be asked though they were never taught here: those that may be introduced, and where the
     * parent allows it those whose date has not come.
     */
    public static List<Family> askedUntaught(Progress progress) {
        return progress.steering().calendar().early()
                ? progress.openings().orderWithoutDates()
                : progress.introductionOrder();
    }
}
