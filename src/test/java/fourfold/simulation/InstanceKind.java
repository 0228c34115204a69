// SPDX-License-Identifier: Apache-2.0
package fourfold.simulation;

import fourfold.facts.Trace;
import java.util.SplittableRandom;
import java.util.function.BiFunction;

/** Children in whose heads remembered instances race against counting. */
public final class InstanceKind extends MemoryKind {
    /** The kind; it holds nothing. */
    public InstanceKind() {
        super("instances", 6);
    }

    @Override
    BiFunction<Trace, SplittableRandom, TraceMemory> memories(SplittableRandom dice) {
        InstanceMemory.Numbers numbers = new InstanceMemory.Numbers(about(1.59, 0.2, dice), 1.5, 560_000, 4.86, 0.91);
        return (trace, birth) -> new InstanceMemory(numbers);
    }

    @Override
    Traits traits(SplittableRandom dice) {
        return Traits.usual(dice).abler(0.1);
    }
}
