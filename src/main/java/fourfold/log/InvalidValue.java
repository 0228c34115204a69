package fourfold.log;

import java.util.stream.Stream;

/**
 * A value that can't be taken, such as one from a file or a keyboard. It holds the reason as data; what a person reads
 * comes from the texts.
 */
public final class InvalidValue extends IllegalArgumentException {
    private static final long serialVersionUID = 1L;

    private final transient Problem problem;

    /**
     * For this reason.
     *
     * @param details what fills the gaps of the reason's text; control characters in them become question marks
     */
    public InvalidValue(Reason reason, Object... details) {
        this(Problem.of(
                reason,
                Stream.of(details)
                        .map(d -> d instanceof String text ? text.replaceAll("\\p{Cntrl}", "?") : d)
                        .toArray()));
    }

    private InvalidValue(Problem problem) {
        super(problem.toString());
        this.problem = problem;
    }

    /** The reason with its details. */
    public Problem problem() {
        return problem;
    }
}
