// SPDX-License-Identifier: Apache-2.0
package fourfold.screens.parent;

import fourfold.home.Home;
import fourfold.log.Child;
import fourfold.screens.HomeEffect;
import fourfold.words.Words;
import java.time.Instant;
import java.util.List;

/** Opens what parents see first: the gate if there is one, and behind it the grid of the only child, or a choice. */
public record OpenParents(Words words, Instant at) implements HomeEffect {
    @Override
    public Outcome perform(Home home) {
        Behind behind = new Behind(words, at);
        return home.gate().isSet() ? new Made(new GatePage(words, behind)) : behind.perform(home);
    }

    /** What is behind the gate: the only child's grid, a choice of several, or those put away, so that they can come back. */
    record Behind(Words words, Instant at) implements HomeEffect {
        @Override
        public Outcome perform(Home home) {
            List<Child> children = home.children().list();
            return switch (children.size()) {
                case 0 -> new Made(new ChildrenPage(words, home.children().all()));
                case 1 -> new OpenPage.OfGrid(words, children.get(0), at).perform(home);
                default -> new Made(ParentPage.of(words, children));
            };
        }
    }
}
