package fourfold.screens;

import fourfold.facts.Act;
import fourfold.facts.Child;
import fourfold.facts.Deed;
import fourfold.facts.Family;
import fourfold.progress.Progress;
import java.time.Instant;
import java.util.List;
import java.util.function.Function;

/** The parent's keys for focus, hold, reset and undo, for one family or a whole table; what they did is told in a line. */
final class Steers {
    private final Records records;
    private final Child child;
    private final Words words;
    private Progress progress;
    private String told = "";

    Steers(Records records, Child child) {
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
        keep(families, all ? Deed.Release::new : Deed.Focus::new, at);
        say(words.say(all ? "steer.nofocus" : "steer.focus", name));
    }

    /** Keeps one deed. */
    void keep(Deed deed, Instant at) {
        records.keep(child, List.of(deed), at);
        renew();
    }

    /** Reads again where the child stands. */
    void renew() {
        progress = records.progress(child);
    }

    /** Focus on all of these, whatever was before. */
    void focusOn(List<Family> families, Instant at) {
        keep(families, Deed.Focus::new, at);
    }

    void hold(List<Family> families, String name, Instant at) {
        boolean all = families.stream().allMatch(f -> progress.isHeld(f));
        keep(families, all ? Deed.Release::new : Deed.Hold::new, at);
        say(words.say(all ? "steer.nohold" : "steer.hold", name));
    }

    void reset(List<Family> families, String name, Instant at) {
        keep(families, Deed.Reset::new, at);
        say(words.say("steer.reset", name));
    }

    void open(int table, boolean open, Instant at) {
        records.keep(child, List.of(open ? new Deed.OpenTable(table) : new Deed.CloseTable(table)), at);
        progress = records.progress(child);
        say(words.say(open ? "steer.open" : "steer.close", table));
    }

    /**
     * Takes back the last thing that was done and still holds: all its deeds have the same time. Who the child is was
     * not done here, and is not taken back here.
     */
    void undo(Instant at) {
        List<Act> inForce = Act.inForce(records.acts(child)).stream()
                .filter(a -> !(a.deed() instanceof Deed.Choose choose && choose.isOfWhoTheChildIs()))
                .toList();
        if (inForce.isEmpty()) {
            say(words.say("steer.nothing"));
            return;
        }
        Act last = inForce.get(inForce.size() - 1);
        List<Act> together =
                inForce.stream().filter(a -> a.at().equals(last.at())).toList();
        records.keep(
                child, together.stream().<Deed>map(a -> new Deed.Undo(a.id())).toList(), at);
        renew();
        say(words.say(
                "steer.undone",
                Deeds.told(words, together.stream().map(Act::deed).toList())));
    }

    private void keep(List<Family> families, Function<Family, Deed> deed, Instant at) {
        records.keep(child, families.stream().map(deed).toList(), at);
        progress = records.progress(child);
    }
}
