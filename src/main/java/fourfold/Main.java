package fourfold;

import fourfold.commands.Fourfold;

/** Hands the arguments to the commands and ends with their exit code. */
public final class Main {
    /** From this version on, Java answers a wish for its older texts of dates with a warning. */
    private static final int WARNS_FROM = 21;

    private Main() {}

    /** Runs the program. */
    public static void main(String[] arguments) {
        readOlderDates();
        System.exit(Fourfold.run(arguments));
    }

    /**
     * The database driver asks Java for the names of months and days whenever a file is opened. Java's own of old are
     * read in half the time of the newer ones (CLDR), and none of either is ever shown: the program has its own.
     */
    private static void readOlderDates() {
        if (Runtime.version().feature() < WARNS_FROM && System.getProperty("java.locale.providers") == null) {
            System.setProperty("java.locale.providers", "COMPAT");
        }
    }
}
