// SPDX-License-Identifier: Apache-2.0
package fourfold.terminal;

import com.googlecode.lanterna.TextCharacter;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;

/**
 * What the terminal can show.
 *
 * @param unicode whether it shows more than ASCII
 * @param colours how many colours it has
 */
public record Abilities(boolean unicode, ColourDepth colours) {
    /** The variable by which the starter says what the terminal reads, where Java was told otherwise. */
    public static final String CHARSET = "FOURFOLD_CHARSET";

    /** What the environment says of the terminal, in two words: its letters, and how many colours. */
    public static String found(Map<String, String> environment) {
        Abilities found = of(environment, System.getProperty("native.encoding", "US-ASCII"));
        return (found.unicode() ? "UTF-8 " : "ASCII ") + found.colours();
    }

    /**
     * Reads the environment: the locale says which characters, see {@link ColourDepth#of} for colours.
     *
     * @param environment the variables; {@value #CHARSET} goes before all, and LC_ALL before LC_CTYPE and LANG (POSIX.1, chapter 8)
     * @param nativeEncoding the encoding to believe if no locale is set
     */
    static Abilities of(Map<String, String> environment, String nativeEncoding) {
        String locale = Stream.of(CHARSET, "LC_ALL", "LC_CTYPE", "LANG")
                .map(name -> environment.getOrDefault(name, ""))
                .filter(value -> !value.isEmpty())
                .findFirst()
                .orElse(nativeEncoding);
        String encoding = locale.toUpperCase(Locale.ROOT);
        return new Abilities(encoding.contains("UTF-8") || encoding.contains("UTF8"), ColourDepth.of(environment));
    }

    /** Whether every cell can be shown as it is drawn. */
    boolean showAll() {
        return unicode && colours == ColourDepth.FULL;
    }

    /** The cell as it can be shown. */
    TextCharacter fit(TextCharacter cell) {
        TextCharacter fitted = cell;
        if (!unicode) {
            char drawn = cell.getCharacterString().charAt(0);
            char look = AsciiLook.of(drawn);
            fitted = look == drawn ? fitted : fitted.withCharacter(look);
        }
        return fitted.withForegroundColor(colours.nearest(cell.getForegroundColor()))
                .withBackgroundColor(colours.nearest(cell.getBackgroundColor()));
    }
}
