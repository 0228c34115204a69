// SPDX-License-Identifier: Apache-2.0
package fourfold.simulation.policy20261127;

import fourfold.facts.Families;
import fourfold.facts.Question;
import fourfold.facts.Trace;
import fourfold.log.Answer;
import fourfold.log.Purpose;

/** The working copy behind {@link Memory}: takes answers one by one. Traces are copied before their first change. */
final class MemoryState {
    /** A trace not asked for an hour is asked anew; only such answers judge the forecasts. Our own choice. */
    private static final long ANEW_MILLIS = 3_600_000;

    /** Before any record: most re-asks are right, half of what was never taught here is known. Our own choice. */
    private static final double USUAL_AGAIN = 0.8;

    private static final double USUAL_KNOWN = 0.5;

    /** How far one more outcome moves these two running means. Our own choice. */
    private static final double AGAIN_STEP = 0.05;

    private static final double KNOWN_STEP = 0.3;

    private static final double HOPE_STEP = 0.02;

    /** How many probes the usual share counts as. Our own choice. */
    private static final int USUAL_PROBES = 4;

    private static final int[] PRODUCT_OF = productOfEachTrace();

    final Parameters parameters;
    private final TraceState[] traces;
    private final boolean[] owned = new boolean[Trace.COUNT];
    private final RelatedFactPrior related;
    private final double[] strengths;
    private final double[] likelihoods;
    Pace pace;
    double rightAgain = USUAL_AGAIN;
    double known = USUAL_KNOWN;
    private double knownAll = USUAL_KNOWN;
    private int probes = USUAL_PROBES;
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
        this.hands = MotorTime.USUAL_FIRST_KEY / 1000;
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

    /** The chance that a trace never met here is known all the same, 0 to 1, from those asked so far. */
    double unmetChance(int trace) {
        return traces[trace].presentations() == 0 ? knownAll : 0;
    }

    /** Seconds of thinking that fit into the child's limit when the hands have had their time; at least half of it. */
    double secondsToThink() {
        return Math.max(parameters.limit / 2, parameters.limit - hands);
    }

    TraceState trace(int trace) {
        return traces[trace];
    }

    /** Takes one more answer. Numbers to copy change nothing. */
    void take(Answer answer, MotorTime motor) {
        if (answer.purpose() == Purpose.COPY || !(answer.prompt() instanceof Question question)) {
            return;
        }
        int index = question.traceIndex();
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
        double before = strength(index, clock);
        trace.settle(clock, strengths);
        if (answer.purpose().isFromMemory()) {
            // What was written on paper says nothing about typing.
            hands = answer.firstKey().isPresent() ? motor.firstKeyMillis(answer.surface()) / 1000 : hands;
            judge(answer, motor.thinkingMillis(answer) / 1000, index, before);
        }
        if (answer.purpose() == Purpose.INTRODUCE && trace.presentations() == 0) {
            // A child goes on learning elsewhere: what was not known of late is asked again some day.
            known += HOPE_STEP * (USUAL_KNOWN - known);
        }
        trace.present(clock, millis, strengths);
        trace.mix(related.expected(index));
        if (trace.answers() > 0) {
            related.put(index, trace.rate());
        }
    }

    private void judge(Answer answer, double seconds, int index, double strength) {
        boolean right = answer.isCorrect();
        boolean timed = !Double.isNaN(seconds);
        boolean informative = answer.isMissing() ? answer.whole().isPresent() : timed;
        if (!informative) {
            return;
        }
        double thinking = Math.max(parameters.leastThinking, seconds);
        double enough = secondsToThink();
        boolean recalled = right && thinking <= enough;
        TraceState trace = traces[index];
        if (answer.purpose() == Purpose.AGAIN && !trace.lastRight() && millis - trace.askedAt() < ANEW_MILLIS) {
            rightAgain += AGAIN_STEP * ((right ? 1 : 0) - rightAgain);
        }
        if (answer.purpose() == Purpose.PROBE) {
            known += KNOWN_STEP * ((recalled ? 1 : 0) - known);
            knownAll += ((recalled ? 1 : 0) - knownAll) / ++probes;
        }
        Forecast forecast = new Forecast(strength, trace.isFresh(), 0, pace, parameters);
        if (trace.isFresh() && trace.presentations() > 0) {
            pace = pace.afterFresh(forecast.plainChanceWithin(enough), recalled);
        }
        if (trace.answers() >= 2 && millis - trace.askedAt() > ANEW_MILLIS) {
            pace = pace.afterOutcome(forecast.plainChanceWithin(enough), recalled, parameters);
        }
        if (trace.presentations() == 0 && recalled) {
            trace.bringAlong(strengths);
        }
        Likelihood likelihood = new Likelihood(right, timed ? Math.log(thinking) : 0, pace, parameters);
        double help = helped(index, clock);
        for (int k = 0; k < strengths.length; k++) {
            likelihoods[k] = likelihood.at(Math.log(strengths[k] + help));
        }
        trace.weigh(likelihoods, right);
        if (recalled && trace.presentations() > 0) {
            pace = pace.afterTime(Math.log(thinking), forecast.activation(), parameters);
        }
    }

    private static int[] productOfEachTrace() {
        int[] products = new int[Trace.COUNT];
        for (Trace trace : Families.traces()) {
            products[trace.index()] = trace.family().index();
        }
        return products;
    }
}
