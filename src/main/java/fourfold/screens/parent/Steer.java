// SPDX-License-Identifier: Apache-2.0
package fourfold.screens.parent;

import fourfold.home.Home;
import fourfold.home.Standing;
import fourfold.log.Child;
import fourfold.log.ParentAction;
import fourfold.screens.HomeEffect;
import fourfold.words.ActionWords;
import fourfold.words.Words;
import java.time.Instant;
import java.util.List;

/**
 * Keeps actions of a parent, all with the same time, and reads where the child stands then.
 *
 * @param actions what the parent decided; none just to read
 * @param message the line to show once it is kept
 */
record Steer(Child child, List<ParentAction> actions, Instant at, String message) implements HomeEffect {
    /** Where the child stands now, and the line to show. */
    record Steered(Standing standing, String message) implements Outcome {}

    @Override
    public Outcome perform(Home home) {
        if (!actions.isEmpty()) {
            home.steering().keep(child, actions, at);
        }
        return new Steered(home.records().standing(child), message);
    }

    /** Takes back the last thing that was done and still holds. */
    record Undo(Words words, Child child, Instant at) implements HomeEffect {
        @Override
        public Outcome perform(Home home) {
            List<ParentAction> undone = home.steering().undo(child, at);
            return new Steered(
                    home.records().standing(child),
                    undone.isEmpty()
                            ? words.say("steer.nothing")
                            : words.say("steer.undone", ActionWords.told(words, undone)));
        }
    }
}
