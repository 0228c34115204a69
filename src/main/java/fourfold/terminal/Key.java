// SPDX-License-Identifier: Apache-2.0
package fourfold.terminal;

import com.googlecode.lanterna.input.KeyStroke;
import com.googlecode.lanterna.input.KeyType;

/**
 * A key as the pages know it.
 *
 * @param kind what sort of key
 * @param letter the character, for letters, digits and signs; otherwise 0
 * @param text what was pasted; otherwise empty
 */
public record Key(Kind kind, char letter, String text) {
    /** Sorts of keys. */
    public enum Kind {
        LETTER,
        DIGIT,
        ENTER,
        ERASE,
        ESCAPE,
        UP,
        DOWN,
        LEFT,
        RIGHT,
        INTERRUPT,
        SUSPEND,
        REDRAW,
        PASTE,
        OTHER
    }

    /** A key that is no paste. */
    public Key(Kind kind, char letter) {
        this(kind, letter, "");
    }

    /** A key of a sort that has no letter. */
    public static Key of(Kind kind) {
        return new Key(kind, '\0');
    }

    /** What a key stroke of the terminal means here. Digits of any script count as digits. */
    public static Key of(KeyStroke stroke) {
        KeyType type = stroke.getKeyType();
        if (type == KeyType.Character) {
            char c = stroke.getCharacter();
            if (stroke.isCtrlDown()) {
                return control(Character.toLowerCase(c));
            }
            if (stroke.isAltDown() || Character.isISOControl(c)) {
                return of(Kind.OTHER);
            }
            int digit = Character.digit(c, 10);
            return digit >= 0 ? new Key(Kind.DIGIT, (char) ('0' + digit)) : new Key(Kind.LETTER, c);
        }
        if (stroke instanceof Pasted pasted && pasted.isLine()) {
            return new Key(Kind.PASTE, '\0', pasted.text());
        }
        return switch (type) {
            case Enter -> of(Kind.ENTER);
            case Backspace, Delete -> of(Kind.ERASE);
            case Escape -> of(Kind.ESCAPE);
            case ArrowUp -> of(Kind.UP);
            case ArrowDown -> of(Kind.DOWN);
            case ArrowLeft -> of(Kind.LEFT);
            case ArrowRight -> of(Kind.RIGHT);
            default -> of(Kind.OTHER);
        };
    }

    private static Key control(char c) {
        return switch (c) {
            case 'c', 'd' -> of(Kind.INTERRUPT);
            // The desktop window delivers Ctrl-Z one place off.
            case 'z', '\u001a' -> of(Kind.SUSPEND);
            case 'l' -> of(Kind.REDRAW);
            default -> of(Kind.OTHER);
        };
    }

    /** Whether this is the letter, in either case. */
    public boolean is(char wanted) {
        return kind == Kind.LETTER && Character.toLowerCase(letter) == wanted;
    }

    /** The digit's value, 0 to 9. */
    public int digit() {
        return letter - '0';
    }

    /** Whether this key leaves a page that is only read. */
    public boolean closes() {
        return kind == Kind.ESCAPE || kind == Kind.ENTER;
    }

    /** Where a list begins after this key: a line further up or down by the arrows, from 0 to {@code last}. */
    public int scrolled(int first, int last) {
        int by = kind == Kind.UP ? -1 : kind == Kind.DOWN ? 1 : 0;
        return Math.max(0, Math.min(last, Math.min(first, last) + by));
    }

    /** Whether it types digits and nothing else. */
    public boolean isDigits() {
        return kind == Kind.DIGIT || (kind == Kind.PASTE && text.chars().allMatch(c -> c >= '0' && c <= '9'));
    }

    /** A text after this key: a character or a paste more, the last character less, or as it was. */
    public String typedAfter(String text, int longest) {
        return switch (kind) {
            case ERASE -> text.isEmpty() ? text : text.substring(0, text.offsetByCodePoints(text.length(), -1));
            case LETTER, DIGIT -> text.codePointCount(0, text.length()) < longest ? text + letter : text;
            case PASTE ->
                (text + this.text).codePointCount(0, text.length() + this.text.length()) <= longest
                        ? text + this.text
                        : text;
            default -> text;
        };
    }
}
