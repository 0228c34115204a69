package fourfold.screens;

import fourfold.progress.Mastery;
import fourfold.progress.Setting;
import fourfold.progress.Settings;
import fourfold.terminal.Ink;
import fourfold.terminal.Theme;
import java.util.List;

/** Which of the terminal's inks and themes stand for a level and for what a parent chose. */
public final class Colours {
    private Colours() {}

    /** The ink of a level. */
    public static Ink of(Mastery level) {
        return switch (level) {
            case NEW -> Ink.STEP_0;
            case ACQUIRING -> Ink.STEP_1;
            case ACCURATE -> Ink.STEP_2;
            case FLUENT -> Ink.STEP_3;
            case LASTING -> Ink.STEP_4;
        };
    }

    /** The theme the parent chose for a child. */
    public static Theme of(Settings settings) {
        return switch (settings.value(Setting.COLOURS)) {
            case "dark" -> Theme.DARK;
            case "light" -> Theme.LIGHT;
            case "contrast" -> Theme.CONTRAST;
            default -> Theme.TERMINAL;
        };
    }

    /** The theme that several children share; the terminal's own colours if they have different ones. */
    public static Theme shared(List<Theme> themes) {
        boolean same = themes.stream().distinct().count() == 1;
        return same ? themes.get(0) : Theme.TERMINAL;
    }
}
