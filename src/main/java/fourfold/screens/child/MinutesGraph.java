// SPDX-License-Identifier: Apache-2.0
package fourfold.screens.child;

import fourfold.insight.Timings;
import fourfold.terminal.Ink;
import fourfold.terminal.Picture;
import java.time.LocalDate;
import java.util.List;

/** A child's one-minute timings as columns, the newest at the right: only this child, only its own past. */
final class MinutesGraph {
    private static final int COLUMN = 6;

    private final List<Timings.OneMinute> timings;

    MinutesGraph(List<Timings.OneMinute> timings) {
        this.timings = timings;
    }

    void draw(Picture picture, int top) {
        int most = Math.max(1, (picture.width() - 4) / COLUMN);
        List<Timings.OneMinute> shown = timings.subList(Math.max(0, timings.size() - most), timings.size());
        int tall = Math.max(3, Math.min(12, picture.height() - top - 5));
        double highest = shown.stream()
                .mapToDouble(t -> t.rates().digitsPerMinute())
                .max()
                .orElse(1);
        int left = Math.max(0, (picture.width() - shown.size() * COLUMN) / 2);
        for (int i = 0; i < shown.size(); i++) {
            double digits = shown.get(i).rates().digitsPerMinute();
            int filled = highest <= 0 ? 0 : (int) Math.round(tall * digits / highest);
            int x = left + i * COLUMN;
            for (int row = 0; row < filled; row++) {
                picture.text(x + 1, top + tall - row, "███", Ink.STEP_4);
            }
            picture.text(x + 1, top + tall - filled, String.format("%3d", Math.round(digits)), Ink.STRONG);
            LocalDate day = LocalDate.ofEpochDay(shown.get(i).day());
            picture.text(x, top + tall + 1, day.getDayOfMonth() + "." + day.getMonthValue() + ".", Ink.QUIET);
        }
    }
}
