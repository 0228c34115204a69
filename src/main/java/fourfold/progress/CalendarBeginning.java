// SPDX-License-Identifier: Apache-2.0
package fourfold.progress;

import fourfold.facts.Families;
import java.util.Map;
import java.util.TreeMap;

/** What a parent can begin a calendar's tables from. Each is changed afterwards as the home likes. */
public enum CalendarBeginning {
    /** Every table by the child's progress. */
    PROGRESS,
    /**
     * The order of England's national curriculum (mathematics programmes of study, key stages 1 and 2, 2013): 2, 5, 10 in
     * year 2, then 3, 4, 8 in year 3, then 6, 9, 7 in year 4. The weeks are our own choice: it is spread over one school
     * year, the later tables get more time, a table's division comes four weeks after its multiplication, and the last
     * weeks are free for what is not yet firm. The 1s come as rules, by progress; they are divided by when division begins.
     */
    ENGLAND,
    /** Nothing opens before the parent says so. */
    EMPTY;

    private static final int[][] ENGLISH = {{2, 1}, {5, 3}, {10, 5}, {3, 8}, {4, 11}, {8, 14}, {6, 18}, {9, 22}, {7, 26}
    };
    private static final int WEEKS_TO_DIVISION = 4;

    /** Its name on the command line. */
    public String key() {
        return name().toLowerCase(java.util.Locale.ROOT);
    }

    /** When it says that each of the ten tables is taught. */
    public Map<Integer, TableLessons> lessons() {
        Map<Integer, TableLessons> lessons = new TreeMap<>();
        TableLessons all = this == EMPTY
                ? new TableLessons(TableLessons.WHEN_TAUGHT, TableLessons.WHEN_TAUGHT)
                : TableLessons.NONE;
        for (int table = 1; table <= Families.LARGEST_FACTOR; table++) {
            lessons.put(table, all);
        }
        if (this == ENGLAND) {
            for (int[] one : ENGLISH) {
                lessons.put(one[0], new TableLessons(one[1], one[1] + WEEKS_TO_DIVISION));
            }
            lessons.put(1, new TableLessons(TableLessons.BY_PROGRESS, ENGLISH[0][1] + WEEKS_TO_DIVISION));
        }
        return lessons;
    }
}
