package fourfold.screens;

/** What a page answers to a key: where to go from here. */
public sealed interface Move {
    /** Stay here and draw again. */
    Move STAY = new Stay();

    /** Back to the page behind. */
    Move BACK = new Back();

    /** Back to the first page, past all between. */
    Move HOME = new Home();

    /** Leave the program. */
    Move LEAVE = new LeaveProgram();

    /** Stay here and draw again. */
    record Stay() implements Move {}

    /** Back to the page behind this one. */
    record Back() implements Move {}

    /** Back to the first page. */
    record Home() implements Move {}

    /** Leave the program. */
    record LeaveProgram() implements Move {}

    /** Open a page in front of this one. */
    record Open(Page page) implements Move {}

    /** Put a page in this one's place. */
    record Replace(Page page) implements Move {}
}
