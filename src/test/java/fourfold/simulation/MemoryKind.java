// SPDX-License-Identifier: Apache-2.0
package fourfold.simulation;

import fourfold.facts.Trace;
import java.util.List;
import java.util.SplittableRandom;
import java.util.function.BiFunction;

/** A kind of children that is a memory within a {@link SimulatedChild}. */
abstract class MemoryKind implements SimulatedLearnerKind {
    private final String name;
    private final int place;

    /**
     * A kind.
     *
     * @param place other for every kind, so that children of the same seed draw other numbers
     */
    MemoryKind(String name, int place) {
        this.name = name;
        this.place = place;
    }

    /** Makes the memories of one child's traces. */
    abstract BiFunction<Trace, SplittableRandom, TraceMemory> memories(SplittableRandom dice);

    /** What else a child of this kind is like. */
    Traits traits(SplittableRandom dice) {
        return Traits.usual(dice);
    }

    @Override
    public final String name() {
        return name;
    }

    @Override
    public final SimulatedLearner create(long seed) {
        return SimulatedChild.with(seed, this::traits, memories(dice(seed)));
    }

    /** The same child without anything learned before. */
    final SimulatedChild blank(long seed) {
        return SimulatedChild.blank(seed, this::traits, memories(dice(seed)));
    }

    /** The kinds on the class path that are memories within a child; kinds from elsewhere may be otherwise. */
    static List<MemoryKind> all() {
        return SimulatedLearnerKind.all().stream()
                .filter(MemoryKind.class::isInstance)
                .map(MemoryKind.class::cast)
                .toList();
    }

    private SplittableRandom dice(long seed) {
        return new SplittableRandom(seed * 31 + place);
    }

    /** A number of one child: the middle times e to a normal draw with that spread, kept within two spreads. */
    static double about(double middle, double spread, SplittableRandom dice) {
        return middle * Math.exp(spread * Traits.within(dice.nextGaussian(), 2));
    }
}
