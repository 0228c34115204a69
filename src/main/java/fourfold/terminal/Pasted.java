// SPDX-License-Identifier: Apache-2.0
package fourfold.terminal;

import com.googlecode.lanterna.input.KeyStroke;
import com.googlecode.lanterna.input.KeyType;

/**
 * A text that came in one piece, as no hand types it. Only a page that asks for a text takes it; for all others it is a key
 * without meaning, so that nobody can paste an answer.
 */
public final class Pasted extends KeyStroke {
    /** Longer than any text that is asked for. */
    static final int LONGEST = 1000;

    private final String text;

    /** A text as it came, line end and all. */
    public Pasted(String text) {
        super(KeyType.Unknown);
        this.text = text.strip();
    }

    /** The text without blanks and line ends around it. */
    String text() {
        return text;
    }

    /** Whether it is one line, and not too long: more is no text that is asked for. */
    boolean isLine() {
        return !text.isEmpty() && text.length() <= LONGEST && text.chars().noneMatch(Character::isISOControl);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Pasted pasted && pasted.text.equals(text);
    }

    @Override
    public int hashCode() {
        return text.hashCode();
    }
}
