// SPDX-License-Identifier: Apache-2.0
package fourfold.simulation;

import fourfold.facts.Trace;
import java.util.SplittableRandom;
import java.util.function.BiFunction;

/** Children with a storage strength and a retrieval strength. */
public final class TwoStrengthKind extends MemoryKind {
    /** The kind; it holds nothing. */
    public TwoStrengthKind() {
        super("two-strength", 3);
    }

    @Override
    BiFunction<Trace, SplittableRandom, TraceMemory> memories(SplittableRandom dice) {
        TwoStrengthMemory.Numbers numbers =
                new TwoStrengthMemory.Numbers(about(2.7, 0.2, dice), 0.04, 0.293, 2_280, 7.4, -2.5);
        return (trace, birth) -> new TwoStrengthMemory(numbers);
    }
}
