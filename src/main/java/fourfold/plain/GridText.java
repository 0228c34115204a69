// SPDX-License-Identifier: Apache-2.0
package fourfold.plain;

import fourfold.facts.Families;
import fourfold.facts.Family;
import fourfold.insight.Grid;
import fourfold.insight.LifetimeProgress;
import fourfold.progress.Mastery;
import fourfold.progress.Progress;
import fourfold.words.SafeText;
import fourfold.words.Stones;
import fourfold.words.Words;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** The grid as plain text: the stairs with the stones of each family, and what they mean. */
public final class GridText {
    private GridText() {}

    /**
     * Writes the grid.
     *
     * @param out where to
     * @param words the language
     * @param name the child's nickname
     * @param grid the grid
     * @param stones what was ever reached
     * @param acts what of the parent's acts holds now, a sentence each
     * @param unicode false to use no signs beyond ASCII
     */
    public static void write(
            Appendable out,
            Words words,
            String name,
            Grid grid,
            LifetimeProgress stones,
            List<String> acts,
            boolean unicode)
            throws IOException {
        out.append(words.say("plain.grid.title", SafeText.safe(name), grid.fluent(), Families.COUNT))
                .append("\n\n");
        for (int n = 1; n <= Families.LARGEST_FACTOR; n++) {
            out.append(wide(n)).append("  ");
            StringBuilder row = new StringBuilder();
            for (int low = 1; low <= n; low++) {
                Grid.Cell cell = grid.cell(new Family(low, n));
                Mastery highest = stones.highest(cell.family());
                row.append(wide(cell.family().product()))
                        .append(Stones.of(highest, unicode))
                        .append(Stones.mark(cell, cell.level() != highest))
                        .append(' ');
            }
            out.append(row.toString().stripTrailing()).append('\n');
        }
        out.append("\n     ");
        for (Mastery level : Mastery.values()) {
            out.append(Stones.of(level, unicode))
                    .append(' ')
                    .append(words.level(level))
                    .append(' ');
            out.append(Integer.toString(stones.count(level))).append(level == Mastery.LASTING ? "\n" : "   ");
        }
        out.append("     ")
                .append(words.say("grid.marks"))
                .append("\n     ")
                .append(words.say("grid.meaning"))
                .append('\n');
        for (String act : acts) {
            out.append("     ").append(Signs.printable(act, unicode)).append('\n');
        }
    }

    /** A number of at most three digits, as wide as three. */
    private static String wide(int number) {
        String digits = Integer.toString(number);
        return "  ".substring(digits.length() - 1) + digits;
    }

    /**
     * The grid in sentences: how many families stand where, the shakiest and what can be done, then each family that was met.
     *
     * @param earlier the levels of a week ago
     */
    public static String sentences(
            Words words,
            String name,
            Grid grid,
            Progress earlier,
            LifetimeProgress stones,
            List<String> acts,
            boolean unicode) {
        String shakiest = grid.shakiest()
                .map(f -> words.say("plain.grid.shakiest", Spoken.product(words, f), f, f))
                .orElseGet(() -> words.say("plain.grid.none"));
        return Spoken.lines(told(words, name, grid, earlier, stones, acts, shakiest), unicode);
    }

    /** The same as a list, where the page itself has keys for what can be done. */
    public static List<String> said(
            Words words, String name, Grid grid, Progress earlier, LifetimeProgress stones, List<String> acts) {
        String shakiest = grid.shakiest()
                .map(f -> words.say("spoken.shakiest", Spoken.product(words, f)))
                .orElseGet(() -> words.say("plain.grid.none"));
        return told(words, name, grid, earlier, stones, acts, shakiest);
    }

    private static List<String> told(
            Words words,
            String name,
            Grid grid,
            Progress earlier,
            LifetimeProgress stones,
            List<String> acts,
            String shakiest) {
        List<String> told = new ArrayList<>();
        told.add(words.say("plain.grid.title", SafeText.safe(name), grid.fluent(), Families.COUNT) + ".");
        told.add(words.say(
                "plain.grid.highest",
                Stream.of(Mastery.values())
                        .map(level -> words.level(level) + ": " + stones.count(level))
                        .collect(Collectors.joining("; "))));
        told.add(words.say("plain.grid.changes", grid.firmer(earlier), grid.weaker(earlier)));
        told.addAll(acts);
        told.add(shakiest);
        grid.cells().stream()
                .filter(c -> c.level() != Mastery.NEW)
                .forEach(c -> told.add(family(words, c, stones.highest(c.family()))));
        String unmet = grid.cells().stream()
                .filter(c -> c.level() == Mastery.NEW)
                .map(c -> Spoken.product(words, c.family()))
                .collect(Collectors.joining(", "));
        if (!unmet.isEmpty()) {
            told.add(words.say("plain.grid.unmet", unmet));
        }
        return told;
    }

    /** A family in a sentence: its level, its stones, how it was answered, and what else holds of it. */
    public static String family(Words words, Grid.Cell cell, Mastery highest) {
        String marks = (cell.focused() ? ", " + words.say("grid.focused") : "")
                + (cell.held() ? ", " + words.say("grid.held") : "")
                + (cell.fading() ? ", " + words.say("plain.grid.fading") : "")
                + (cell.knownByTrial() ? ", " + words.say("grid.trial") : "")
                + (cell.level() != highest ? ", " + words.say("plain.grid.lower") : "");
        return words.say(
                "plain.grid.family",
                Spoken.sentence(words, Spoken.product(words, cell.family())),
                cell.family().product(),
                words.level(cell.level()),
                highest.ordinal(),
                cell.right(),
                cell.asked(),
                marks);
    }
}
