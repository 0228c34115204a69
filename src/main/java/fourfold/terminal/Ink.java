package fourfold.terminal;

import com.googlecode.lanterna.SGR;
import com.googlecode.lanterna.TextCharacter;
import com.googlecode.lanterna.TextColor;
import java.util.EnumSet;
import org.jspecify.annotations.Nullable;

/**
 * How a character is drawn. Colour never stands alone: levels have a shape of their own, a chosen line is reversed, a
 * strong word is bold.
 *
 * <p>The five steps are stops of the colour-blind-safe map cividis (Nuñez, Anderton and Renslow 2018, PLoS ONE
 * 13(7): e0199239), dark to light.
 */
public enum Ink {
    PLAIN(TextColor.ANSI.DEFAULT),
    /** Out of the way; grey enough to read on black and on white. */
    QUIET(new TextColor.RGB(128, 128, 128)),
    STRONG(TextColor.ANSI.DEFAULT, SGR.BOLD),
    CHOSEN(TextColor.ANSI.DEFAULT, SGR.REVERSE),
    STEP_0(new TextColor.RGB(39, 63, 108)),
    STEP_1(new TextColor.RGB(91, 95, 109)),
    STEP_2(new TextColor.RGB(131, 129, 120)),
    STEP_3(new TextColor.RGB(176, 165, 114)),
    STEP_4(new TextColor.RGB(225, 204, 92));

    /** Everyday characters: the first 256, and the 256 lines and blocks of which pictures are drawn. */
    private static final int PAGE = 0x100;

    private static final int LINES = 0x2500;

    // Lanterna's colours are not marked immutable, and nothing here changes one.
    @SuppressWarnings("ImmutableEnumChecker")
    private final TextColor colour;

    @SuppressWarnings("ImmutableEnumChecker")
    private final EnumSet<SGR> style;

    @SuppressWarnings("ImmutableEnumChecker") // A memory of what was made; two threads may make the same twice.
    private final @Nullable TextCharacter[] cells = new TextCharacter[2 * PAGE];

    Ink(TextColor colour, SGR... style) {
        this.colour = colour;
        this.style = EnumSet.noneOf(SGR.class);
        for (SGR one : style) {
            this.style.add(one);
        }
    }

    /**
     * A character in this ink, as the terminal library wants it. The library looks closely at every character it is given,
     * so those of everyday are made once.
     */
    TextCharacter cell(char c) {
        int place = c < PAGE ? c : c >= LINES && c < LINES + PAGE ? c - LINES + PAGE : -1;
        if (place < 0) {
            return made(c);
        }
        TextCharacter cell = cells[place];
        if (cell == null) {
            cell = made(c);
            cells[place] = cell;
        }
        return cell;
    }

    private TextCharacter made(char c) {
        return TextCharacter.fromCharacter(c, colour, TextColor.ANSI.DEFAULT)[0].withModifiers(style);
    }
}
