package fourfold.screens;

import fourfold.progress.Mastery;
import java.util.Map;

/** The shapes of the levels, denser with mastery, and what stands for other signs where there is only ASCII. */
final class Shades {
    private static final Map<Character, Character> PLAIN = Map.ofEntries(
            Map.entry('×', 'x'),
            Map.entry('÷', '/'),
            Map.entry('·', '.'),
            Map.entry('░', ':'),
            Map.entry('▒', '='),
            Map.entry('▓', '#'),
            Map.entry('█', '@'),
            Map.entry('↔', '-'),
            Map.entry('↕', '|'),
            Map.entry('↑', '^'),
            Map.entry('↓', 'v'),
            Map.entry('←', '<'),
            Map.entry('→', '>'),
            Map.entry('●', 'o'),
            Map.entry('○', '.'),
            Map.entry('▸', '>'),
            Map.entry('─', '-'),
            Map.entry('━', '='),
            Map.entry('│', '|'),
            Map.entry('▪', '*'),
            Map.entry('–', '-'),
            Map.entry('…', '.'),
            Map.entry('’', '\''),
            Map.entry('“', '"'),
            Map.entry('”', '"'));

    private Shades() {}

    /** The shade of a level: · ░ ▒ ▓ █. */
    static char of(Mastery level) {
        return "·░▒▓█".charAt(level.ordinal());
    }

    /** The character itself, or what stands for it in ASCII; a question mark for what has no stand-in. */
    static char plain(char c) {
        return c < 0x7f ? c : PLAIN.getOrDefault(c, '?');
    }
}
