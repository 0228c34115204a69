// SPDX-License-Identifier: Apache-2.0
package fourfold.outlook;

import fourfold.facts.Families;
import fourfold.facts.Family;
import fourfold.log.ParentAction;
import fourfold.progress.Mastery;
import fourfold.progress.Progress;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/** Something a parent could change to reach the goal sooner. */
public sealed interface Change {
    /** Practise on so many days a week. */
    record MoreDays(int aWeek) implements Change {}

    /** Put into focus what is not yet fluent of a table. */
    record FocusOn(int table) implements Change {}

    /** Leave out for now what only these tables bring. */
    record FewerTables(List<Integer> tables) implements Change {
        public FewerTables {
            tables = List.copyOf(tables);
        }

        /** The families left out: both their tables are. */
        public List<Family> families() {
            return Families.all().stream()
                    .filter(f -> tables.contains(f.low()) && tables.contains(f.high()))
                    .toList();
        }
    }

    /** The most tables that are left out. Our own choice. */
    int MOST_TABLES = 4;

    /** The most days a week that are asked of a family. Our own choice. */
    int MOST_DAYS = 6;

    /**
     * What could be changed, of each kind the smallest change first.
     *
     * @param progress what the child has reached
     * @param daysAWeek on how many days a week there is practice now
     */
    static List<Change> toTry(Progress progress, double daysAWeek) {
        List<Change> changes = new ArrayList<>();
        IntStream.rangeClosed((int) Math.floor(daysAWeek) + 1, MOST_DAYS)
                .mapToObj(MoreDays::new)
                .forEach(changes::add);
        List<Integer> hardest = hardest(progress);
        changes.add(new FocusOn(hardest.get(0)));
        IntStream.rangeClosed(1, MOST_TABLES)
                .mapToObj(n -> new FewerTables(hardest.subList(0, n)))
                .forEach(changes::add);
        return changes;
    }

    /** All tables, those with the fewest fluent families first, of equal ones the last in the parent's order. */
    private static List<Integer> hardest(Progress progress) {
        List<Integer> order = progress.steering().order();
        return order.stream()
                .sorted(Comparator.comparingLong((Integer table) -> fluent(progress, table))
                        .thenComparing(order::indexOf, Comparator.reverseOrder()))
                .toList();
    }

    private static long fluent(Progress progress, int table) {
        return Families.inTable(table).stream()
                .filter(f -> progress.level(f).atLeast(Mastery.FLUENT))
                .count();
    }

    /** What the parent would do for it in the program. */
    default List<ParentAction> actions(Progress progress) {
        if (this instanceof FocusOn focus) {
            return Families.inTable(focus.table()).stream()
                    .filter(f -> !progress.level(f).atLeast(Mastery.FLUENT))
                    .<ParentAction>map(ParentAction.Focus::new)
                    .toList();
        }
        return this instanceof FewerTables fewer
                ? fewer.families().stream()
                        .<ParentAction>map(ParentAction.Hold::new)
                        .toList()
                : List.of();
    }

    /** Whether the other is a change of the same kind, so that one of them is enough to be told. */
    default boolean isLike(Change other) {
        return getClass() == other.getClass();
    }
}
