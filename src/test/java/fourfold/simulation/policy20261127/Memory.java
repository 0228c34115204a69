// SPDX-License-Identifier: Apache-2.0
package fourfold.simulation.policy20261127;

import fourfold.facts.Trace;

/**
 * One child's whole memory of the facts, as far as the answers show: a fold of the answer log. Immutable.
 *
 * <p>Each trace has an activation, the logarithm of a sum of powers of the ages of its presentations; every presentation
 * fades with a decay of its own that grows with the activation it met (Pavlik and Anderson 2005) and with the trace's
 * rate of forgetting. That rate is learned from outcome and thinking time of every answer (after van Rijn, van Maanen and
 * van Woudenberg 2009; Sense and others 2016), here as a likelihood over a grid of rates that starts from related facts.
 * Time between drills counts only in part. Answers with the right one in view are presentations and nothing more.
 */
public final class Memory {
    private final MemoryState state;

    Memory(MemoryState state) {
        this.state = state;
    }

    /** What is to be expected of a trace, by its index, at a moment in milliseconds since 1970. */
    public Forecast forecast(int trace, long atMillis) {
        return new Forecast(
                state.strength(trace, state.clockAt(atMillis)),
                state.trace(trace).isFresh(),
                state.unmetChance(trace),
                state.pace,
                state.parameters);
    }

    /**
     * What would be expected of a trace later if it were answered once more, rightly and as fast as expected, before.
     *
     * @param practisedAt milliseconds since 1970
     * @param laterMillis milliseconds since 1970, not before {@code practisedAt}
     */
    public Forecast forecastAfterPractice(int trace, long practisedAt, long laterMillis) {
        double now = state.clockAt(practisedAt);
        double later = Math.max(now, state.clockAt(laterMillis));
        Parameters parameters = state.parameters;
        TraceState traceState = state.trace(trace);
        double met = Math.min(Math.exp(parameters.strongest), traceState.strength(now));
        double gained = Math.pow(Math.max(1, later - now), -(traceState.rate() + parameters.decayScale * met));
        return new Forecast(state.strength(trace, later) + gained, traceState.isFresh(), 0, state.pace, parameters);
    }

    /** The activation of a trace at a moment in milliseconds since 1970, as in its forecast. */
    public double activation(int trace, long atMillis) {
        return Math.log(state.strength(trace, state.clockAt(atMillis)));
    }

    /** The activations of all traces at a moment in milliseconds since 1970, by trace index; quicker than one by one. */
    public double[] activations(long atMillis) {
        double[] all = new double[Trace.COUNT];
        state.strengths(state.clockAt(atMillis), all);
        for (int i = 0; i < all.length; i++) {
            all[i] = Math.log(all[i]);
        }
        return all;
    }

    /** The activation a trace would have later after one more presentation before; see {@link #forecastAfterPractice}. */
    public double activationAfterPractice(int trace, long practisedAt, long laterMillis) {
        return forecastAfterPractice(trace, practisedAt, laterMillis).activation();
    }

    /**
     * The activation at which an answer is right within the child's limit, hands included, with that chance.
     *
     * @param chance above 0 and below 1; the result is between −8 and 4, whatever the chance
     */
    public double activationFor(double chance) {
        // The correction rises with the plain chance, so it is undone once and not in every step.
        double plain = state.pace.uncorrected(chance);
        return new Recall(state.secondsToThink(), state.pace, state.parameters).activationFor(plain);
    }

    /**
     * The chance that an answer asked at that moment is right and within the child's limit, hands included.
     *
     * @param atMillis milliseconds since 1970
     */
    public double chanceQuick(int trace, long atMillis) {
        return forecast(trace, atMillis).chanceRightWithin(state.secondsToThink());
    }

    /** How often the child is right when a missed fact is asked again in the same drill, 0 to 1, lately. */
    public double chanceRightAgain() {
        return state.rightAgain;
    }

    /** How often a family asked before it was ever taught here was known, 0 to 1, lately. */
    public double chanceKnown() {
        return state.known;
    }

    /** When a trace was last presented, milliseconds since 1970; 0 if never. */
    public long lastAsked(int trace) {
        return state.trace(trace).askedAt();
    }

    /** The constants in force. */
    public Parameters parameters() {
        return state.parameters;
    }
}
