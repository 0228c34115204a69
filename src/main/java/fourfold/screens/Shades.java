package fourfold.screens;

import fourfold.progress.Mastery;

/** The shapes of the levels, denser with mastery. */
public final class Shades {
    private Shades() {}

    /** The shade of a level: · ░ ▒ ▓ █. */
    public static char of(Mastery level) {
        return "·░▒▓█".charAt(level.ordinal());
    }
}
