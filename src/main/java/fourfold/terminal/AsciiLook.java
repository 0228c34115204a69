// SPDX-License-Identifier: Apache-2.0
package fourfold.terminal;

import java.text.Normalizer;
import java.util.Map;
import java.util.stream.Collectors;

/** How a character looks on a terminal that knows only ASCII: one column for one column. */
final class AsciiLook {
    private static final Map<Character, Character> LOOKS = table(
            // Signs of the trade.
            "×x",
            "÷/",
            "−-",
            "–-",
            "—-",
            "·.",
            "•*",
            "….",
            "✓v",
            "✔v",
            "★*",
            "☆*",
            "●o",
            "○o",
            // Arrows.
            "←<",
            "→>",
            "↑^",
            "↓v",
            "↔-",
            "↕|",
            "►>",
            "◄<",
            "„\"",
            // Shades, thin to dense.
            "░:",
            "▒=",
            "▓#",
            "█@",
            // Parts of blocks.
            "▀#",
            "▄#",
            "▌#",
            "▐#",
            "■#",
            "□.",
            "▲o",
            "◇x",
            "▪#",
            "▫.",
            "▏|",
            "▎|",
            "▍|",
            "▋#",
            "▊#",
            "▉#",
            "▁_",
            "▂_",
            "▃_",
            "▅#",
            "▆#",
            "▇#",
            "▖#",
            "▗#",
            "▘#",
            "▝#",
            "▙#",
            "▛#",
            "▜#",
            "▟#",
            "▚#",
            "▞#",
            // Boxes.
            "─-",
            "━-",
            "═=",
            "╌-",
            "┄-",
            "│|",
            "┃|",
            "║|",
            "╎|",
            "┆|",
            // Quotation marks.
            "‘'",
            "’'",
            "“\"",
            "”\"",
            "«<",
            "»>",
            "\u00a0 ");

    private AsciiLook() {}

    /** The character itself if it is ASCII, else the nearest look; a question mark if there is none. */
    static char of(char c) {
        if (c < 0x80) {
            return c;
        }
        Character look = LOOKS.get(c);
        if (look != null) {
            return look;
        }
        boolean corner = c >= '┌' && c <= '╿';
        return corner ? '+' : withoutMarks(c);
    }

    private static char withoutMarks(char c) {
        char base = Normalizer.normalize(String.valueOf(c), Normalizer.Form.NFD).charAt(0);
        return base < 0x80 ? base : '?';
    }

    private static Map<Character, Character> table(String... pairs) {
        return java.util.stream.Stream.of(pairs)
                .collect(Collectors.toUnmodifiableMap(pair -> pair.charAt(0), pair -> pair.charAt(1)));
    }
}
