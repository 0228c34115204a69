package fourfold.home;

import java.util.Locale;

/** Pages that can be printed. */
public enum Printable {
    PRACTICE,
    CARDS,
    TABLE,
    PROGRESS;

    /** Its name in texts and files. */
    public String key() {
        return name().toLowerCase(Locale.ROOT);
    }
}
