// SPDX-License-Identifier: Apache-2.0
package fourfold.progress;

import fourfold.facts.Operation;

/**
 * When a table is taught at home: its multiplication and its division, each in a school week, by progress, or when the
 * parent says so.
 *
 * @param multiply the school week of its multiplication, {@link #BY_PROGRESS} or {@link #WHEN_TAUGHT}
 * @param divide the same of its division
 */
public record TableLessons(int multiply, int divide) {
    /** The drill opens it when the child has come so far. */
    public static final int BY_PROGRESS = 0;

    /** It stays closed until the parent says that it was taught. */
    public static final int WHEN_TAUGHT = -1;

    /** The last week that can be named. */
    public static final int LAST_WEEK = 150;

    /** Both by progress. */
    public static final TableLessons NONE = new TableLessons(BY_PROGRESS, BY_PROGRESS);

    public TableLessons {
        check(multiply);
        check(divide);
    }

    private static void check(int week) {
        if (week < WHEN_TAUGHT || week > LAST_WEEK) {
            throw new IllegalArgumentException("a school week is from 1 to " + LAST_WEEK + ", not " + week);
        }
    }

    /** The week of one of them, {@link #BY_PROGRESS} or {@link #WHEN_TAUGHT}. */
    public int week(Operation operation) {
        return operation == Operation.MULTIPLY ? multiply : divide;
    }

    /** The same with another week for one of them. */
    public TableLessons with(Operation operation, int week) {
        return operation == Operation.MULTIPLY ? new TableLessons(week, divide) : new TableLessons(multiply, week);
    }

    /**
     * Lessons as they are kept, {@code 12/16}: a number for a week, {@code -} for by progress, {@code later} for when it is
     * taught.
     *
     * @throws IllegalArgumentException if the text is nothing of the kind
     */
    static TableLessons parse(String text) {
        int between = text.indexOf('/');
        if (between < 0) {
            throw new IllegalArgumentException("lessons are written 12/16, not \"" + text + "\"");
        }
        return new TableLessons(week(text.substring(0, between)), week(text.substring(between + 1)));
    }

    private static int week(String text) {
        return switch (text) {
            case "-" -> BY_PROGRESS;
            case "later" -> WHEN_TAUGHT;
            default -> {
                int week = Integer.parseInt(text);
                if (week < 1) {
                    throw new IllegalArgumentException("no week " + text);
                }
                yield week;
            }
        };
    }

    private static String text(int week) {
        return week == BY_PROGRESS ? "-" : week == WHEN_TAUGHT ? "later" : Integer.toString(week);
    }

    /** As it is parsed. */
    @Override
    public String toString() {
        return text(multiply) + "/" + text(divide);
    }
}
