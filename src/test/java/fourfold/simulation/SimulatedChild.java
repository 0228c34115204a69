// SPDX-License-Identifier: Apache-2.0
package fourfold.simulation;

import fourfold.facts.Fact;
import fourfold.facts.Families;
import fourfold.facts.Family;
import fourfold.facts.Operation;
import fourfold.facts.Question;
import fourfold.facts.Trace;
import fourfold.outlook.Reply;
import fourfold.simulation.TraceMemory.How;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.SplittableRandom;
import java.util.function.BiFunction;
import java.util.function.Function;

/**
 * A child around a memory: ability, difficulty by fact, transfer from products to quotients, working out what is not
 * recalled, wrong answers, slips, thinking and typing times, good and bad days, tiring.
 *
 * <p>Strength u = own − difficulty + ability + the day's form + what kin lend; recall has the chance 1/(1 + e^(−u)).
 * Thinking times are log-normal (van der Linden 2006, Journal of Educational and Behavioral Statistics 31, 181–204) and
 * shorten with strength. Transfer between operations is weak (Rickard 2005; Campbell 1999, Memory and Cognition 27,
 * 791–802); the shares .3, .1 and .12 are set by hand.
 */
final class SimulatedChild implements OpenMind {
    private static final double WORKING_SPREAD = 0.3;
    private static final double HANDS_SPREAD = 0.2;
    private static final double WORKED_OUT_RIGHT = 0.75;
    private static final double TO_QUOTIENT = 0.3;
    private static final double TO_SISTER = 0.1;
    private static final double TO_PRODUCT = 0.12;
    private static final double MOST_LENT = 4;
    private static final double CALM = 19;
    private static final double DAY = 86_400;
    private static final double ONE_SITTING = 600;
    private static final double FRESH_FOR = 300;
    private static final int[] TEACHING_ORDER = {2, 10, 5, 3, 4, 8, 6, 9, 7};

    private final long seed;
    private final Traits traits;
    private final TraceMemory[] memories = new TraceMemory[Trace.COUNT];
    private final double[] shifts = new double[Trace.COUNT];
    private final double[] slowness = new double[Trace.COUNT];
    private final double[] workingOut = new double[Trace.COUNT];
    private final int[][] kin = new int[Trace.COUNT][];
    private final SplittableRandom dice;
    private double satDown = Double.NEGATIVE_INFINITY;
    private double lastSeen = Double.NEGATIVE_INFINITY;
    private long formOf = Long.MIN_VALUE;
    private double form;

    private SimulatedChild(
            long seed, Traits traits, SplittableRandom birth, BiFunction<Trace, SplittableRandom, TraceMemory> memory) {
        this.seed = seed;
        this.traits = traits;
        for (Trace trace : Families.traces()) {
            int i = trace.index();
            memories[i] = memory.apply(trace, birth);
            shifts[i] = Difficulty.of(trace) + 0.25 * Traits.within(birth.nextGaussian(), 2) - traits.ability();
            slowness[i] = Difficulty.slowness(trace) + 0.08 * Traits.within(birth.nextGaussian(), 2);
            workingOut[i] = Difficulty.workingOut(trace) * traits.pace();
            kin[i] = kinOf(trace);
        }
        dice = birth.split();
    }

    /**
     * The child with that seed, who brings along what it knew before the year.
     *
     * @param seed decides the child and every die it throws
     * @param memory makes the memory of a trace of this child, given dice for numbers of its own
     */
    static SimulatedChild with(long seed, BiFunction<Trace, SplittableRandom, TraceMemory> memory) {
        return with(seed, Traits::usual, memory);
    }

    /** The same with other traits, drawn by the child's dice. */
    static SimulatedChild with(
            long seed,
            Function<SplittableRandom, Traits> traits,
            BiFunction<Trace, SplittableRandom, TraceMemory> memory) {
        SimulatedChild child = blank(seed, traits, memory);
        child.remember();
        return child;
    }

    /** The same, who never met a fact. */
    static SimulatedChild blank(
            long seed,
            Function<SplittableRandom, Traits> traits,
            BiFunction<Trace, SplittableRandom, TraceMemory> memory) {
        SplittableRandom birth = birth(seed);
        return new SimulatedChild(seed, traits.apply(birth), birth, memory);
    }

    private static SplittableRandom birth(long seed) {
        return new SplittableRandom(seed * 0x9E3779B97F4A7C15L + 11);
    }

    /** For a quotient: the product, then the sister (itself in a square). For a product: its quotients. */
    private static int[] kinOf(Trace trace) {
        Family family = trace.family();
        List<Trace> all = family.traces();
        if (trace.operation() == Operation.MULTIPLY) {
            return all.stream().skip(1).mapToInt(Trace::index).toArray();
        }
        return new int[] {
            Trace.product(family).index(),
            Trace.quotient(family, family.partnerOf(trace.divisor())).index()
        };
    }

    /** The lessons before the year, a week apart, the last one a week and a half before it. */
    private void remember() {
        boolean[] known = new boolean[Families.LARGEST_FACTOR + 1];
        for (int i = 0; i < traits.tablesKnown(); i++) {
            known[TEACHING_ORDER[i]] = true;
        }
        known[1] = traits.tablesKnown() > 0;
        for (int lesson = 0; lesson < traits.lessonsBefore(); lesson++) {
            double at = (-10 - 7.0 * (traits.lessonsBefore() - 1 - lesson)) * DAY;
            for (Trace trace : Families.traces()) {
                boolean product = trace.operation() == Operation.MULTIPLY;
                Family family = trace.family();
                if ((known[family.low()] || known[family.high()]) && (product || lesson % 3 == 0)) {
                    memories[trace.index()].practised(at, How.RECALLED);
                    memories[trace.index()].practised(at + 300, How.RECALLED);
                }
            }
        }
    }

    private static double seconds(Instant at) {
        Duration since = Duration.between(SchoolYear.START, at);
        return since.getSeconds() + since.getNano() / 1e9;
    }

    private double strength(int trace, double at) {
        return strength(trace, memories[trace].strength(at), at);
    }

    private double strength(int trace, double own, double at) {
        double u = own - shifts[trace] + form(at);
        if (trace >= Families.COUNT) {
            u += TO_QUOTIENT * lent(kin[trace][0], at);
            u += kin[trace][1] == trace ? 0 : TO_SISTER * lent(kin[trace][1], at);
            return u;
        }
        for (int quotient : kin[trace]) {
            u += TO_PRODUCT * lent(quotient, at);
        }
        return u;
    }

    private double lent(int trace, double at) {
        return Math.max(0, Math.min(MOST_LENT, memories[trace].strength(at)));
    }

    /** How good a day it is: three even numbers drawn for the day, together nearly normal. */
    private double form(double at) {
        long day = (long) Math.floor(at / DAY);
        if (day != formOf) {
            SplittableRandom luck = new SplittableRandom(seed * 1_000_003 + day);
            form = traits.form() * 2 * (luck.nextDouble() + luck.nextDouble() + luck.nextDouble() - 1.5);
            formOf = day;
        }
        return form;
    }

    /** How much slower the child is at that moment for having sat there; looks at the sitting it is in, if it is in one. */
    private double tired(double at) {
        boolean sits = at - lastSeen < ONE_SITTING && at >= satDown;
        return sits ? 1 + traits.tiring() / 60 * Math.max(0, Math.min(900, at - satDown - FRESH_FOR)) : 1;
    }

    private void sitting(double at) {
        satDown = at - lastSeen < ONE_SITTING ? satDown : at;
        lastSeen = at;
    }

    private static double chance(double u) {
        return 1 / (1 + Math.exp(-u));
    }

    private double medianThinking(int trace, double u, double at) {
        return memories[trace].thinking(u) * Math.exp(slowness[trace]) * traits.pace() * tired(at);
    }

    /** The chance that the fact is recalled at all, however long it takes; asking changes nothing. */
    double chanceRecalled(Question question, Instant at) {
        return chance(strength(question.traceIndex(), seconds(at)));
    }

    private double strengthIfPractised(Trace trace, Instant now, Instant later) {
        TraceMemory after = memories[trace.index()].copy();
        after.practised(seconds(now), How.RECALLED);
        return strength(trace.index(), after.strength(seconds(later)), seconds(later));
    }

    @Override
    public double secondsFor(Question question, Instant at) {
        int trace = question.traceIndex();
        double u = strength(trace, seconds(at));
        double p = chance(u);
        return p * (medianThinking(trace, u, seconds(at)) + 2.5) + (1 - p) * (workingOut[trace] + 5.5);
    }

    @Override
    public double chanceIfPractised(Question question, Instant now, Instant later, Duration limit) {
        return chance(question, strengthIfPractised(question.trace(), now, later), seconds(later), limit);
    }

    @Override
    public double chanceRightWithin(Question question, Instant at, Duration limit) {
        return chance(question, strength(question.traceIndex(), seconds(at)), seconds(at), limit);
    }

    private double chance(Question question, double u, double at, Duration limit) {
        int trace = question.traceIndex();
        double left = limit.toMillis() / 1000.0 - traits.firstKey();
        if (left <= 0) {
            return 0;
        }
        double inTime = Normal.below(Math.log(left / medianThinking(trace, u, at)) / traits.spread());
        double workedOut = Normal.below(Math.log(Math.min(left, CALM) / workingOut[trace]) / WORKING_SPREAD)
                * (1 - traits.guesses())
                * (1 - traits.givesUp())
                * WORKED_OUT_RIGHT;
        double p = chance(u);
        return p * (1 - traits.slips()) * inTime + (1 - p) * workedOut;
    }

    @Override
    public Reply reply(Question question, Instant askedAt) {
        double at = seconds(askedAt);
        sitting(at);
        int trace = question.traceIndex();
        double u = strength(trace, at);
        if (dice.nextDouble() < chance(u)) {
            boolean slip = dice.nextDouble() < traits.slips();
            double thinking = spread(medianThinking(trace, u, at), traits.spread());
            memories[trace].practised(at + thinking, How.RECALLED);
            int typed = slip ? WrongAnswers.slip(question.expected(), dice) : question.expected();
            return typed(typed, thinking);
        }
        if (dice.nextDouble() < traits.guesses()) {
            return wrong(question, at, dice.nextDouble(1.5, 5) * traits.pace());
        }
        double working = spread(workingOut[trace], WORKING_SPREAD);
        if (dice.nextDouble() < traits.givesUp() || working > CALM) {
            Duration waited = Duration.ofSeconds((long) CALM + 1);
            return new Reply("", waited, waited);
        }
        if (dice.nextDouble() < WORKED_OUT_RIGHT) {
            memories[trace].practised(at + working, How.WORKED_OUT);
            return typed(question.expected(), working);
        }
        return wrong(question, at, working);
    }

    private Reply wrong(Question question, double at, double thinking) {
        TraceMemory memory = memories[question.traceIndex()];
        int answer = memory.wrongAnswer(question, at, dice);
        memory.missed(at + thinking, answer);
        return typed(answer, thinking);
    }

    @Override
    public void shown(Fact fact, Instant at) {
        memories[fact.question().traceIndex()].practised(seconds(at), How.SEEN);
    }

    @Override
    public Reply copy(String digits, Instant at) {
        return typed(digits, 0);
    }

    private Reply typed(int number, double thinking) {
        return typed(Integer.toString(number), thinking);
    }

    private Reply typed(String digits, double thinking) {
        double first = thinking + spread(traits.firstKey(), HANDS_SPREAD);
        double rest = digits.length() * spread(traits.nextKey(), HANDS_SPREAD);
        return new Reply(digits, millis(first), millis(first + rest));
    }

    private double spread(double median, double sd) {
        return median * Math.exp(sd * Traits.within(dice.nextGaussian(), 3));
    }

    private static Duration millis(double seconds) {
        return Duration.ofMillis(Math.round(seconds * 1000));
    }
}
