package fourfold.commands;

/** How the program ends. */
public final class ExitCode {
    /** All done. */
    public static final int DONE = 0;

    /** The world failed: a file, the disk, the terminal. */
    public static final int WORLD = 1;

    /** The command was written wrongly. */
    static final int USAGE = 2;

    private ExitCode() {}
}
