// SPDX-License-Identifier: Apache-2.0
package fourfold.drill;

import java.util.List;

/**
 * What an event leads to. The effects come first; only when all of them have succeeded does the next drill count.
 *
 * @param next the drill afterwards
 * @param effects what must be done before, in this order
 */
public record Step(Drill next, List<Effect> effects) {
    public Step {
        effects = List.copyOf(effects);
    }

    static Step to(Drill next, Effect... effects) {
        return new Step(next, List.of(effects));
    }
}
