// SPDX-License-Identifier: Apache-2.0
package fourfold.log;

import java.util.stream.Stream;

/**
 * A value that can't be taken, such as one from a file or a keyboard. It holds the reason as data; what a person reads
 * comes from the texts.
 */
public final class InvalidValue extends IllegalArgumentException {
    private static final long serialVersionUID = 1L;

    /** How much of a value is repeated in a message. */
    private static final int LONGEST = 80;

    private final transient Problem problem;

    /**
     * For this reason.
     *
     * @param details what fills the gaps of the reason's text; control characters in them become question marks, and a
     *     long text is cut
     */
    public InvalidValue(Reason reason, Object... details) {
        this(Problem.of(
                reason,
                Stream.of(details)
                        .map(d -> d instanceof String text ? shown(reason, text) : d)
                        .toArray()));
    }

    /** A long text says no more than its beginning does. */
    private static String shown(Reason reason, String text) {
        // What we ourselves ask for is told whole.
        String beginning =
                text.length() > LONGEST && reason != Reason.CSV_COLUMNS ? text.substring(0, LONGEST) + "…" : text;
        return beginning.replaceAll("\\p{Cntrl}", "?");
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
