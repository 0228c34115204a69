// SPDX-License-Identifier: Apache-2.0
package fourfold.plain;

import java.util.ArrayList;
import java.util.List;

/** Columns of plain text, each as wide as its longest cell and no narrower than asked for. */
final class TextTable {
    private static final String GAP = " ";

    private final boolean toTheRight;
    private final int[] widths;
    private final List<List<String>> rows = new ArrayList<>();

    /**
     * With no row yet.
     *
     * @param toTheRight whether cells stand at the right of their column
     * @param narrowest for each column how many characters it has at least
     */
    TextTable(boolean toTheRight, int... narrowest) {
        this.toTheRight = toTheRight;
        this.widths = narrowest.clone();
    }

    /** Adds a row, with a cell for each column. */
    TextTable row(List<String> cells) {
        rows.add(List.copyOf(cells));
        for (int column = 0; column < widths.length; column++) {
            widths[column] = Math.max(widths[column], cells.get(column).length());
        }
        return this;
    }

    /** The lines, each with its end; nothing but text stands at the end of a line. */
    String lines() {
        StringBuilder text = new StringBuilder();
        for (List<String> row : rows) {
            StringBuilder line = new StringBuilder();
            for (int column = 0; column < widths.length; column++) {
                String space = " ".repeat(widths[column] - row.get(column).length());
                line.append(column == 0 ? "" : GAP)
                        .append(toTheRight ? space + row.get(column) : row.get(column) + space);
            }
            text.append(line.toString().stripTrailing()).append('\n');
        }
        return text.toString();
    }
}
