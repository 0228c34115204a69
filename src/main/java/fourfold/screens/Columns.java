// SPDX-License-Identifier: Apache-2.0
package fourfold.screens;

import fourfold.insight.TraceRecord;
import java.util.List;

/** A row of columns, one for each week: as tall as the number is large; a gap for a week without one. */
public final class Columns {
    /** By eighths of the tallest; three heights, since not every common font has more. */
    private static final String TALL = "__▄▄▄▄██";

    private Columns() {}

    /**
     * The newest weeks that fit.
     *
     * @param weeks oldest first, at least one
     * @param columns how many characters there are
     * @param most what the tallest column stands for
     */
    public static String of(List<TraceRecord.Week> weeks, int columns, double most) {
        long last = weeks.get(weeks.size() - 1).week();
        long first = Math.max(weeks.get(0).week(), last - columns + 1);
        StringBuilder row = new StringBuilder();
        int next = 0;
        for (long week = first; week <= last; week++) {
            while (next < weeks.size() && weeks.get(next).week() < week) {
                next++;
            }
            boolean there = weeks.get(next).week() == week;
            row.append(there ? column(weeks.get(next).seconds(), most) : ' ');
        }
        return row.toString();
    }

    private static char column(double value, double most) {
        int height = most <= 0 ? 0 : (int) Math.ceil(value / most * TALL.length()) - 1;
        return TALL.charAt(Math.max(0, Math.min(TALL.length() - 1, height)));
    }
}
