// SPDX-License-Identifier: Apache-2.0
package fourfold.screens;

import fourfold.progress.Mastery;
import fourfold.terminal.Ink;

/** Which of the terminal's inks stand for a level. */
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
}
