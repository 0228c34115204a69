// SPDX-License-Identifier: Apache-2.0
package fourfold.simulation;

import fourfold.facts.Families;
import fourfold.facts.Trace;
import fourfold.scheduling.LastingGain;
import fourfold.simulation.policy20261127.FrozenScheduler;
import fourfold.simulation.policy20261127.Parameters;
import fourfold.simulation.policy20261127.Ranker;
import fourfold.simulation.policy20261127.Rules;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;

/**
 * The policies the benchmark compares, by name. The simple ones and the ceilings are rankings in the frame of turns of
 * {@link fourfold.simulation.policy20261127}; their numbers were chosen on the tuning seeds.
 */
public final class Policies {
    private static final double COMMON_DECAY = 0.5;
    private static final Duration NEXT = Duration.ofHours(40);
    private static final Duration LATER = Duration.ofDays(20);

    private Policies() {}

    /** Those of the table: the floor, the simple ones, the frozen one, the ceilings, ours. */
    public static List<Policy> compared() {
        List<Policy> compared = new ArrayList<>(simple());
        compared.add(new Policy.Frozen("2026-11-27", true, child -> FrozenScheduler.lastingGain()));
        compared.addAll(ceilings());
        compared.add(ours().get(0));
        return List.copyOf(compared);
    }

    /** All of them: those of the table, and ours without one part each. */
    public static List<Policy> all() {
        List<Policy> all = new ArrayList<>(compared());
        all.addAll(ours().subList(1, ours().size()));
        return List.copyOf(all);
    }

    private static List<Policy> simple() {
        Rules plain = Rules.usual().withMostWeak(Trace.COUNT);
        Rules open = plain.withMostShaky(Families.COUNT);
        Rules eager = plain.withMostWaiting(Trace.COUNT);
        Parameters usual = Parameters.usual();
        return List.of(
                new Policy.NoPractice("none"),
                simple("random", plain, AtRandom::new, usual),
                simple("tables", open, (here, seed) -> new TablesInOrder(here, 2), usual),
                simple("boxes", eager, (here, seed) -> new FiveBoxes(here), usual),
                activation("activation", Trace.COUNT, -4.4));
    }

    private static Policy simple(String name, Rules rules, Ranker ranker, Parameters constants) {
        return new Policy.Frozen(name, false, child -> new FrozenScheduler(rules, ranker, constants));
    }

    /** Lowest activation with one decay for all, and how many traces may be weak before new families wait. */
    static Policy activation(String name, int mostWeak, double enough) {
        return simple(
                name,
                Rules.usual().withMostWeak(mostWeak),
                (here, seed) -> new LowestActivation(here, enough),
                Parameters.oneDecay(COMMON_DECAY));
    }

    private static List<Policy> ceilings() {
        return List.of(
                ceiling("knows", 60, 8, new TrueMemory.Aim(0.93, 0.91, 0.9, NEXT, LATER, false)),
                ceiling("knows-and-plans", 40, 8, new TrueMemory.Aim(0.92, 0.905, 0.9, NEXT, LATER, true)));
    }

    static Policy ceiling(String name, int mostWeak, int mostShaky, TrueMemory.Aim aim) {
        Rules rules = Rules.usual().withMostWeak(mostWeak).withMostShaky(mostShaky);
        return new Policy.Frozen(
                name, false, child -> new FrozenScheduler(rules, new TrueMemory(child, aim), Parameters.usual()));
    }

    private static List<Policy> ours() {
        fourfold.scheduling.Rules rules = fourfold.scheduling.Rules.usual();
        fourfold.memory.Parameters usual = fourfold.memory.Parameters.usual();
        return List.of(
                new Policy.Ours("ours", new LastingGain(rules), usual),
                new Policy.Ours("ours-no-times", new LastingGain(rules), usual.withoutTimes()),
                new Policy.Ours("ours-one-rate", new LastingGain(rules), usual.withOneRate()),
                new Policy.Ours("ours-no-pairs", new LastingGain(rules.withoutPairs()), usual),
                new Policy.Ours("ours-no-limit", new LastingGain(rules.withoutLimitOnNew()), usual));
    }

    /**
     * The policy with that name. Three may be named with other numbers, to choose them on the tuning seeds:
     * {@code activation:mostWeak:enough}, {@code knows:mostWeak:mostShaky:dueBelow:weakBelow:enough} and {@code
     * knows-and-plans} with the same.
     *
     * @throws IllegalArgumentException if there is none
     */
    public static Policy named(String name) {
        String[] parts = name.split(":", -1);
        if (parts.length == 3 && parts[0].equals("activation")) {
            return activation(name, Integer.parseInt(parts[1]), Double.parseDouble(parts[2]));
        }
        if (parts.length == 6 && parts[0].startsWith("knows")) {
            TrueMemory.Aim aim = new TrueMemory.Aim(
                    Double.parseDouble(parts[3]),
                    Double.parseDouble(parts[4]),
                    Double.parseDouble(parts[5]),
                    NEXT,
                    LATER,
                    parts[0].equals("knows-and-plans"));
            return ceiling(name, Integer.parseInt(parts[1]), Integer.parseInt(parts[2]), aim);
        }
        return all().stream()
                .filter(p -> p.name().equals(name))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("no policy is called \"" + name + "\"; there are "
                        + String.join(", ", all().stream().map(Policy::name).toList())));
    }
}
