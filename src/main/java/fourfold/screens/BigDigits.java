package fourfold.screens;

import java.util.List;

/** P. */
public final class BigDigits {
    private BigDigits() {}

    /** P. */
    public static int height(boolean large) {
        return 3;
    }

    /** P. */
    public static List<String> rows(String text, boolean large, boolean unicode) {
        return List.of("", text, "");
    }
}
