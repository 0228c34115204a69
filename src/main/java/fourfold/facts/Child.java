package fourfold.facts;

import java.time.Instant;
import java.util.UUID;

/**
 * A child who practises. A first name or nickname is enough.
 *
 * @param id unique across computers
 * @param name 1 to 40 characters of any script, no control characters, no blanks at the ends
 * @param since when the child was added
 */
public record Child(UUID id, String name, Instant since) {
    /** The longest name, counted in characters (code points). */
    public static final int LONGEST_NAME = 40;

    public Child {
        name = checkName(name);
    }

    /**
     * The name as it is kept: without blanks at its ends.
     *
     * @throws IllegalArgumentException if it is empty, longer than 40 characters, or holds control characters
     */
    public static String checkName(String name) {
        String kept = name.strip();
        int length = kept.codePointCount(0, kept.length());
        if (length < 1 || length > LONGEST_NAME) {
            throw new IllegalArgumentException("a name has 1 to " + LONGEST_NAME + " characters, not " + length);
        }
        if (kept.codePoints()
                .anyMatch(c -> Character.isISOControl(c)
                        || Character.getType(c) == Character.LINE_SEPARATOR
                        || Character.getType(c) == Character.PARAGRAPH_SEPARATOR
                        || Character.getType(c) == Character.SURROGATE)) {
            throw new IllegalArgumentException("a name holds no control characters");
        }
        return kept;
    }
}
