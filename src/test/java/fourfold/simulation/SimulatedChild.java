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

/**
 * A child around a memory: ability, difficulty by fact, transfer from products to quotients, working out what is not
 * recalled, wrong answers, slips, thinking and typing times.
 *
 * <p>Strength u = own − difficulty + ability + what kin lend; recall has the chance 1/(1 + e^(−u)). Thinking times are
 * log-normal (van der Linden 2006, Journal of Educational and Behavioral Statistics 31, 181–204) and shorten with
 * strength. Transfer between operations is weak (Rickard 2005; Campbell 1999, Memory and Cognition 27, 791–802); the
 * shares .3, .1 and .12 are set by hand.
 */
final class SimulatedChild implements OpenMind {
    static final double THINKING_SPREAD = 0.35;
    private static final double WORKING_SPREAD = 0.3;
    private static final double HANDS_SPREAD = 0.15;
    private static final double WORKED_OUT_RIGHT = 0.75;
    private static final double TO_QUOTIENT = 0.3;
    private static final double TO_SISTER = 0.1;
    private static final double TO_PRODUCT = 0.12;
    private static final double CALM = 19;
    private static final double[] LESSONS_BEFORE = {-60, -53, -46, -38, -31, -24, -16, -9};

    private final Traits traits;
    private final TraceMemory[] memories = new TraceMemory[Trace.COUNT];
    private final double[] shifts = new double[Trace.COUNT];
    private final double[] workingOut = new double[Trace.COUNT];
    private final int[][] kin = new int[Trace.COUNT][];
    private final SplittableRandom dice;

    /**
     * The child with that seed.
     *
     * @param seed decides the child and every die it throws
     * @param memory makes the memory of a trace of this child, given dice for numbers of its own
     */
    SimulatedChild(long seed, BiFunction<Trace, SplittableRandom, TraceMemory> memory) {
        SplittableRandom birth = new SplittableRandom(seed * 0x9E3779B97F4A7C15L + 11);
        traits = Traits.drawn(birth, seed);
        for (Trace trace : Families.traces()) {
            int i = trace.index();
            memories[i] = memory.apply(trace, birth);
            shifts[i] = Difficulty.of(trace) + 0.25 * Traits.within(birth.nextGaussian(), 2);
            workingOut[i] = Difficulty.workingOut(trace);
            kin[i] = kinOf(trace);
        }
        dice = birth.split();
        if (traits.knowsEasyTables()) {
            rememberEasyTables();
        }
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

    private void rememberEasyTables() {
        List<Trace> known = Families.traces().stream()
                .filter(t -> List.of(1, 2, 5, 10).stream().anyMatch(t.family()::contains))
                .toList();
        for (int lesson = 0; lesson < LESSONS_BEFORE.length; lesson++) {
            double at = LESSONS_BEFORE[lesson] * 86_400;
            for (Trace trace : known) {
                boolean product = trace.operation() == Operation.MULTIPLY;
                if (product || lesson % 3 == 0) {
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
        double u = own - shifts[trace] + traits.ability();
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
        return Math.max(0, memories[trace].strength(at));
    }

    private static double chance(double u) {
        return 1 / (1 + Math.exp(-u));
    }

    private double medianThinking(double u) {
        return (0.7 + 1.3 * Math.exp(-0.35 * Math.max(-2, u))) * traits.pace();
    }

    @Override
    public double chanceIfPractised(Question question, Instant now, Instant later, Duration limit) {
        int trace = question.trace().index();
        TraceMemory after = memories[trace].copy();
        after.practised(seconds(now), How.RECALLED);
        return chanceWithin(trace, strength(trace, after.strength(seconds(later)), seconds(later)), limit);
    }

    @Override
    public double secondsFor(Question question, Instant at) {
        int trace = question.trace().index();
        double u = strength(trace, seconds(at));
        double p = chance(u);
        return p * (medianThinking(u) + 2.5) + (1 - p) * (workingOut[trace] + 5.5);
    }

    @Override
    public double chanceRightWithin(Question question, Instant at, Duration limit) {
        int trace = question.trace().index();
        return chanceWithin(trace, strength(trace, seconds(at)), limit);
    }

    private double chanceWithin(int trace, double u, Duration limit) {
        double left = limit.toMillis() / 1000.0 - traits.firstKey();
        if (left <= 0) {
            return 0;
        }
        double inTime = Normal.below(Math.log(left / medianThinking(u)) / THINKING_SPREAD);
        double workedOut = Normal.below(Math.log(left / (workingOut[trace] * traits.pace())) / WORKING_SPREAD)
                * (1 - traits.guesses())
                * (1 - traits.givesUp())
                * WORKED_OUT_RIGHT;
        double p = chance(u);
        return p * (1 - traits.slips()) * inTime + (1 - p) * workedOut;
    }

    @Override
    public Reply reply(Question question, Instant askedAt) {
        double at = seconds(askedAt);
        int trace = question.trace().index();
        double u = strength(trace, at);
        if (dice.nextDouble() < chance(u)) {
            boolean slip = dice.nextDouble() < traits.slips();
            double thinking = spread(medianThinking(u), THINKING_SPREAD);
            memories[trace].practised(at + thinking, How.RECALLED);
            int typed = slip ? WrongAnswers.slip(question.expected(), dice) : question.expected();
            return typed(typed, thinking);
        }
        if (dice.nextDouble() < traits.guesses()) {
            return typed(WrongAnswers.to(question, dice), dice.nextDouble(2, 6) * traits.pace());
        }
        double working = spread(workingOut[trace] * traits.pace(), WORKING_SPREAD);
        if (dice.nextDouble() < traits.givesUp() || working > CALM) {
            Duration waited = Duration.ofSeconds((long) CALM + 1);
            return new Reply("", waited, waited);
        }
        if (dice.nextDouble() < WORKED_OUT_RIGHT) {
            memories[trace].practised(at + working, How.WORKED_OUT);
            return typed(question.expected(), working);
        }
        return typed(WrongAnswers.to(question, dice), working);
    }

    @Override
    public void shown(Fact fact, Instant at) {
        memories[fact.question().trace().index()].practised(seconds(at), How.SEEN);
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
