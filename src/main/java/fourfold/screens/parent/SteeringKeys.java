// SPDX-License-Identifier: Apache-2.0
package fourfold.screens.parent;

import fourfold.facts.Family;
import fourfold.home.Standing;
import fourfold.insight.LifetimeProgress;
import fourfold.log.Child;
import fourfold.log.ParentAction;
import fourfold.progress.Progress;
import fourfold.screens.HomeEffect;
import fourfold.terminal.PageEffect;
import fourfold.words.Words;
import java.time.Instant;
import java.util.List;
import java.util.function.Function;

/**
 * The parent's keys for focus, hold, reset and undo, for one family or a whole table: what they ask of the home, and
 * what the last one did.
 *
 * @param standing where the child stands now
 * @param message what the last key did, in one line; empty for nothing
 */
record SteeringKeys(Words words, Child child, Standing standing, String message) {
    SteeringKeys(Words words, Child child, Standing standing) {
        this(words, child, standing, "");
    }

    Progress progress() {
        return standing.progress();
    }

    LifetimeProgress stones() {
        return standing.stones();
    }

    SteeringKeys say(String line) {
        String message = line.isEmpty() ? line : Character.toUpperCase(line.charAt(0)) + line.substring(1);
        return new SteeringKeys(words, child, standing, message);
    }

    /** After something was done, or failed. */
    SteeringKeys after(PageEffect.Outcome outcome) {
        if (outcome instanceof Steer.Steered steered) {
            return new SteeringKeys(words, child, steered.standing()).say(steered.message());
        }
        return outcome instanceof HomeEffect.Failed failed ? say(words.failure(failed.failure())) : this;
    }

    HomeEffect focus(List<Family> families, String name, Instant at) {
        boolean all =
                families.stream().allMatch(f -> progress().steering().focused().contains(f));
        return all
                ? keep(families, ParentAction.Release::new, at, words.say("steer.nofocus", name))
                : keep(families, ParentAction.Focus::new, at, words.say("steer.focus", name));
    }

    HomeEffect hold(List<Family> families, String name, Instant at) {
        boolean all = families.stream().allMatch(progress()::isHeld);
        return all
                ? keep(families, ParentAction.Release::new, at, words.say("steer.nohold", name))
                : keep(families, ParentAction.Hold::new, at, words.say("steer.hold", name));
    }

    HomeEffect reset(List<Family> families, String name, Instant at) {
        return keep(families, ParentAction.Reset::new, at, words.say("steer.reset", name));
    }

    HomeEffect open(int table, boolean open, Instant at) {
        return open
                ? keep(new ParentAction.OpenTable(table), at, words.say("steer.open", table))
                : keep(new ParentAction.CloseTable(table), at, words.say("steer.close", table));
    }

    /** Keeps one action, and tells this. */
    HomeEffect keep(ParentAction action, Instant at, String line) {
        return new Steer(child, List.of(action), at, line);
    }

    /** Keeps an action for each family, and tells this. */
    HomeEffect keep(List<Family> families, Function<Family, ParentAction> action, Instant at, String line) {
        return new Steer(child, families.stream().map(action).toList(), at, line);
    }

    /** Reads again where the child stands. */
    HomeEffect renew(Instant at) {
        return new Steer(child, List.of(), at, message);
    }

    /** Takes back the last thing that was done and still holds. */
    HomeEffect undo(Instant at) {
        return new Steer.Undo(words, child, at);
    }
}
