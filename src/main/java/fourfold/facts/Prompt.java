package fourfold.facts;

/** What a child is asked to type a number for: a question, or a number shown to be copied. */
public sealed interface Prompt permits Question, NumberToCopy {
    /** The number that is right, 1 to 100. */
    int expected();
}
