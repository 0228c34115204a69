package fourfold.terminal;

/** What a page answers to a key: where to go from here. */
public sealed interface Navigation {
    /** Stay here and draw again. */
    Navigation STAY = new Stay();

    /** Back to the page behind. */
    Navigation BACK = new Back();

    /** Back to the first page, past all between. */
    Navigation HOME = new Home();

    /** Leave the program. */
    Navigation LEAVE = new LeaveProgram();

    /** Stay here and draw again. */
    record Stay() implements Navigation {}

    /** Back to the page behind this one. */
    record Back() implements Navigation {}

    /** Back to the first page. */
    record Home() implements Navigation {}

    /** Leave the program. */
    record LeaveProgram() implements Navigation {}

    /** Open a page in front of this one. */
    record Open(Page page) implements Navigation {}

    /** Put a page in this one's place. */
    record Replace(Page page) implements Navigation {}
}
