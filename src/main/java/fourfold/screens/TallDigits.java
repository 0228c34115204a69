// SPDX-License-Identifier: Apache-2.0
package fourfold.screens;

import fourfold.terminal.Picture;
import java.util.List;

/** How tall the digits of a question are: as tall as there is room for, and the same throughout a drill. */
public enum TallDigits {
    /** Letters as they are, where the longest question has no room in tall ones. */
    PLAIN(BigDigits.Size.SMALL, 0),
    SMALL(BigDigits.Size.SMALL, 1),
    TALL(BigDigits.Size.TALL, 1),
    TALLEST(BigDigits.Size.TALL, 2);

    /** Room for 100 ÷ 10 = and an answer of three digits in small ones. */
    private static final int NARROWEST = 50;

    private final BigDigits.Size size;
    private final int times;

    TallDigits(BigDigits.Size size, int times) {
        this.size = size;
        this.times = times;
    }

    /** On a sheet of this size. */
    public static TallDigits on(Picture picture) {
        if (picture.width() < NARROWEST) {
            return PLAIN;
        }
        if (picture.width() >= 130 && picture.height() >= 36) {
            return TALLEST;
        }
        return picture.width() >= 76 && picture.height() >= 22 ? TALL : SMALL;
    }

    /** Rows of a digit. */
    public int height() {
        return times == 0 ? 1 : size.rows() * times;
    }

    /** Columns of so many digits side by side. */
    public int width(int places) {
        return times == 0 ? places : BigDigits.width("0".repeat(places), size) * times;
    }

    /** Columns from one digit's left edge to the next one's. */
    public int step() {
        return width(2) - width(1);
    }

    /** A text in these digits. */
    public List<String> rows(String text, Picture picture) {
        if (times == 0) {
            return List.of(text);
        }
        List<String> rows = BigDigits.rows(text, size, picture.unicode());
        return times == 1 ? rows : Doubling.of(rows);
    }
}
