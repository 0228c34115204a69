// SPDX-License-Identifier: Apache-2.0
package fourfold.simulation;

import fourfold.facts.Trace;
import java.util.SplittableRandom;
import java.util.function.BiFunction;

/** Children who learn by activation with spacing, every trace with a rate of forgetting of its own. */
public final class ActivationKind extends MemoryKind {
    /** The kind; it holds nothing. */
    public ActivationKind() {
        super("activation", 4);
    }

    @Override
    BiFunction<Trace, SplittableRandom, TraceMemory> memories(SplittableRandom dice) {
        ActivationMemory.Numbers numbers = new ActivationMemory.Numbers(0.33, 0.025, -1.18, 0.21);
        ActivationMemory.Clock clock = new ActivationMemory.Clock(numbers.between());
        clock.startAt(-80 * 86_400.0);
        double rate = about(0.146, 0.15, dice);
        return (trace, birth) -> new ActivationMemory(
                numbers, clock, Math.max(0.04, rate + 0.019 * Traits.within(birth.nextGaussian(), 2)));
    }
}
