package fourfold.screens;

import com.googlecode.lanterna.SGR;
import com.googlecode.lanterna.TextColor;
import fourfold.progress.Mastery;
import java.util.EnumSet;

/**
 * How a character is drawn. Colour never stands alone: levels have a shape of their own, a chosen line is reversed, a
 * strong word is bold.
 *
 * <p>The five level colours are stops of the colour-blind-safe map cividis (Nuñez, Anderton and Renslow 2018, PLoS ONE
 * 13(7): e0199239), dark to light.
 */
public enum Ink {
    PLAIN(TextColor.ANSI.DEFAULT),
    /** Out of the way; grey enough to read on black and on white. */
    QUIET(new TextColor.RGB(128, 128, 128)),
    STRONG(TextColor.ANSI.DEFAULT, SGR.BOLD),
    CHOSEN(TextColor.ANSI.DEFAULT, SGR.REVERSE),
    NEW(new TextColor.RGB(39, 63, 108)),
    ACQUIRING(new TextColor.RGB(91, 95, 109)),
    ACCURATE(new TextColor.RGB(131, 129, 120)),
    FLUENT(new TextColor.RGB(176, 165, 114)),
    LASTING(new TextColor.RGB(225, 204, 92));

    // Lanterna's colours are not marked immutable, and nothing here changes one.
    @SuppressWarnings("ImmutableEnumChecker")
    private final TextColor colour;

    @SuppressWarnings("ImmutableEnumChecker")
    private final EnumSet<SGR> style;

    Ink(TextColor colour, SGR... style) {
        this.colour = colour;
        this.style = EnumSet.noneOf(SGR.class);
        for (SGR one : style) {
            this.style.add(one);
        }
    }

    /** The ink of a level's shade. */
    static Ink of(Mastery level) {
        return switch (level) {
            case NEW -> NEW;
            case ACQUIRING -> ACQUIRING;
            case ACCURATE -> ACCURATE;
            case FLUENT -> FLUENT;
            case LASTING -> LASTING;
        };
    }

    TextColor colour() {
        return colour;
    }

    EnumSet<SGR> style() {
        return EnumSet.copyOf(style);
    }
}
