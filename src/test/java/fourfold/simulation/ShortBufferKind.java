// SPDX-License-Identifier: Apache-2.0
package fourfold.simulation;

import fourfold.facts.Trace;
import java.util.SplittableRandom;
import java.util.function.BiFunction;

/** Children with a weak short-term memory: what they were just shown is gone within a minute. */
public final class ShortBufferKind extends MemoryKind {
    /** The kind; it holds nothing. */
    public ShortBufferKind() {
        super("short-buffer", 7);
    }

    @Override
    BiFunction<Trace, SplittableRandom, TraceMemory> memories(SplittableRandom dice) {
        BufferMemory.Numbers numbers =
                new BufferMemory.Numbers(about(22.8, 0.4, dice) * 86_400, 150 * 86_400.0, 0.72, 0.985);
        BufferMemory.Buffer buffer = new BufferMemory.Buffer(2, 45);
        return (trace, birth) -> new BufferMemory(numbers, buffer);
    }
}
