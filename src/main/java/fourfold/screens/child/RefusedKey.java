// SPDX-License-Identifier: Apache-2.0
package fourfold.screens.child;

import fourfold.drill.Drill;
import fourfold.drill.Event;
import fourfold.drill.Phase;
import fourfold.drill.Phase.Asking;
import fourfold.terminal.Key;
import fourfold.words.Words;

/** Why a key did nothing in a drill, in one calm line: no key is lost without a sign. */
final class RefusedKey {
    private final Words words;
    private final Phase phase;
    private final DrillKeys keys;

    RefusedKey(Words words, Drill drill) {
        this.words = words;
        this.phase = drill.phase();
        this.keys = new DrillKeys(words, drill.progress().steering().settings());
    }

    /** Why; empty where the page in view says so already. */
    String why(Key key, Event meant) {
        if (phase instanceof Phase.Right) {
            return words.say("note.wait");
        }
        if (phase instanceof Phase.Meeting || phase instanceof Phase.Ready) {
            return words.say("note.goon", keys.ready());
        }
        return phase instanceof Asking asking ? asked(asking, key, meant) : "";
    }

    private String asked(Asking asking, Key key, Event meant) {
        if (asking.shownAt().isEmpty()) {
            return words.say("note.wait");
        }
        if (meant instanceof Event.Digit) {
            return words.say("note.long", keys.ready());
        }
        if (meant instanceof Event.Erase) {
            return words.say("note.nothing");
        }
        if (meant instanceof Event.Enter) {
            return words.say(asking.isInView() ? "note.first" : "note.look");
        }
        return words.say(key.kind() == Key.Kind.LETTER ? "note.digits" : "note.numlock");
    }
}
