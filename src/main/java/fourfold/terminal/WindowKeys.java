// SPDX-License-Identifier: Apache-2.0
package fourfold.terminal;

import com.googlecode.lanterna.input.KeyStroke;
import com.googlecode.lanterna.input.KeyType;
import java.awt.event.KeyEvent;
import java.util.Optional;
import java.util.OptionalInt;

/** What the desktop's keys mean as keys of a terminal. */
final class WindowKeys {
    private WindowKeys() {}

    /** The key of something pressed that types no character; empty if a character follows, or nothing is meant. */
    static Optional<KeyStroke> pressed(KeyEvent event) {
        if (event.isControlDown() && event.getKeyCode() >= KeyEvent.VK_A && event.getKeyCode() <= KeyEvent.VK_Z) {
            char letter = (char) ('a' + event.getKeyCode() - KeyEvent.VK_A);
            return Optional.of(new KeyStroke(letter, true, event.isAltDown()));
        }
        KeyType type = switch (event.getKeyCode()) {
            case KeyEvent.VK_ENTER -> KeyType.Enter;
            case KeyEvent.VK_BACK_SPACE -> KeyType.Backspace;
            case KeyEvent.VK_DELETE -> KeyType.Delete;
            case KeyEvent.VK_ESCAPE -> KeyType.Escape;
            case KeyEvent.VK_TAB -> KeyType.Tab;
            case KeyEvent.VK_UP, KeyEvent.VK_KP_UP -> KeyType.ArrowUp;
            case KeyEvent.VK_DOWN, KeyEvent.VK_KP_DOWN -> KeyType.ArrowDown;
            case KeyEvent.VK_LEFT, KeyEvent.VK_KP_LEFT -> KeyType.ArrowLeft;
            case KeyEvent.VK_RIGHT, KeyEvent.VK_KP_RIGHT -> KeyType.ArrowRight;
            case KeyEvent.VK_HOME -> KeyType.Home;
            case KeyEvent.VK_END -> KeyType.End;
            case KeyEvent.VK_PAGE_UP -> KeyType.PageUp;
            case KeyEvent.VK_PAGE_DOWN -> KeyType.PageDown;
            default -> null;
        };
        return Optional.ofNullable(type).map(KeyStroke::new);
    }

    /** By how much Ctrl with +, − or 0 makes the letters larger: 1, −1, or 0 for the usual size; empty for other keys. */
    static OptionalInt zoom(KeyEvent event) {
        if (!event.isControlDown()) {
            return OptionalInt.empty();
        }
        return switch (event.getKeyCode()) {
            case KeyEvent.VK_PLUS, KeyEvent.VK_ADD, KeyEvent.VK_EQUALS -> OptionalInt.of(1);
            case KeyEvent.VK_MINUS, KeyEvent.VK_SUBTRACT -> OptionalInt.of(-1);
            case KeyEvent.VK_0, KeyEvent.VK_NUMPAD0 -> OptionalInt.of(0);
            default -> OptionalInt.empty();
        };
    }

    /** The key of a character that was typed; empty for control characters, whose keys were told when pressed. */
    static Optional<KeyStroke> typed(KeyEvent event) {
        char c = event.getKeyChar();
        boolean plain = c != KeyEvent.CHAR_UNDEFINED
                && !Character.isISOControl(c)
                && !event.isControlDown()
                && !event.isMetaDown();
        return plain
                ? Optional.of(new KeyStroke(c, false, event.isAltDown() && !event.isAltGraphDown()))
                : Optional.empty();
    }
}
