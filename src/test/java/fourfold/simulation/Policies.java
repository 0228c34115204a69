package fourfold.simulation;

import fourfold.facts.Families;
import fourfold.facts.Trace;
import fourfold.memory.Parameters;
import fourfold.scheduling.LastingGain;
import fourfold.scheduling.Rules;
import fourfold.scheduling.TurnFrame;
import java.time.Duration;
import java.util.List;

/** The policies the benchmark compares, by name. The numbers of the simple ones were chosen on the tuning seeds. */
public final class Policies {
    private static final Duration NEXT = Duration.ofDays(2);
    private static final double FLUENT = 3.2;
    private static final double MORE_THAN_FLUENT = 4.2;
    private static final double NEARLY_FLUENT = 2.6;
    private static final double COMMON_DECAY = 0.5;

    private Policies() {}

    /** All of them: the floor, the simple ones, ours, ours without one part each, and the oracles. */
    public static List<Policy> all() {
        Rules rules = Rules.usual();
        Rules plain = rules.withMostWeak(Trace.COUNT);
        Rules open = plain.withMostShaky(Families.COUNT);
        Rules eager = plain.withMostWaiting(Trace.COUNT);
        Rules firm = rules.withMostWeak(50);
        Parameters decay = Parameters.oneDecay(COMMON_DECAY);
        Parameters usual = Parameters.usual();
        return List.of(
                new Policy.NoPractice("none"),
                new Policy.Fair("random", new TurnFrame(plain, AtRandom::new)),
                new Policy.Fair("tables", new TurnFrame(open, (here, seed) -> new TablesInOrder(here, 2))),
                new Policy.Fair("boxes", new TurnFrame(eager, (here, seed) -> new FiveBoxes(here))),
                new Policy.Fair(
                        "activation", new TurnFrame(plain, (here, seed) -> new LowestActivation(here, -4.4)), decay),
                new Policy.Fair(
                        "activation-firm",
                        new TurnFrame(firm, (here, seed) -> new LowestActivation(here, -3.2)),
                        decay),
                new Policy.Fair("ours", new LastingGain(rules)),
                new Policy.Fair("ours-no-times", new LastingGain(rules), usual.withoutTimes()),
                new Policy.Fair("ours-one-rate", new LastingGain(rules), usual.withOneRate()),
                new Policy.Fair("ours-no-pairs", new LastingGain(rules.withoutPairs())),
                new Policy.Fair("ours-no-limit", new LastingGain(rules.withoutLimitOnNew())),
                oracle("oracle-firm", FLUENT, MORE_THAN_FLUENT, 75),
                oracle("oracle-even", NEARLY_FLUENT, FLUENT, 50),
                oracle("oracle-open", NEARLY_FLUENT, NEARLY_FLUENT, 40));
    }

    /** What the oracles differ in is how many traces may be short of what strength before openings stop. */
    private static Policy oracle(String name, double enough, double dueBelow, int mostWaiting) {
        return new Policy.Oracle(name, new Foresight(List.of(NEXT), enough, dueBelow, mostWaiting));
    }

    /**
     * The policy with that name.
     *
     * @throws IllegalArgumentException if there is none
     */
    public static Policy named(String name) {
        return all().stream()
                .filter(p -> p.name().equals(name))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("no policy is called \"" + name + "\"; there are "
                        + String.join(", ", all().stream().map(Policy::name).toList())));
    }
}
