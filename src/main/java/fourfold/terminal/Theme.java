// SPDX-License-Identifier: Apache-2.0
package fourfold.terminal;

import com.googlecode.lanterna.SGR;
import com.googlecode.lanterna.TextCharacter;
import com.googlecode.lanterna.TextColor;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * The colours of the screen: a palette of our own on a dark or on a light ground, or the terminal's own pair alone. Only
 * entries 16 to 255 of the 256 colours are used, whose values are the same on every terminal, so that 24 bits and 256
 * colours agree. Text keeps 4.5 to 1 and the levels 3 to 1 against the ground (Web Content Accessibility Guidelines 2.2,
 * 1.4.3 and 1.4.11).
 */
public enum Theme {
    /** The terminal's default pair, with bold and reverse: for 16 colours and fewer, whose values nobody knows. */
    PLAIN(List.of()),
    /** Ground, text, quiet text, then the levels from new to lasting. */
    DARK(List.of(233, 254, 248, 61, 67, 247, 179, 221)),
    LIGHT(List.of(231, 234, 241, 137, 243, 60, 238, 17));

    /** Everyday characters: the first 256, and the 256 lines and blocks of which pictures are drawn. */
    private static final int PAGE = 0x100;

    private static final int LINES = 0x2500;

    // The library's colours are not marked immutable, and nothing here changes one.
    @SuppressWarnings("ImmutableEnumChecker")
    private final List<TextColor> colours;

    @SuppressWarnings("ImmutableEnumChecker") // A memory of what was made; two threads may make the same twice.
    private final @Nullable TextCharacter[][] cells = new TextCharacter[Ink.values().length][2 * PAGE];

    Theme(List<Integer> entries) {
        this.colours = entries.stream().map(Theme::colour).toList();
    }

    private static TextColor colour(int entry) {
        return new TextColor.Indexed(entry);
    }

    /** The theme of that name, if there is one. */
    public static Optional<Theme> named(String name) {
        return Stream.of(values()).filter(t -> t.key().equals(name)).findFirst();
    }

    /** Its name in settings. */
    public String key() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** What lies behind the letters. */
    TextColor ground() {
        return this == PLAIN ? TextColor.ANSI.DEFAULT : colours.get(0);
    }

    /** The colour of an ink. */
    TextColor of(Ink ink) {
        if (this == PLAIN) {
            return TextColor.ANSI.DEFAULT;
        }
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

    /**
     * A character in an ink, as the terminal library wants it. The library looks closely at every character it is given,
     * so those of everyday are made once.
     */
    TextCharacter cell(char c, Ink ink) {
        int place = c < PAGE ? c : c >= LINES && c < LINES + PAGE ? c - LINES + PAGE : -1;
        if (place < 0) {
            return made(c, ink);
        }
        TextCharacter cell = cells[ink.ordinal()][place];
        if (cell == null) {
            cell = made(c, ink);
            cells[ink.ordinal()][place] = cell;
        }
        return cell;
    }

    private TextCharacter made(char c, Ink ink) {
        // The library's withModifiers forgets what it is given. A bold block may come from another font, with seams.
        SGR[] style =
                ink.style().stream().filter(s -> s != SGR.BOLD || c < LINES).toArray(SGR[]::new);
        return TextCharacter.fromCharacter(c, of(ink), ground(), style)[0];
    }
}
