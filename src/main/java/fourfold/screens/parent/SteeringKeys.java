package fourfold.screens.parent;

import fourfold.facts.Family;
import fourfold.log.Child;
import fourfold.log.ParentAction;
import fourfold.progress.Progress;
import fourfold.screens.PageContext;
import fourfold.words.ActionWords;
import fourfold.words.Words;
import java.time.Instant;
import java.util.List;
import java.util.function.Function;

/** The parent's keys for focus, hold, reset and undo, for one family or a whole table; what they did is told in a line. */
final class SteeringKeys {
    private final PageContext context;
    private final Child child;
    private final Words words;
    private Progress progress;
    private String told = "";

    SteeringKeys(PageContext context, Child child) {
        this.context = context;
        this.child = child;
        this.words = context.words();
        this.progress = context.home().records().progress(child);
    }

    Progress progress() {
        return progress;
    }

    String told() {
        return told;
    }

    void say(String words) {
        told = words.isEmpty() ? words : Character.toUpperCase(words.charAt(0)) + words.substring(1);
    }

    void focus(List<Family> families, String name, Instant at) {
        boolean all =
                families.stream().allMatch(f -> progress.steering().focused().contains(f));
        keep(families, all ? ParentAction.Release::new : ParentAction.Focus::new, at);
        say(words.say(all ? "steer.nofocus" : "steer.focus", name));
    }

    /** Keeps one action. */
    void keep(ParentAction action, Instant at) {
        context.home().steering().keep(child, List.of(action), at);
        renew();
    }

    /** Reads again where the child stands. */
    void renew() {
        progress = context.home().records().progress(child);
    }

    /** Focus on all of these, whatever was before. */
    void focusOn(List<Family> families, Instant at) {
        keep(families, ParentAction.Focus::new, at);
    }

    void hold(List<Family> families, String name, Instant at) {
        boolean all = families.stream().allMatch(f -> progress.isHeld(f));
        keep(families, all ? ParentAction.Release::new : ParentAction.Hold::new, at);
        say(words.say(all ? "steer.nohold" : "steer.hold", name));
    }

    void reset(List<Family> families, String name, Instant at) {
        keep(families, ParentAction.Reset::new, at);
        say(words.say("steer.reset", name));
    }

    void open(int table, boolean open, Instant at) {
        context.home()
                .steering()
                .keep(
                        child,
                        List.of(open ? new ParentAction.OpenTable(table) : new ParentAction.CloseTable(table)),
                        at);
        progress = context.home().records().progress(child);
        say(words.say(open ? "steer.open" : "steer.close", table));
    }

    /** Takes back the last thing that was done and still holds. */
    void undo(Instant at) {
        List<ParentAction> undone = context.home().steering().undo(child, at);
        if (undone.isEmpty()) {
            say(words.say("steer.nothing"));
            return;
        }
        renew();
        say(words.say("steer.undone", ActionWords.told(words, undone)));
    }

    private void keep(List<Family> families, Function<Family, ParentAction> action, Instant at) {
        context.home().steering().keep(child, families.stream().map(action).toList(), at);
        progress = context.home().records().progress(child);
    }
}
