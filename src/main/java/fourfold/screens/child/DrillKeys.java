// SPDX-License-Identifier: Apache-2.0
package fourfold.screens.child;

import fourfold.drill.Event;
import fourfold.drill.Phase;
import fourfold.progress.Setting;
import fourfold.progress.Settings;
import fourfold.terminal.Key;
import fourfold.words.Words;
import java.time.Instant;

/**
 * What the keys mean in a drill. Every sort of hand finds what it needs close by: Enter or the space bar or + say
 * "ready", Backspace or - or a point or x take a digit back, Esc or * or / or p pause. All of them always work, and no key
 * has to be held; the parent's choice only says which ones the child is told of.
 */
final class DrillKeys {
    private final Words words;
    private final String choice;

    DrillKeys(Words words, Settings settings) {
        this.words = words;
        this.choice = settings.value(Setting.KEYS);
    }

    /** The event a key makes at that moment. */
    static Event event(Key key, Instant at) {
        return switch (key.kind()) {
            case DIGIT -> new Event.Digit(key.digit(), at);
            case ENTER -> new Event.Enter(at);
            case ERASE -> new Event.Erase(at);
            case ESCAPE -> new Event.Pause(at);
            case LETTER -> letter(key, at);
            default -> new Event.Stray(at);
        };
    }

    /** The same in a phase of the drill: the key that shows the keys makes a pause, for the pause shows them. */
    static Event meant(Key key, Phase phase, Instant at) {
        boolean asksForKeys = key.is('?') && !phase.isAtRest() && !(phase instanceof Phase.OneMinute);
        return asksForKeys ? new Event.Pause(at) : event(key, at);
    }

    private static Event letter(Key key, Instant at) {
        return switch (Character.toLowerCase(key.letter())) {
            case ' ', '+' -> new Event.Enter(at);
            case '-', '.', ',', 'x' -> new Event.Erase(at);
            case '*', '/', 'p' -> new Event.Pause(at);
            default -> new Event.Stray(at);
        };
    }

    /** The name of the key that says "ready" and "go on". */
    String ready() {
        return words.say("keys." + choice + ".ready");
    }

    /** The name of the key that takes a digit back. */
    String erase() {
        return words.say("keys." + choice + ".erase");
    }

    /** The name of the key that pauses, and in a pause stops. */
    String pause() {
        return words.say("keys." + choice + ".pause");
    }
}
