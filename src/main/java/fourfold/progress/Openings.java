// SPDX-License-Identifier: Apache-2.0
package fourfold.progress;

import fourfold.facts.Families;
import fourfold.facts.Family;
import fourfold.facts.Operation;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/**
 * What the home's calendar opens on one day. A family is open as soon as one of its two tables is: 2 × 7 comes with the
 * 2s. A division belongs to the table it divides by: 14 ÷ 7 has its sign when dividing by 7 is taught.
 */
final class Openings {
    /** Whether divisions by a number have their sign. */
    enum Sign {
        OPEN,
        CLOSED,
        /** By the child's progress. */
        BY_PROGRESS
    }

    private static final long NO_DAY = Long.MIN_VALUE;

    private final Steering steering;
    private final long day;
    private final List<Family> order;
    private final Set<Integer> tables;

    private Openings(Steering steering, long day, List<Integer> tables) {
        this.steering = steering;
        this.day = day;
        this.tables = Set.copyOf(tables);
        this.order = steering.introducedBy(tables);
    }

    /** No day is looked at, and no date holds anything back. */
    static Openings always(Steering steering) {
        return new Openings(steering, NO_DAY, steering.order());
    }

    /**
     * What is open on a day: tables that have reached their date, the newest first, for that is what is taught at home,
     * and of one day what the parent said was taught; then those that go by progress, in the parent's order.
     *
     * @param day the local day, counted from 1 January 1970
     */
    static Openings on(Steering steering, long day) {
        Calendar calendar = steering.calendar();
        if (!calendar.isFollowed()) {
            return new Openings(steering, day, steering.order());
        }
        LocalDate date = LocalDate.ofEpochDay(day);
        List<Integer> tables = new ArrayList<>(steering.order().stream()
                .filter(t -> calendar.opens(t, Operation.MULTIPLY)
                        .filter(opens -> !opens.isAfter(date))
                        .isPresent())
                .sorted(Comparator.comparing((Integer t) ->
                                calendar.opens(t, Operation.MULTIPLY).orElseThrow())
                        .thenComparing(t -> calendar.taught().containsKey(new Calendar.Lesson(t, Operation.MULTIPLY)))
                        .reversed())
                .toList());
        steering.order().stream()
                .filter(t -> calendar.isByProgress(t, Operation.MULTIPLY))
                .forEach(tables::add);
        return new Openings(steering, day, tables);
    }

    /** Whether it is of that day. */
    boolean isOn(long localDay) {
        return day == localDay;
    }

    /** The families that may be introduced, in their order. */
    List<Family> order() {
        return order;
    }

    /** Those that might be if no table had a date; what has reached its date comes first. */
    List<Family> orderWithoutDates() {
        List<Family> all = new ArrayList<>(order);
        steering.introductionOrder().stream().filter(f -> !all.contains(f)).forEach(all::add);
        return all;
    }

    /** See {@link Progress#nextNew}. */
    Optional<Family> nextNew(Progress progress) {
        return firstUnmet(progress, among(progress, steering.resets().keySet()))
                .or(() -> firstUnmet(progress, among(progress, steering.focused())))
                .or(() -> firstUnmet(progress, ofNewTables(progress)))
                .or(() -> firstUnmet(progress, order));
    }

    /** The families of tables that were opened and have brought none yet: each brings its first before others go on. */
    private List<Family> ofNewTables(Progress progress) {
        if (day == NO_DAY || !steering.calendar().isFollowed()) {
            return List.of();
        }
        return order.stream()
                .filter(f -> !progress.isMet(f) && Dates.isFirstOfANewTable(progress, f))
                .toList();
    }

    /** Those of the families that are not on hold, in the order of introduction; what only a closed table brings last. */
    private List<Family> among(Progress progress, Set<Family> wished) {
        if (wished.isEmpty()) {
            return List.of();
        }
        return Stream.concat(order.stream(), Families.all().stream())
                .filter(f -> wished.contains(f) && !progress.isHeld(f))
                .distinct()
                .toList();
    }

    private static Optional<Family> firstUnmet(Progress progress, List<Family> families) {
        for (Family family : families) {
            if (!progress.isMet(family)) {
                return Optional.of(family);
            }
        }
        return Optional.empty();
    }

    /** See {@link Progress#isAllSetAside}; what waits for its date was not set aside. */
    boolean isAllSetAside(Progress progress) {
        return Families.all().stream()
                .allMatch(f -> progress.isHeld(f)
                        || !(progress.isMet(f) || mayCome(progress, f) || progress.isBeforeItsDate(f)));
    }

    /** Whether the family may be introduced. */
    boolean mayCome(Progress progress, Family family) {
        return order.contains(family) || steering.focused().contains(family) || progress.isToBeginAgain(family);
    }

    /** Whether one of the family's tables is open, by its date, by progress or by hand. */
    boolean isOpen(Family family) {
        return isOpen(family.low()) || isOpen(family.high());
    }

    private boolean isOpen(int table) {
        return tables.contains(table) || steering.opened().contains(table);
    }

    /** Whether divisions by a number have their sign. */
    Sign sign(int divisor) {
        Calendar calendar = steering.calendar();
        if (calendar.isByProgress(divisor, Operation.DIVIDE)) {
            return Sign.BY_PROGRESS;
        }
        if (day == NO_DAY) {
            return Sign.OPEN;
        }
        return calendar.opens(divisor, Operation.DIVIDE)
                        .filter(opens -> opens.toEpochDay() <= day)
                        .isPresent()
                ? Sign.OPEN
                : Sign.CLOSED;
    }

    /** The local day on which the calendar has opened a table's multiplication; empty if it has not. */
    Optional<Long> sinceOpened(int table) {
        return steering.closed().contains(table)
                ? Optional.empty()
                : steering.calendar()
                        .opens(table, Operation.MULTIPLY)
                        .map(LocalDate::toEpochDay)
                        .filter(opened -> opened <= day);
    }

    /** Whether the day that is looked at is another or one of the so many days after it. */
    boolean isWithin(LocalDate other, int days) {
        return other.toEpochDay() <= day && day - other.toEpochDay() < days;
    }

    /** Whether the day that is looked at lies so many weeks after another, or is not known. */
    boolean isAfter(long other, int weeks) {
        return day == NO_DAY || (other <= day && day - other >= 7L * weeks);
    }
}
