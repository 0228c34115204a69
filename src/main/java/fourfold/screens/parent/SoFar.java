// SPDX-License-Identifier: Apache-2.0
package fourfold.screens.parent;

import fourfold.screens.HomeEffect;
import fourfold.upkeep.Advance;
import java.util.OptionalInt;
import java.util.concurrent.atomic.AtomicInteger;

/** How far long work on the records has come: told by the file's thread, asked by the one that shows pictures. */
final class SoFar implements Advance {
    private final AtomicInteger percent = new AtomicInteger();

    /** Work that tells how far it has come. */
    interface Told extends HomeEffect {
        /** What it tells. */
        SoFar soFar();

        @Override
        default OptionalInt percent() {
            return OptionalInt.of(soFar().percent.get());
        }
    }

    /** How far it has come is no part of what is to be done: all of them are alike. */
    @Override
    public boolean equals(Object other) {
        return other instanceof SoFar;
    }

    @Override
    public int hashCode() {
        return SoFar.class.hashCode();
    }

    @Override
    public void to(int now) {
        percent.accumulateAndGet(now, Math::max);
    }
}
