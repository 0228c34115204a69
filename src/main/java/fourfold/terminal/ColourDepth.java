// SPDX-License-Identifier: Apache-2.0
package fourfold.terminal;

import com.googlecode.lanterna.TextColor;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;

/** How many colours the terminal can show. */
public enum ColourDepth {
    /** None: the user asked for none, or the terminal is not known to have any. */
    NONE,
    /** The eight plain colours of the Linux console. */
    EIGHT,
    /** The eight plain colours and their bright sisters. */
    SIXTEEN,
    /** The palette of 256. */
    PALETTE,
    /** Any colour. */
    FULL;

    private static final List<TextColor> BRIGHT = Stream.of(TextColor.ANSI.values())
            .filter(colour -> colour != TextColor.ANSI.DEFAULT)
            .map(TextColor.class::cast)
            .toList();
    private static final List<TextColor> PLAIN = List.of(
            TextColor.ANSI.BLACK,
            TextColor.ANSI.RED,
            TextColor.ANSI.GREEN,
            TextColor.ANSI.YELLOW,
            TextColor.ANSI.BLUE,
            TextColor.ANSI.MAGENTA,
            TextColor.ANSI.CYAN,
            TextColor.ANSI.WHITE);

    /**
     * Reads NO_COLOR (no-color.org: set and not empty), CLICOLOR (bixense.com/clicolors: 0 for none), TERM and COLORTERM.
     */
    static ColourDepth of(Map<String, String> environment) {
        String term = environment.getOrDefault("TERM", "").toLowerCase(Locale.ROOT);
        String colours = environment.getOrDefault("COLORTERM", "").toLowerCase(Locale.ROOT);
        if (!environment.getOrDefault("NO_COLOR", "").isEmpty()
                || environment.getOrDefault("CLICOLOR", "").equals("0")
                || term.isEmpty()
                || term.equals("unknown")
                || term.equals("dumb")
                || term.startsWith("vt")) {
            return NONE;
        }
        if (colours.equals("truecolor") || colours.equals("24bit") || term.endsWith("-direct")) {
            return FULL;
        }
        if (term.contains("256")) {
            return PALETTE;
        }
        return term.equals("linux") ? EIGHT : SIXTEEN;
    }

    /** Whether the entries 16 to 255 of the palette can be shown. */
    boolean hasPalette() {
        return this == PALETTE || this == FULL;
    }

    /** The colour the terminal can show that is nearest to {@code asked}. */
    TextColor nearest(TextColor asked) {
        if (asked == TextColor.ANSI.DEFAULT || this == FULL) {
            return asked;
        }
        return switch (this) {
            case NONE -> TextColor.ANSI.DEFAULT;
            case EIGHT -> nearestOf(PLAIN, asked);
            case SIXTEEN -> nearestOf(BRIGHT, asked);
            default ->
                asked instanceof TextColor.RGB
                        ? TextColor.Indexed.fromRGB(asked.getRed(), asked.getGreen(), asked.getBlue())
                        : asked;
        };
    }

    private static TextColor nearestOf(List<TextColor> known, TextColor asked) {
        return known.contains(asked)
                ? asked
                : known.stream()
                        .min(Comparator.comparingInt(colour -> distance(colour, asked)))
                        .orElse(asked);
    }

    private static int distance(TextColor a, TextColor b) {
        int red = a.getRed() - b.getRed();
        int green = a.getGreen() - b.getGreen();
        int blue = a.getBlue() - b.getBlue();
        return red * red + green * green + blue * blue;
    }
}
