package fourfold.home;

import java.util.Locale;

/** Pages that can be printed. */
public enum Printable {
    PRACTICE,
    CARDS,
    TABLE,
    PROGRESS,
    WHOLE;

    /** Its name in texts and files. */
    public String key() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** The name in texts of what is said when there is nothing to print yet. */
    public String nothing() {
        return this == WHOLE ? "notwhole" : "nothing";
    }
}
