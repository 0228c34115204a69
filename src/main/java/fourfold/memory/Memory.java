// SPDX-License-Identifier: Apache-2.0
package fourfold.memory;

import fourfold.facts.Family;
import fourfold.facts.Trace;
import fourfold.log.Answer;
import java.time.Instant;
import java.util.Optional;

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
    private static final double LEAST_ACTIVATION = -8;
    private static final double MOST_ACTIVATION = 4;
    private static final double CLOSE = 0.002;

    private final MemoryState state;

    private Memory(MemoryState state) {
        this.state = state;
    }

    /** Of a child who has answered nothing yet. */
    public static Memory blank(Parameters parameters) {
        return new Memory(new MemoryState(parameters));
    }

    /**
     * With one more answer.
     *
     * @param answer in order of time; an answer older than the latest counts as given at the latest's time
     * @param motor the hands' time before this answer
     */
    public Memory after(Answer answer, MotorTime motor) {
        MemoryState more = new MemoryState(state);
        more.take(answer, motor, motor.thinkingMillis(answer));
        more.disown();
        return new Memory(more);
    }

    /** A place to fold many answers into this memory at once; much faster than one by one. */
    public Fold fold() {
        return new Fold(new MemoryState(state));
    }

    /** What is to be expected of a trace at a moment; moments before the last answer count as the last answer's. */
    public Forecast forecast(Trace trace, Instant at) {
        return forecast(trace.index(), at.toEpochMilli());
    }

    /** As {@link #forecast(Trace, Instant)}, by the trace's index and milliseconds since 1970: no object is looked up. */
    public Forecast forecast(int trace, long atMillis) {
        return state.forecast(trace, atMillis);
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
        return new Forecast(
                state.strength(trace, later) + gained,
                0,
                new Forecast.Standing(trace, traceState, MemoryState.days(practisedAt, laterMillis)),
                state.pace,
                parameters);
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
     * The activation at which an answer is right within the child's limit, hands included, with that chance: for a fact like
     * most others that was asked a day ago. A single trace may need more or less; {@link #chancesQuick} tells.
     *
     * @param chance above 0 and below 1; the result is between −8 and 4, whatever the chance
     */
    public double activationFor(double chance) {
        Recall recall = new Recall(state.secondsToThink(), state.pace.speed().ordinary(), state.parameters);
        Offset none = Offset.unknown(0);
        double low = LEAST_ACTIVATION;
        double high = MOST_ACTIVATION;
        while (high - low > CLOSE) {
            double middle = (low + high) / 2;
            if (state.pace.correction().chance(recall.chance(middle), 1, none) < chance) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return high;
    }

    /**
     * The chance that an answer asked at that moment is right and within the child's limit, hands included.
     *
     * @param atMillis milliseconds since 1970
     */
    public double chanceQuick(int trace, long atMillis) {
        return forecast(trace, atMillis).chanceRightWithin(state.secondsToThink());
    }

    /** {@link #chanceQuick} of all traces at a moment, by trace index; quicker than one by one. */
    public double[] chancesQuick(long atMillis) {
        double[] all = new double[Trace.COUNT];
        state.strengths(state.clockAt(atMillis), all);
        double seconds = state.secondsToThink();
        for (int i = 0; i < all.length; i++) {
            all[i] = state.forecast(i, all[i], atMillis).chanceRightWithin(seconds);
        }
        return all;
    }

    /** How often the child is right when a missed fact is asked again in the same drill, 0 to 1, lately. */
    public double chanceRightAgain() {
        return state.rightAgain;
    }

    /** The chance, 0 to 1, that a family is known though it was never taught here, by what else was known untaught. */
    public double chanceKnown(Family family) {
        return state.untaught.chance(family.index());
    }

    /** A trace's rate of forgetting, 0.06 to 0.42 with the usual parameters: higher fades faster. */
    public double rate(Trace trace) {
        return state.trace(trace.index()).rate();
    }

    /** When a trace was last presented, milliseconds since 1970; 0 if never. */
    public long lastAsked(int trace) {
        return state.trace(trace).askedAt();
    }

    /** How often a trace has been presented, answers with the right one in view counted too. */
    public int presentations(Trace trace) {
        return state.trace(trace.index()).presentations();
    }

    /** The constants in force. */
    public Parameters parameters() {
        return state.parameters;
    }

    /** A memory in the making: takes answers in order of time, and hands out what they come to. Not for sharing. */
    public static final class Fold {
        private final MemoryState state;

        private Fold(MemoryState state) {
            this.state = state;
        }

        /** Takes one more answer, as {@link Memory#after}. */
        public Fold take(Answer answer, MotorTime motor) {
            return take(answer, motor, motor.thinkingMillis(answer));
        }

        /** The same for who has worked {@link MotorTime#thinkingMillis} out already. */
        public Fold take(Answer answer, MotorTime motor, double thinkingMillis) {
            state.take(answer, motor, thinkingMillis);
            return this;
        }

        /** Begins a family again: nothing of it is remembered. */
        public Fold without(Family family) {
            family.traces().forEach(trace -> state.forget(trace.index()));
            return this;
        }

        /** The chance of a right answer within the child's limit, by trace index and milliseconds since 1970. */
        public double chance(int trace, long atMillis) {
            return state.forecast(trace, atMillis).chanceRightWithin(state.secondsToThink());
        }

        /**
         * Whether an answer that was not taken yet came true as its forecast means it: right, and its first key within the
         * child's limit. Empty if it says nothing: typed in view, or without times.
         */
        public Optional<Boolean> cameTrue(Answer answer, MotorTime motor) {
            return answer.purpose().isFromMemory() && MemoryState.saysSomething(answer, motor.thinkingMillis(answer))
                    ? Optional.of(state.isQuick(answer, MemoryState.hands(answer, motor)))
                    : Optional.empty();
        }

        /** The memory so far; taking more answers afterwards does not change it. */
        public Memory memory() {
            state.disown();
            return new Memory(new MemoryState(state));
        }
    }
}
