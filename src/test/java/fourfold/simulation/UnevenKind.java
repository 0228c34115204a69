// SPDX-License-Identifier: Apache-2.0
package fourfold.simulation;

import fourfold.facts.Trace;
import java.util.SplittableRandom;
import java.util.function.BiFunction;

/** Children who are slow, forget quickly, and are other from day to day and from fact to fact. */
public final class UnevenKind extends MemoryKind {
    /** The kind; it holds nothing. */
    public UnevenKind() {
        super("uneven", 8);
    }

    @Override
    BiFunction<Trace, SplittableRandom, TraceMemory> memories(SplittableRandom dice) {
        double keeps = about(1, 0.3, dice);
        return (trace, birth) -> new StatesMemory(new StatesMemory.Numbers(
                Math.min(0.98, about(0.77, 0.2, birth)),
                0.82,
                Math.min(0.95, about(0.69, 0.3, birth)),
                0.98,
                about(29 * keeps, 0.3, birth),
                about(500 * keeps, 0.3, birth)));
    }

    @Override
    Traits traits(SplittableRandom dice) {
        return Traits.uneven(dice).abler(0.35);
    }
}
