// SPDX-License-Identifier: Apache-2.0
package fourfold.simulation;

import fourfold.facts.Trace;
import java.util.SplittableRandom;
import java.util.function.BiFunction;

/** Children in whose heads the answers of neighbouring facts compete. */
public final class CompetingKind extends MemoryKind {
    /** The kind; it holds nothing. */
    public CompetingKind() {
        super("competing", 5);
    }

    @Override
    BiFunction<Trace, SplittableRandom, TraceMemory> memories(SplittableRandom dice) {
        CompetingMemory.Numbers numbers =
                new CompetingMemory.Numbers(about(4.3, 0.2, dice), 0.34, 0.15, 0.42, 3.54, 0.647, 0.4);
        CompetingMemory[] network = new CompetingMemory[Trace.COUNT];
        return (trace, birth) -> new CompetingMemory(numbers, trace, network);
    }
}
