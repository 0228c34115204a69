// SPDX-License-Identifier: Apache-2.0
package fourfold.simulation;

import fourfold.facts.Trace;
import java.util.SplittableRandom;
import java.util.function.BiFunction;

/** Children who learn by the predictive performance equation. */
public final class PredictiveKind extends MemoryKind {
    /** The kind; it holds nothing. */
    public PredictiveKind() {
        super("predictive", 1);
    }

    @Override
    BiFunction<Trace, SplittableRandom, TraceMemory> memories(SplittableRandom dice) {
        PredictiveMemory.Numbers numbers =
                new PredictiveMemory.Numbers(0.02, about(0.0966, 0.1, dice), 0.3, 0.101, 0.01);
        return (trace, birth) -> new PredictiveMemory(numbers);
    }

    @Override
    Traits traits(SplittableRandom dice) {
        return Traits.usual(dice).abler(-0.5);
    }
}
