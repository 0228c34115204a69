// SPDX-License-Identifier: Apache-2.0
package fourfold.screens.child;

import fourfold.drill.Gain;
import fourfold.facts.Families;
import fourfold.facts.Family;
import fourfold.insight.LifetimeProgress;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;

/**
 * The stones of a day as they are laid, the hardest family's last. It takes little more than a second, and it is the one
 * thing in the program that moves.
 *
 * @param before the stairs before the drill
 * @param laid the family of each stone laid today, in the order in which they are laid
 * @param began when the first was shown; empty until then
 * @param shown how many are shown
 */
record TodaysStones(LifetimeProgress before, List<Family> laid, Optional<Instant> began, int shown) {
    private static final Duration WHOLE = Duration.ofMillis(1200);

    /** One stone's time where there are few. */
    private static final Duration ONE = Duration.ofMillis(200);

    /** What was laid between the two, nothing of it shown yet. */
    static TodaysStones between(LifetimeProgress before, LifetimeProgress now) {
        List<Family> laid = new ArrayList<>();
        Families.all().stream()
                .sorted(Gain.HARDNESS)
                .forEach(f -> laid.addAll(Collections.nCopies(now.stones(f) - before.stones(f), f)));
        return new TodaysStones(before, List.copyOf(laid), Optional.empty(), 0);
    }

    /** The stones of a family as far as they are shown. */
    int stones(Family family) {
        return before.stones(family)
                + (int) laid.stream().limit(shown).filter(family::equals).count();
    }

    /** Whether the last stone of all was laid today. */
    boolean areTheLast() {
        return !laid.isEmpty() && isWhole();
    }

    /** Whether the stairs have all their stones now. */
    boolean isWhole() {
        return before.laid() + laid.size() == LifetimeProgress.MOST * Families.COUNT;
    }

    /** Whether some are not shown yet. */
    boolean isMoving() {
        return shown < laid.size();
    }

    /** All of them shown. */
    TodaysStones all() {
        return new TodaysStones(before, laid, began, laid.size());
    }

    /** As many as are to be shown at that moment. */
    TodaysStones at(Instant now) {
        if (!isMoving()) {
            return this;
        }
        Instant since = began.orElse(now);
        long whole = Math.min(WHOLE.toMillis(), ONE.toMillis() * laid.size());
        long gone = Duration.between(since, now).toMillis();
        int due = (int) Math.min(laid.size(), gone * laid.size() / whole);
        return due == shown && began.isPresent() ? this : new TodaysStones(before, laid, Optional.of(since), due);
    }
}
