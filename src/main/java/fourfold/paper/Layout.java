// SPDX-License-Identifier: Apache-2.0
package fourfold.paper;

/**
 * How a page is set.
 *
 * @param paper its size
 * @param large whether letters are large: fewer questions stand on a page then
 */
public record Layout(Paper paper, boolean large) {
    /** The margin at each edge, which every printer leaves. */
    static final int MARGIN = 12;

    /** How many questions stand in a column. */
    int rows() {
        return large ? 10 : 20;
    }

    /** Millimetres of paper between the margins, sideways; a little less, since a browser rounds. */
    double width() {
        return paper == Paper.A4 ? 210 - 2 * MARGIN : 215.9 - 2 * MARGIN;
    }

    /** Millimetres of paper between the margins, up and down; a little less, since a browser rounds. */
    double height() {
        return (paper == Paper.A4 ? 297 : 279.4) - 2 * MARGIN - 0.6;
    }

    /** The size of letters in points: as usual, or half as large again. */
    int letters(int usual) {
        return large ? usual * 3 / 2 : usual;
    }
}
