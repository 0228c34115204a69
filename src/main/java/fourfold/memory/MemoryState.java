// SPDX-License-Identifier: Apache-2.0
package fourfold.memory;

import fourfold.facts.Families;
import fourfold.facts.Trace;
import fourfold.log.Answer;
import fourfold.log.Purpose;

/** The working copy behind {@link Memory}: takes answers one by one. Traces are copied before their first change. */
final class MemoryState {
    /** A trace not asked for an hour is asked anew. Our own choice. */
    private static final long ANEW_MILLIS = 3_600_000;

    private static final double DAY_MILLIS = 86_400_000;

    /** Before any record: most re-asks are right. Our own choice. */
    private static final double USUAL_AGAIN = 0.8;

    /** How far one more outcome moves this running mean. Our own choice. */
    private static final double AGAIN_STEP = 0.05;

    private static final int[] PRODUCT_OF = productOfEachTrace();

    final Parameters parameters;
    private final TraceState[] traces;
    private final boolean[] owned = new boolean[Trace.COUNT];
    private final RelatedFactPrior related;
    private final double[] strengths;
    private final double[] likelihoods;
    private final double[] left = new double[FadingSum.TERMS];
    Pace pace;
    double rightAgain = USUAL_AGAIN;
    UntaughtKnowledge untaught = UntaughtKnowledge.NOTHING_KNOWN;
    private double hands;
    private double clock;
    private long millis;
    private boolean started;

    MemoryState(Parameters parameters) {
        this.parameters = parameters;
        this.traces = new TraceState[Trace.COUNT];
        java.util.Arrays.fill(traces, new TraceState(parameters));
        this.related = new RelatedFactPrior(parameters);
        this.pace = Pace.usual(parameters);
        this.strengths = new double[parameters.rates];
        this.likelihoods = new double[parameters.rates];
        this.hands = HandsOnASurface.USUAL_FIRST_KEY / 1000;
    }

    MemoryState(MemoryState other) {
        this.parameters = other.parameters;
        this.traces = other.traces.clone();
        this.related = new RelatedFactPrior(other.related);
        this.pace = other.pace;
        this.rightAgain = other.rightAgain;
        this.untaught = other.untaught;
        this.hands = other.hands;
        this.clock = other.clock;
        this.millis = other.millis;
        this.started = other.started;
        this.strengths = new double[parameters.rates];
        this.likelihoods = new double[parameters.rates];
    }

    /** The memory's own time: silence longer than a pause counts only by the share that lies between drills. */
    double clockAt(long at) {
        double seconds = started ? Math.max(0, at - millis) / 1000.0 : 0;
        double beyond = Math.max(0, seconds - parameters.pause);
        return clock + seconds - beyond + beyond * parameters.betweenDrills;
    }

    /** The strength of a trace, with what a quotient gains from its product. */
    double strength(int trace, double at) {
        return traces[trace].strength(at) + helped(trace, at);
    }

    /** The strengths of all traces; products come first, so their quotients find them worked out. */
    void strengths(double at, double[] all) {
        for (int i = 0; i < all.length; i++) {
            int product = PRODUCT_OF[i];
            double help = product == i ? 0 : parameters.fromProducts * all[product];
            all[i] = traces[i].strength(at) + help;
        }
    }

    private double helped(int trace, double at) {
        int product = PRODUCT_OF[trace];
        return product == trace ? 0 : parameters.fromProducts * traces[product].strength(at);
    }

    /** The chance that a trace never met here is known all the same, 0 to 1; 0 for one that was met. */
    double unmetChance(int trace) {
        return traces[trace].presentations() == 0 ? untaught.chance(PRODUCT_OF[trace]) : 0;
    }

    /** Seconds of thinking that fit into the child's limit when the hands have had their time; at least half of it. */
    double secondsToThink() {
        return Math.max(parameters.limit / 2, parameters.limit - hands);
    }

    TraceState trace(int trace) {
        return traces[trace];
    }

    /** What is to be expected of a trace at a moment, milliseconds since 1970. */
    Forecast forecast(int trace, long at) {
        return forecast(trace, strength(trace, clockAt(at)), at);
    }

    Forecast forecast(int trace, double strength, long at) {
        TraceState state = traces[trace];
        double days = state.presentations() == 0 ? 0 : days(state.askedAt(), at);
        Forecast.Standing standing = new Forecast.Standing(trace, state, days);
        return new Forecast(strength, unmetChance(trace), standing, pace, parameters);
    }

    /** Days between two moments in milliseconds since 1970; 0 if the second comes first. */
    static double days(long from, long to) {
        return Math.max(0, to - from) / DAY_MILLIS;
    }

    /**
     * Whether an answer from memory tells anything: it has times that can be believed or was heard, was left open till the
     * end, or was not right on paper or aloud. A right answer on a page that nobody timed only says that the fact was met
     * again.
     */
    static boolean saysSomething(Answer answer, double thinkingMillis) {
        if (!answer.purpose().isTyped()) {
            return !answer.isCorrect() || answer.pace().isPresent() || !Double.isNaN(thinkingMillis);
        }
        return answer.isMissing() ? answer.whole().isPresent() : !Double.isNaN(thinkingMillis);
    }

    /** Seconds to the first key that the hands need. */
    static double hands(Answer answer, MotorTime motor) {
        return motor.firstKeyMillis(answer.surface()) / 1000;
    }

    /** Whether an answer is right, and its first key within the child's limit; slow hands have half of it to think in. */
    boolean isQuick(Answer answer, double hands) {
        long first = MotorTime.firstMillis(answer);
        if (first < 0) {
            return HeardPace.isQuick(answer);
        }
        double most = Math.max(parameters.limit, hands + parameters.limit / 2);
        return answer.isCorrect() && first <= 1000 * most;
    }

    /** Takes one more answer. Numbers to copy change nothing. */
    void take(Answer answer, MotorTime motor, double thinkingMillis) {
        int index = answer.traceIndex();
        if (index < 0) {
            return;
        }
        long at = answer.askedAt().toEpochMilli();
        clock = clockAt(at);
        millis = started ? Math.max(millis, at) : at;
        started = true;
        if (!owned[index]) {
            traces[index] = new TraceState(traces[index]);
            owned[index] = true;
        }
        TraceState trace = traces[index];
        java.util.Arrays.fill(strengths, 0);
        trace.settle(clock, left, strengths);
        if (answer.purpose().isFromMemory()) {
            double typing = hands;
            hands = MotorTime.firstMillis(answer) >= 0 ? hands(answer, motor) : hands;
            if (saysSomething(answer, thinkingMillis)) {
                boolean heard = answer.pace().isPresent();
                judge(answer, heard ? HeardPace.seconds(answer, parameters.limit) : thinkingMillis / 1000, index);
            }
            // What was written on paper says nothing about typing.
            hands = answer.purpose().isTyped() ? hands : typing;
        }
        if (answer.purpose() == Purpose.INTRODUCE && trace.presentations() == 0) {
            untaught = untaught.afterLesson();
        }
        trace.present(clock, millis, strengths);
        trace.compare(related.expected(index));
        if (trace.answers() > 0) {
            related.put(index, trace.rate());
        }
    }

    /** Declares every trace shared, so that each is copied before its next change; it will be read and not written to. */
    void disown() {
        for (int i = 0; i < owned.length; i++) {
            if (owned[i]) {
                traces[i].mix();
                owned[i] = false;
            }
        }
    }

    /** Forgets a trace: what comes later begins from nothing. */
    void forget(int trace) {
        traces[trace] = new TraceState(parameters);
        owned[trace] = true;
        related.remove(trace);
    }

    private void judge(Answer answer, double seconds, int index) {
        boolean right = answer.isCorrect();
        boolean recalled = isQuick(answer, hands);
        TraceState trace = traces[index];
        if (answer.purpose() == Purpose.AGAIN && !trace.lastRight() && millis - trace.askedAt() < ANEW_MILLIS) {
            rightAgain += AGAIN_STEP * ((right ? 1 : 0) - rightAgain);
        }
        if (answer.purpose() == Purpose.PROBE && PRODUCT_OF[index] == index && right == recalled) {
            // Right and slow may be counted or worked out: it says neither that the table is known nor that it is not.
            untaught = untaught.afterProbe(index, right);
        }
        double help = helped(index, clock);
        Forecast forecast = forecast(index, trace.strength(strengths) + help, millis);
        boolean met = trace.presentations() > 0;
        if (met) {
            correct(trace, forecast.plainChanceWithin(secondsToThink()), recalled);
        }
        if (!met && recalled) {
            trace.bringAlong(strengths);
        }
        double logThinking = Math.log(Math.max(parameters.leastThinking, seconds));
        Likelihood likelihood = new Likelihood(right, logThinking, forecast.level(), parameters);
        for (int k = 0; k < strengths.length; k++) {
            likelihoods[k] = likelihood.at(Math.log(strengths[k] + help));
        }
        if (met && right && answer.purpose().isTyped()) {
            double activation = forecast.activation();
            Speed.Learned learned = pace.speed()
                    .after(
                            index,
                            trace.slower(),
                            logThinking + parameters.speedUp * activation,
                            likelihood.shareRecalled(activation));
            pace = new Pace(learned.speed(), pace.correction());
            trace.isSlower(learned.own());
        }
        trace.weigh(likelihoods, right);
    }

    private void correct(TraceState trace, double plainChance, boolean came) {
        Correction.Learned learned =
                pace.correction().after(plainChance, days(trace.askedAt(), millis), trace.surer(), came);
        pace = new Pace(pace.speed(), learned.correction());
        trace.isSurer(learned.own());
    }

    private static int[] productOfEachTrace() {
        int[] products = new int[Trace.COUNT];
        for (Trace trace : Families.traces()) {
            products[trace.index()] = trace.family().index();
        }
        return products;
    }
}
