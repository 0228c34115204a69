package fourfold.screens.parent;

import fourfold.facts.Family;
import fourfold.home.Records;
import fourfold.log.ActionRecord;
import fourfold.log.Child;
import fourfold.log.ParentAction;
import fourfold.progress.Progress;
import fourfold.words.ActionWords;
import fourfold.words.Words;
import java.time.Instant;
import java.util.List;
import java.util.function.Function;

/** The parent's keys for focus, hold, reset and undo, for one family or a whole table; what they did is told in a line. */
final class SteeringKeys {
    private final Records records;
    private final Child child;
    private final Words words;
    private Progress progress;
    private String told = "";

    SteeringKeys(Records records, Child child) {
        this.records = records;
        this.child = child;
        this.words = records.words();
        this.progress = records.progress(child);
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

    /** Keeps one deed. */
    void keep(ParentAction deed, Instant at) {
        records.keep(child, List.of(deed), at);
        renew();
    }

    /** Reads again where the child stands. */
    void renew() {
        progress = records.progress(child);
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
        records.keep(child, List.of(open ? new ParentAction.OpenTable(table) : new ParentAction.CloseTable(table)), at);
        progress = records.progress(child);
        say(words.say(open ? "steer.open" : "steer.close", table));
    }

    /**
     * Takes back the last thing that was done and still holds: all its deeds have the same time. Who the child is was
     * not done here, and is not taken back here.
     */
    void undo(Instant at) {
        List<ActionRecord> inForce = ActionRecord.inForce(records.acts(child)).stream()
                .filter(a -> !(a.deed() instanceof ParentAction.Choose choose && choose.isOfWhoTheChildIs()))
                .toList();
        if (inForce.isEmpty()) {
            say(words.say("steer.nothing"));
            return;
        }
        ActionRecord last = inForce.get(inForce.size() - 1);
        List<ActionRecord> together =
                inForce.stream().filter(a -> a.at().equals(last.at())).toList();
        records.keep(
                child,
                together.stream()
                        .<ParentAction>map(a -> new ParentAction.Undo(a.id()))
                        .toList(),
                at);
        renew();
        say(words.say(
                "steer.undone",
                ActionWords.told(
                        words, together.stream().map(ActionRecord::deed).toList())));
    }

    private void keep(List<Family> families, Function<Family, ParentAction> deed, Instant at) {
        records.keep(child, families.stream().map(deed).toList(), at);
        progress = records.progress(child);
    }
}
