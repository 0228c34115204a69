// SPDX-License-Identifier: Apache-2.0
package fourfold.terminal;

import com.googlecode.lanterna.input.CharacterPattern;
import com.googlecode.lanterna.input.EscapeSequenceCharacterPattern;
import com.googlecode.lanterna.input.KeyStroke;
import com.googlecode.lanterna.input.KeyType;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** The library's table of sequences, with the keypad's application codes and two keys it lacks. */
final class KeyTable extends EscapeSequenceCharacterPattern {
    private static final String KEYPAD = "*+,-./0123456789";
    private static final List<KeyType> CONSOLE = List.of(KeyType.F1, KeyType.F2, KeyType.F3, KeyType.F4, KeyType.F5);

    KeyTable() {
        stdMap.put(7, KeyType.Home);
        stdMap.put(8, KeyType.End);
    }

    /** The key for what follows ESC [ or ESC O; both introducers mean the same key here. */
    KeyStroke key(String body) {
        int console = body.length() == 2 && body.charAt(0) == '[' ? "ABCDE".indexOf(body.charAt(1)) : -1;
        if (console >= 0) {
            return new KeyStroke(CONSOLE.get(console));
        }
        CharacterPattern.@Nullable Matching found =
                match(("\u001b[" + body).chars().mapToObj(c -> (char) c).toList());
        return found == null || found.fullMatch == null ? new KeyStroke(KeyType.Unknown) : found.fullMatch;
    }

    /** The keypad in application mode: ESC O j to ESC O y stand for * to 9, ESC O M for Enter. */
    Optional<KeyStroke> keypad(char letter) {
        if (letter == 'M') {
            return Optional.of(new KeyStroke(KeyType.Enter));
        }
        int place = letter - 'j';
        return place < 0 || place >= KEYPAD.length()
                ? Optional.empty()
                : Optional.of(new KeyStroke(KEYPAD.charAt(place), false, false));
    }
}
