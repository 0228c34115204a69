package fourfold.screens;

import fourfold.facts.Deed;
import java.util.stream.Collectors;

/** Deeds in plain words. */
final class Deeds {
    private Deeds() {}

    static String told(Words words, Deed deed) {
        if (deed instanceof Deed.Focus focus) {
            return words.say("deed.focus", words.name(focus.family()));
        } else if (deed instanceof Deed.Hold hold) {
            return words.say("deed.hold", words.name(hold.family()));
        } else if (deed instanceof Deed.Release release) {
            return words.say("deed.release", words.name(release.family()));
        } else if (deed instanceof Deed.Reset reset) {
            return words.say("deed.reset", words.name(reset.family()));
        } else if (deed instanceof Deed.OpenTable open) {
            return words.say("deed.open", open.table());
        } else if (deed instanceof Deed.CloseTable close) {
            return words.say("deed.close", close.table());
        } else if (deed instanceof Deed.Order order) {
            return words.say(
                    "deed.order", order.tables().stream().map(String::valueOf).collect(Collectors.joining(" ")));
        } else if (deed instanceof Deed.Choose choose) {
            return words.say("deed.choose", choose.setting(), choose.chosen());
        }
        return words.say("deed.undo");
    }
}
