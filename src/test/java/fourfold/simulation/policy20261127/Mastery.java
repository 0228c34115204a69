// SPDX-License-Identifier: Apache-2.0
package fourfold.simulation.policy20261127;

/**
 * How far a trace or a family has come: the instructional hierarchy of acquisition, fluency and retention (Haring,
 * Lovitt, Eaton and Hansen 1978, The Fourth R), cut into five levels by rules a parent can check by eye. The rules stand
 * in {@link FactMastery}.
 */
public enum Mastery {
    /** Never met here. */
    NEW,
    /** Met, and not yet mostly right. */
    ACQUIRING,
    /** At least four of the last five right, over two days or more. */
    ACCURATE,
    /** Right and quick: the last five right, or nine of the last ten, with a median thinking time within the limit. */
    FLUENT,
    /** Fluent again after a gap of seven days or more, and fluent on three days or more. */
    LASTING;

    /** Whether this level is {@code other} or above it. */
    public boolean atLeast(Mastery other) {
        return compareTo(other) >= 0;
    }

    Mastery oneDown() {
        return this == NEW || this == ACQUIRING ? this : values()[ordinal() - 1];
    }
}
