package fourfold.screens;

import fourfold.terminal.Picture;
import java.util.List;

/** How tall the digits of a question are: as tall as there is room for. */
public enum TallDigits {
    SMALL(BigDigits.Size.SMALL, 1),
    TALL(BigDigits.Size.TALL, 1),
    TALLEST(BigDigits.Size.TALL, 2);

    private final BigDigits.Size size;
    private final int times;

    TallDigits(BigDigits.Size size, int times) {
        this.size = size;
        this.times = times;
    }

    /** Where question and answer have the screen to themselves. */
    public static TallDigits on(Picture picture) {
        if (picture.width() >= 130 && picture.height() >= 36) {
            return TALLEST;
        }
        return picture.width() >= 76 && picture.height() >= 22 ? TALL : SMALL;
    }

    /** Where a picture stands below them. */
    public static TallDigits besidePicture(Picture picture) {
        return picture.width() >= 100 && picture.height() >= 36 ? TALL : SMALL;
    }

    public int height() {
        return size.rows() * times;
    }

    public int width(int places) {
        return BigDigits.width("0".repeat(places), size) * times;
    }

    public List<String> rows(String text, Picture picture) {
        List<String> rows = BigDigits.rows(text, size, picture.unicode());
        return times == 1 ? rows : Doubling.of(rows);
    }
}
