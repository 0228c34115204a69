// SPDX-License-Identifier: Apache-2.0
package fourfold.screens.child;

import fourfold.facts.Families;
import fourfold.facts.Family;
import fourfold.progress.Mastery;
import fourfold.screens.Colours;
import fourfold.terminal.Ink;
import fourfold.terminal.Picture;
import fourfold.words.Stones;
import java.util.function.ToIntFunction;

/**
 * The child's own stairs, built of stones over the year: a square of up to four for each family. A step is two stones high
 * with half a row of air above it, so that the stones are true squares and steps do not run together.
 */
final class ChildStairs {
    /** Half rows from one step to the next. */
    private static final int STEP = 3;

    private static final int ROOMY_WIDTH = 110;
    private static final int ROOMY_HEIGHT = 38;

    private final Picture picture;
    private final int times;

    ChildStairs(Picture picture) {
        this.picture = picture;
        times = picture.width() >= ROOMY_WIDTH && picture.height() >= ROOMY_HEIGHT ? 2 : 1;
    }

    /** Columns. */
    int width() {
        return widthOf(Families.LARGEST_FACTOR);
    }

    /** Columns of a step and of all above it. */
    int widthOf(int step) {
        return (step * STEP - 1) * times;
    }

    /** Rows. */
    int height() {
        return Families.LARGEST_FACTOR * STEP * times / 2;
    }

    /** Draws the stairs with so many stones for each family. */
    void draw(int left, int top, ToIntFunction<Family> stones) {
        for (Family family : Families.all()) {
            int laid = stones.applyAsInt(family);
            if (!picture.unicode()) {
                ascii(left, top, family, laid);
            } else if (laid == 0) {
                dot(left, top, family);
            } else {
                square(left, top, family, laid);
            }
        }
    }

    /** One wide stone over the highest step, when all the others are laid. */
    void capstone(int left, int top) {
        picture.text(left, top - 1, (picture.unicode() ? "▄" : "=").repeat(4 * times), Ink.STEP_4);
    }

    private void ascii(int left, int top, Family family, int laid) {
        picture.text(
                left + (family.low() - 1) * STEP * times,
                top + (family.high() - 1) * STEP * times / 2,
                Stones.of(Mastery.values()[laid], false).strip(),
                ink(laid));
    }

    /** In the middle of the square: where that is the edge between two rows, a point at the foot of the upper one. */
    private void dot(int left, int top, Family family) {
        int middle = ((family.high() - 1) * STEP + 1) * times;
        boolean edge = times == 1 && middle % 2 == 0;
        picture.text(
                left + (family.low() - 1) * STEP * times,
                top + (edge ? middle / 2 - 1 : middle / 2),
                edge ? "." : "·",
                Ink.QUIET);
    }

    /** Half rows become blocks; two steps never share a row of characters in one column with both their stones. */
    private void square(int left, int top, Family family, int laid) {
        int first = (family.high() - 1) * STEP * times;
        for (int y = first / 2; y <= (first + 2 * times - 1) / 2; y++) {
            StringBuilder row = new StringBuilder();
            for (int x = 0; x < 2 * times; x++) {
                boolean upper = isInk(2 * y - first, x, laid);
                boolean lower = isInk(2 * y + 1 - first, x, laid);
                row.append(upper ? (lower ? '█' : '▀') : (lower ? '▄' : ' '));
            }
            picture.text(left + (family.low() - 1) * STEP * times, top + y, row.toString(), ink(laid));
        }
    }

    /** Whether there is a stone at a half row and column of the square. */
    private boolean isInk(int half, int x, int laid) {
        return half >= 0 && half < 2 * times && Stones.isLaid(laid, half < times, x >= times);
    }

    private static Ink ink(int laid) {
        return laid == 0 ? Ink.QUIET : Colours.of(Mastery.values()[laid]);
    }
}
