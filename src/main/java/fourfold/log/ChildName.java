// SPDX-License-Identifier: Apache-2.0
package fourfold.log;

import java.text.Normalizer;
import java.util.Locale;
import java.util.regex.Pattern;

/** What a child may be called, and when two names are the same: the one rule for screens, commands, files and imports. */
public final class ChildName {
    /** The longest name, counted in characters (code points). */
    public static final int LONGEST = 40;

    /** Made when two names are first compared: patterns take time at the start. */
    private static final class Blank {
        static final Pattern PATTERN = Pattern.compile("[\\p{Z}\\s]+");
    }

    private ChildName() {}

    /**
     * The name as it is kept: without blanks at its ends.
     *
     * @throws InvalidValue if it is empty, longer than {@value #LONGEST} characters, or holds control
     *     characters
     */
    static String kept(String name) {
        String kept = name.strip();
        int length = kept.codePointCount(0, kept.length());
        if (length < 1 || length > LONGEST) {
            throw new InvalidValue(Reason.NAME_LENGTH, LONGEST, length);
        }
        if (kept.codePoints().anyMatch(ChildName::isControl)) {
            throw new InvalidValue(Reason.NAME_CONTROL);
        }
        return kept;
    }

    /**
     * A name that is given now, as it is kept. Files of earlier programs may hold names that would not be given any more;
     * those are still read.
     *
     * @throws InvalidValue if nothing of it can be seen, if it is longer than {@value #LONGEST} characters, or
     *     holds control characters
     */
    public static String chosen(String name) {
        String kept = kept(name);
        if (folded(kept).isEmpty()) {
            throw new InvalidValue(Reason.NAME_UNSEEN);
        }
        return kept;
    }

    /** Whether two names are the same: see {@link #folded}. */
    public static boolean same(String one, String other) {
        return folded(one).equals(folded(other));
    }

    /**
     * The name as it is compared: by compatibility caseless matching (The Unicode Standard, section 3.13, D146, begun with NFKD), with full
     * case folding done by the JDK's upper and then lower case, so that Strauß is STRAUSS; composed to form NFKC, white
     * space joined to single blanks, and without characters that leave no mark on the screen. Folding it again changes
     * nothing.
     */
    public static String folded(String name) {
        String visible = name.codePoints()
                .filter(c -> !isInvisible(c))
                .collect(StringBuilder::new, StringBuilder::appendCodePoint, StringBuilder::append)
                .toString();
        String once = caseless(Normalizer.normalize(visible, Normalizer.Form.NFKD));
        String twice = caseless(Normalizer.normalize(once, Normalizer.Form.NFKD));
        String composed = Normalizer.normalize(twice, Normalizer.Form.NFKC);
        return Blank.PATTERN.matcher(composed).replaceAll(" ").strip();
    }

    private static String caseless(String text) {
        return text.toUpperCase(Locale.ROOT).toLowerCase(Locale.ROOT);
    }

    /**
     * Whether a character controls a terminal or breaks a line; none may be in a name.
     *
     * @param c a Unicode code point
     */
    public static boolean isControl(int c) {
        int type = Character.getType(c);
        return type == Character.CONTROL
                || type == Character.LINE_SEPARATOR
                || type == Character.PARAGRAPH_SEPARATOR
                || type == Character.SURROGATE;
    }

    /**
     * Format characters and the others that Unicode calls default ignorable (DerivedCoreProperties.txt of Unicode 13; from
     * memory), and the empty Braille cell.
     */
    private static boolean isInvisible(int c) {
        return Character.getType(c) == Character.FORMAT
                || c == 0x034F
                || (c >= 0x115F && c <= 0x1160)
                || (c >= 0x17B4 && c <= 0x17B5)
                || (c >= 0x180B && c <= 0x180F)
                || (c >= 0x2060 && c <= 0x206F)
                || c == 0x2800
                || c == 0x3164
                || (c >= 0xFE00 && c <= 0xFE0F)
                || c == 0xFFA0
                || (c >= 0xE0000 && c <= 0xE0FFF);
    }
}
