// SPDX-License-Identifier: Apache-2.0
package fourfold.simulation.policy20261127;

/**
 * What a policy chooses by: which traces are due now, and which of them comes first. When each may be asked, and what has
 * its turn before them, is decided by {@link TurnFrame}, which asks only for traces that were met. Traces are named by
 * their index.
 */
public interface Ranking {
    /** Whether the trace is to have a turn now; a policy that asks each trace once a drill says no after its turn. */
    boolean isDue(int trace);

    /**
     * The value of practising the trace now, between −100,000 and 100,000: of two due traces the one with the greater
     * value is asked first.
     */
    double value(int trace);

    /** Whether new families wait for the trace's turn: by default for all that is due. */
    default boolean isWaiting(int trace) {
        return isDue(trace);
    }

    /** Whether the trace would be weak at the next drill, with what was practised today; by default nobody can tell. */
    default boolean isWeak(int trace) {
        return false;
    }

    /** The less sure of two traces comes first when nothing is due, and as the inverse of a product. */
    default double sureness(int trace) {
        return -value(trace);
    }
}
