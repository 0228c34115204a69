package fourfold.simulation;

import fourfold.facts.Families;
import fourfold.scheduling.AtRandom;
import fourfold.scheduling.FiveBoxes;
import fourfold.scheduling.GrowingGaps;
import fourfold.scheduling.LastingGain;
import fourfold.scheduling.LowestActivation;
import fourfold.scheduling.Rules;
import fourfold.scheduling.TablesInOrder;
import java.time.Duration;
import java.util.List;

/** The policies the benchmark compares, by name. The numbers of the simple ones were chosen on the tuning seeds. */
public final class Policies {
    private static final Duration NEXT = Duration.ofDays(2);
    private static final Duration LATER = Duration.ofDays(8);
    private static final double FLUENT = 3.2;

    private Policies() {}

    /** All of them: the floor, the simple ones, ours, and the oracles. */
    public static List<Policy> all() {
        Rules rules = Rules.usual();
        Rules open = rules.withOpenings(rules.mostWaiting(), Families.COUNT);
        Rules eager = rules.withOpenings(200, rules.mostShaky());
        return List.of(
                new Policy.NoPractice("none"),
                new Policy.Fair("random", () -> new AtRandom(rules)),
                new Policy.Fair("tables", () -> new TablesInOrder(open, 2)),
                new Policy.Fair("boxes", () -> new FiveBoxes(eager)),
                new Policy.Fair("gaps", GrowingGaps::new),
                new Policy.Fair("activation", () -> new LowestActivation(rules, 0.5, -4.4)),
                new Policy.Fair("ours", LastingGain::new),
                oracle("oracle-40", 40),
                oracle("oracle-80", 80),
                oracle("oracle-open", 200));
    }

    /** What so many traces may wait before openings stop is what the oracles differ in; it mattered most. */
    private static Policy oracle(String name, int mostWaiting) {
        return new Policy.Oracle(name, new Foresight(List.of(NEXT, LATER), FLUENT, FLUENT, mostWaiting));
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
