// SPDX-License-Identifier: Apache-2.0
package fourfold.screens.child;

import fourfold.terminal.Ink;
import fourfold.terminal.Picture;

/**
 * The hands wake up: the stairs stand there, and a small lantern climbs one step with each number that was typed. Only
 * the child's key moves it.
 */
final class LanternPicture {
    /** As many steps as the longest row of numbers to copy. */
    private static final int STEPS = 10;

    private static final int STEP_WIDTH = 4;

    private LanternPicture() {}

    /** Draws it with so many steps climbed. */
    static void draw(Picture picture, Shelves shelves, int climbed) {
        int rows = STEPS / 2;
        int y = shelves.room() - 1;
        if (shelves.roomRows() < rows || picture.width() < STEPS * STEP_WIDTH + 4) {
            return;
        }
        int x = (picture.width() - STEPS * STEP_WIDTH) / 2;
        int lit = Math.min(STEPS, climbed);
        for (int step = 1; step <= STEPS; step++) {
            // Each step is half a row higher than the one before it.
            boolean half = step % 2 == 1;
            int row = y + rows - (step - 1) / 2;
            picture.text(
                    x + (step - 1) * STEP_WIDTH,
                    row,
                    (half ? "▄" : "▀").repeat(STEP_WIDTH),
                    step <= lit ? Ink.STRONG : Ink.QUIET);
        }
        if (lit > 0) {
            int row = y + rows - (lit - 1) / 2 - 1;
            picture.text(x + (lit - 1) * STEP_WIDTH + 1, row, "●", Ink.STRONG);
        }
    }
}
