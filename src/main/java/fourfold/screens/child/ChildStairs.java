package fourfold.screens.child;

import fourfold.facts.Families;
import fourfold.facts.Family;
import fourfold.insight.LifetimeProgress;
import fourfold.progress.Mastery;
import fourfold.screens.Colours;
import fourfold.screens.Shades;
import fourfold.terminal.Picture;
import java.util.Optional;

/** The child's own stairs: 55 cells without numbers that fill with practice over the year and never empty. */
final class ChildStairs {
    private final Picture picture;
    private final Optional<LifetimeProgress> filling;
    private final int cellWidth;
    private final int cellHeight;

    ChildStairs(Picture picture, Optional<LifetimeProgress> filling) {
        this.picture = picture;
        this.filling = filling;
        boolean roomy = picture.width() >= 120 && picture.height() >= 34;
        cellWidth = roomy ? 4 : 2;
        cellHeight = roomy ? 2 : 1;
    }

    int width() {
        return filling.isEmpty() ? 0 : Families.LARGEST_FACTOR * cellWidth;
    }

    int height() {
        return Families.LARGEST_FACTOR * cellHeight;
    }

    void draw(int left, int top) {
        if (filling.isEmpty()) {
            return;
        }
        for (Family family : Families.all()) {
            Mastery shade = Mastery.values()[filling.get().shade(family)];
            String row = String.valueOf(Shades.of(shade)).repeat(cellWidth);
            for (int i = 0; i < cellHeight; i++) {
                picture.text(
                        left + (family.low() - 1) * cellWidth,
                        top + (family.high() - 1) * cellHeight + i,
                        row,
                        Colours.of(shade));
            }
        }
    }
}
