// SPDX-License-Identifier: Apache-2.0
package fourfold.screens;

import fourfold.terminal.Picture;
import java.util.List;
import java.util.Optional;

/** How tall the digits of a question are: as tall as there is room for, and the same throughout a drill. */
public enum TallDigits {
    /** Letters as they are, where the longest question has no room in tall ones. */
    PLAIN(Optional.empty(), 0, 0),
    SMALL(Optional.of(BigDigits.Size.SMALL), 50, 0),
    TALL(Optional.of(BigDigits.Size.TALL), 76, 22),
    TALLER(Optional.of(BigDigits.Size.TALLER), 118, 37),
    TALLEST(Optional.of(BigDigits.Size.TALLEST), 157, 41);

    private final Optional<BigDigits.Size> size;
    private final int narrowest;
    private final int lowest;

    /** From a sheet of so many columns and rows on. */
    TallDigits(Optional<BigDigits.Size> size, int narrowest, int lowest) {
        this.size = size;
        this.narrowest = narrowest;
        this.lowest = lowest;
    }

    /** The tallest with which 10 × 10 = 100 and a picture beneath have room on a sheet of this size. */
    public static TallDigits on(Picture picture) {
        TallDigits tallest = PLAIN;
        for (TallDigits digits : values()) {
            if (picture.width() >= digits.narrowest && picture.height() >= digits.lowest) {
                tallest = digits;
            }
        }
        return tallest;
    }

    /** Whether there is so much room that letters alone would look lost. */
    public static boolean isRoomy(Picture picture) {
        return on(picture).compareTo(TALLER) >= 0;
    }

    /** Rows of a digit. */
    public int height() {
        return size.map(BigDigits.Size::rows).orElse(1);
    }

    /** Columns of so many digits side by side. */
    public int width(int places) {
        return size.map(s -> BigDigits.width("0".repeat(places), s)).orElse(places);
    }

    /** Columns from one digit's left edge to the next one's. */
    public int step() {
        return width(2) - width(1);
    }

    /** A text in these digits. */
    public List<String> rows(String text, Picture picture) {
        return size.map(s -> BigDigits.rows(text, s, picture.unicode())).orElse(List.of(text));
    }
}
