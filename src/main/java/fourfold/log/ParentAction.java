// SPDX-License-Identifier: Apache-2.0
package fourfold.log;

import fourfold.facts.Families;
import fourfold.facts.Family;
import fourfold.facts.Operation;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;

/** What a parent can do to steer a child's practice. Actions are kept; none of them deletes an answer. */
public sealed interface ParentAction {
    /** Practise this family more, until it is fluent. */
    record Focus(Family family) implements ParentAction {}

    /** Leave this family out for now. */
    record Hold(Family family) implements ParentAction {}

    /** Neither focus nor hold any longer. */
    record Release(Family family) implements ParentAction {}

    /** Begin this family again: earlier answers stay in the log and no longer count towards its level. */
    record Reset(Family family) implements ParentAction {}

    /** Open a table by hand, whatever the order says. */
    record OpenTable(int table) implements ParentAction {
        public OpenTable {
            Families.checkTable(table);
        }
    }

    /** Close a table: families that only it has opened are not introduced. */
    record CloseTable(int table) implements ParentAction {
        public CloseTable {
            Families.checkTable(table);
        }
    }

    /** The order in which tables open. */
    record Order(List<Integer> tables) implements ParentAction {
        public Order {
            tables = List.copyOf(tables);
            if (tables.size() != Families.LARGEST_FACTOR
                    || tables.stream().distinct().count() != tables.size()
                    || tables.stream().anyMatch(t -> t < 1 || t > Families.LARGEST_FACTOR)) {
                throw new InvalidValue(Reason.ORDER, Families.LARGEST_FACTOR, tables);
            }
        }
    }

    /** Set one of the child's settings; the name and the text are checked where settings are read. */
    record Choose(String setting, String chosen) implements ParentAction {
        /** The choice of another name for the child. */
        public static final String NAME = "name";

        /** The choice to put the child away, {@code yes}, or to bring the child back, {@code no}. */
        public static final String AWAY = "archived";

        /** The statement that another row of the file is the same child; its text is that row's id. */
        public static final String SAME = "same";

        /** Whether it says who the child is, and not how the child practises. */
        public boolean isOfWhoTheChildIs() {
            return setting.equals(NAME) || setting.equals(AWAY) || setting.equals(SAME);
        }
    }

    /**
     * Write something into the home's calendar; part and text are checked where the calendar is read.
     *
     * @param part which part of the calendar, such as {@code start}
     * @param text what it is to be, such as {@code 2026-09-07}
     */
    record CalendarEntry(String part, String text) implements ParentAction {}

    /**
     * A table's multiplication or division was taught at home, on the day of the action.
     *
     * @param table 1 to 10
     */
    record Taught(int table, Operation operation) implements ParentAction {
        public Taught {
            Families.checkTable(table);
        }
    }

    /**
     * The child practised away from the screen.
     *
     * @param day on which day, where the child was
     */
    record Away(LocalDate day, AwayPractice practice) implements ParentAction {}

    /** Take back an earlier action. Taking back an undo brings the action back. */
    record Undo(UUID action) implements ParentAction {}
}
