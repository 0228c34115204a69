// SPDX-License-Identifier: Apache-2.0
package fourfold.store;

import fourfold.log.Problem;
import fourfold.log.Reason;

/** Why something must not be kept or can't be read; {@link Database} adds what was tried and in which file. */
public final class Refusal extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private final transient Problem problem;

    public Refusal(Reason reason, Object... details) {
        this(Problem.of(reason, details));
    }

    public Refusal(Problem problem) {
        super(problem.toString());
        this.problem = problem;
    }

    /** The reason with its details. */
    public Problem problem() {
        return problem;
    }
}
