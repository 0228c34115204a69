package fourfold.terminal;

import com.googlecode.lanterna.TextCharacter;
import com.googlecode.lanterna.TextColor;
import java.util.List;

/**
 * The colours of the screen: those the terminal has, or our own on a dark or a light ground, or with strong contrast. The
 * colours of the levels follow the colour-blind-safe map cividis (Nuñez, Anderton and Renslow 2018, PLoS ONE 13(7):
 * e0199239), read from dark to light on a dark ground and from light to dark on a light one, in steps that keep the contrast
 * the Web Content Accessibility Guidelines 2.2 ask for (1.4.3, 1.4.6 and 1.4.11).
 */
public enum Theme {
    /** The terminal's own colours. */
    TERMINAL(List.of()),
    /** Light on dark: ground, text, quiet text, then the levels from new to lasting. */
    DARK(List.of("10131a", "e9e7e1", "a5a7ab", "76777c", "7d7c78", "9c9573", "bcaf6f", "fee838")),
    /** Dark on light. */
    LIGHT(List.of("fbfaf5", "1b1d22", "5c5f66", "83827f", "7d7c78", "5b5f6d", "273f6c", "00224e")),
    /** White on black, nothing fainter than seven to one. */
    CONTRAST(List.of("000000", "ffffff", "d8d8d8", "a5a5a5", "b0a572", "c4b56c", "e1cc5c", "fee838"));

    // The library's colours are not marked immutable, and nothing here changes one.
    @SuppressWarnings("ImmutableEnumChecker")
    private final List<TextColor> colours;

    Theme(List<String> colours) {
        this.colours = colours.stream().map(Theme::colour).toList();
    }

    private static TextColor colour(String hex) {
        int rgb = Integer.parseInt(hex, 16);
        return new TextColor.RGB(rgb >> 16, rgb >> 8 & 0xff, rgb & 0xff);
    }

    /** What lies behind the letters. */
    TextColor ground() {
        return this == TERMINAL ? TextColor.ANSI.DEFAULT : colours.get(0);
    }

    /** A cell of the terminal's colours in these. */
    TextCharacter fit(TextCharacter cell, Ink ink) {
        return this == TERMINAL ? cell : cell.withForegroundColor(of(ink)).withBackgroundColor(ground());
    }

    /** The colour of an ink; not for the terminal's own. */
    TextColor of(Ink ink) {
        return colours.get(
                switch (ink) {
                    case PLAIN, STRONG, CHOSEN -> 1;
                    case QUIET -> 2;
                    case STEP_0 -> 3;
                    case STEP_1 -> 4;
                    case STEP_2 -> 5;
                    case STEP_3 -> 6;
                    case STEP_4 -> 7;
                });
    }
}
