// SPDX-License-Identifier: Apache-2.0
package fourfold.simulation;

import fourfold.facts.Trace;
import java.util.SplittableRandom;
import java.util.function.BiFunction;

/** Children who learn on several time scales. */
public final class MultiscaleKind extends MemoryKind {
    /** The kind; it holds nothing. */
    public MultiscaleKind() {
        super("multiscale", 2);
    }

    @Override
    BiFunction<Trace, SplittableRandom, TraceMemory> memories(SplittableRandom dice) {
        MultiscaleMemory.Numbers numbers = new MultiscaleMemory.Numbers(1, about(2.4, 0.2, dice), 1.64, 0.6, 0.2);
        return (trace, birth) -> new MultiscaleMemory(numbers);
    }
}
