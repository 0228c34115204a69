// SPDX-License-Identifier: Apache-2.0
package fourfold.terminal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.googlecode.lanterna.SGR;
import com.googlecode.lanterna.TextCharacter;
import com.googlecode.lanterna.TextColor;
import java.util.Map;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;

/** Guards against question marks and colours on terminals that cannot show what was drawn. */
class AbilitiesTest {
    private static final TextColor SAND = new TextColor.RGB(225, 204, 92);

    private static ColourDepth depth(String... namesAndValues) {
        Map<String, String> environment = new java.util.HashMap<>();
        for (int i = 0; i < namesAndValues.length; i += 2) {
            environment.put(namesAndValues[i], namesAndValues[i + 1]);
        }
        return ColourDepth.of(environment);
    }

    @Test
    void theEnvironmentSaysHowManyColours() {
        assertEquals(ColourDepth.FULL, depth("TERM", "xterm-256color", "COLORTERM", "truecolor"));
        assertEquals(ColourDepth.PALETTE, depth("TERM", "tmux-256color"));
        assertEquals(ColourDepth.SIXTEEN, depth("TERM", "xterm"));
        assertEquals(ColourDepth.EIGHT, depth("TERM", "linux"));
        assertEquals(ColourDepth.NONE, depth("TERM", "dumb", "COLORTERM", "truecolor"));
        assertEquals(ColourDepth.NONE, depth("TERM", "vt100"));
        assertEquals(ColourDepth.NONE, depth());
        // no-color.org: when present and not an empty string, regardless of its value.
        assertEquals(ColourDepth.NONE, depth("TERM", "xterm", "NO_COLOR", "0"));
        assertEquals(ColourDepth.SIXTEEN, depth("TERM", "xterm", "NO_COLOR", ""));
        // bixense.com/clicolors: CLICOLOR=0 asks for none.
        assertEquals(ColourDepth.NONE, depth("TERM", "xterm-256color", "CLICOLOR", "0"));
        assertEquals(ColourDepth.SIXTEEN, depth("TERM", "xterm", "CLICOLOR", "1"));
        assertEquals(ColourDepth.NONE, depth("TERM", "unknown"));
    }

    @Test
    void colourIsBroughtDownToWhatThereIs() {
        assertEquals(SAND, ColourDepth.FULL.nearest(SAND));
        assertTrue(ColourDepth.PALETTE.nearest(SAND) instanceof TextColor.Indexed);
        assertEquals(TextColor.ANSI.RED, ColourDepth.PALETTE.nearest(TextColor.ANSI.RED));
        assertEquals(TextColor.ANSI.RED, ColourDepth.SIXTEEN.nearest(TextColor.ANSI.RED));
        assertTrue(ColourDepth.SIXTEEN.nearest(SAND) instanceof TextColor.ANSI);
        assertEquals(TextColor.ANSI.BLUE, ColourDepth.EIGHT.nearest(new TextColor.RGB(0, 0, 160)));
        assertEquals(TextColor.ANSI.DEFAULT, ColourDepth.NONE.nearest(SAND));
        for (ColourDepth depth : ColourDepth.values()) {
            assertEquals(TextColor.ANSI.DEFAULT, depth.nearest(TextColor.ANSI.DEFAULT));
        }
    }

    @Test
    void theLocaleSaysWhichCharacters() {
        assertTrue(unicode("UTF-8"));
        assertFalse(unicode("ANSI_X3.4-1968"));
        assertTrue(unicode("ANSI_X3.4-1968", "LANG", "en_GB.UTF-8"));
        assertTrue(unicode("ANSI_X3.4-1968", "LC_CTYPE", "en_US.utf8", "LANG", "C"));
        // POSIX.1, 8.2: LC_ALL goes before the others; an empty variable counts as unset.
        assertFalse(unicode("UTF-8", "LC_ALL", "C", "LANG", "en_GB.UTF-8"));
        assertTrue(unicode("US-ASCII", "LC_ALL", "", "LANG", "en_GB.UTF-8"));
        // The starter gave Java a language setting that can express the program's path.
        assertFalse(unicode("UTF-8", "LC_CTYPE", "C.UTF-8", "FOURFOLD_CHARSET", "ANSI_X3.4-1968"));
    }

    private static boolean unicode(String nativeEncoding, String... namesAndValues) {
        Map<String, String> environment = new java.util.HashMap<>();
        for (int i = 0; i < namesAndValues.length; i += 2) {
            environment.put(namesAndValues[i], namesAndValues[i + 1]);
        }
        return Abilities.of(environment, nativeEncoding).unicode();
    }

    @Test
    void withoutUnicodeEverySignHasAPlainLook() {
        String drawn = "7 × 8 ÷ 2 ·░▒▓█ ▀▄ ─│┌┐└┘├┼ ←→↑↓ ↔↕ ✓… Zoë Đ 数";
        StringBuilder shown = new StringBuilder();
        drawn.chars().forEach(c -> shown.append(AsciiLook.of((char) c)));
        assertEquals("7 x 8 / 2 .:=#@ ## -|++++++ <>^v -| v. Zoe ? ?", shown.toString());
    }

    @Test
    void emphasisSurvives() {
        TextCharacter bold = TextCharacter.fromCharacter('×', SAND, TextColor.ANSI.DEFAULT, SGR.BOLD)[0];
        TextCharacter fitted = new Abilities(false, ColourDepth.NONE).fit(bold);
        assertEquals(
                TextCharacter.fromCharacter('x', TextColor.ANSI.DEFAULT, TextColor.ANSI.DEFAULT, SGR.BOLD)[0], fitted);
        assertEquals(bold, new Abilities(true, ColourDepth.FULL).fit(bold));
    }

    @Property
    void everyPlainLookIsOnePrintableAsciiCharacter(@ForAll char c) {
        char look = AsciiLook.of(c);
        assertTrue(look == c || (look >= ' ' && look < 0x7f), () -> "look of " + (int) c + " is " + (int) look);
        assertTrue(look < 0x80);
    }
}
