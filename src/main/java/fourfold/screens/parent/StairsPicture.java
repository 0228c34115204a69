// SPDX-License-Identifier: Apache-2.0
package fourfold.screens.parent;

import fourfold.facts.Families;
import fourfold.facts.Family;
import fourfold.facts.Operation;
import fourfold.insight.Grid;
import fourfold.insight.LifetimeProgress;
import fourfold.progress.Dates;
import fourfold.progress.Mastery;
import fourfold.progress.Progress;
import fourfold.screens.Colours;
import fourfold.screens.SquareOfFour;
import fourfold.terminal.Ink;
import fourfold.terminal.Picture;
import fourfold.terminal.Wrapping;
import fourfold.words.ActionWords;
import fourfold.words.Stones;
import fourfold.words.Words;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/**
 * The stairs as a picture: step n holds n × 1 to n × n, so that every family stands once. The empty corner is where the
 * chosen family is told in numbers.
 */
final class StairsPicture {
    private final Picture picture;
    private final Words words;
    private final Grid grid;
    private final Progress lastWeek;
    private final GridPage.View view;
    private final Family chosen;
    private final SelectionScope reach;
    private final boolean letters;
    private final int cellWidth;
    private final int stepHeight;
    private final int left;
    private final int top;

    StairsPicture(Picture picture, Words words, Grid grid, Progress lastWeek, GridPage.Look look, Family chosen) {
        this.picture = picture;
        this.words = words;
        this.grid = grid;
        this.lastWeek = lastWeek;
        this.view = look.view();
        this.chosen = chosen;
        this.reach = look.reach();
        this.letters = look.letters();
        cellWidth = picture.width() >= 120 ? 10 : picture.width() >= 76 ? 7 : 5;
        stepHeight = picture.height() >= 36 ? 2 : 1;
        left = Math.max(0, (picture.width() - 4 - Families.LARGEST_FACTOR * cellWidth) / 2);
        top = picture.height() >= 22 ? 3 : 1;
    }

    void draw(String title, SteeringKeys steers) {
        picture.centred(top > 1 ? 1 : 0, title, reach == SelectionScope.FAMILY ? Ink.STRONG : Ink.CHOSEN);
        Progress progress = steers.progress();
        for (Family family : Families.all()) {
            cell(grid.cell(family), steers.stones());
        }
        Set<Integer> lately = Dates.taughtLately(progress);
        for (int n = 1; n <= Families.LARGEST_FACTOR; n++) {
            boolean marked = reach == SelectionScope.TABLE && n == chosen.high();
            boolean opened = progress.steering().opened().contains(n) || lately.contains(n);
            String sign = opened ? ">" : progress.steering().closed().contains(n) ? "x" : "";
            picture.text(left, row(n), String.format("%2d%s", n, sign), marked ? Ink.STRONG : Ink.QUIET);
        }
        legend(progress);
        corner(progress, steers.stones());
    }

    private int row(int step) {
        return top + (step - 1) * stepHeight;
    }

    private void cell(Grid.Cell cell, LifetimeProgress stones) {
        Mastery highest = highest(cell.family(), stones);
        boolean lower = shown(cell) != highest;
        int x = left + 4 + (cell.family().low() - 1) * cellWidth;
        int y = row(cell.family().high());
        boolean marked = reach.families(chosen).contains(cell.family());
        char mark = Stones.mark(cell, lower);
        String number = String.format("%3d", cell.family().product());
        boolean narrow = cellWidth < 6;
        if (number.startsWith(" ")) {
            // The chosen one is pointed at; where a cell has no column for it, a mark stands there too.
            char before = cell.family().equals(chosen) ? '►' : narrow ? mark : ' ';
            number = before + number.substring(1);
        }
        picture.text(x, y, number, marked ? Ink.CHOSEN : highest == Mastery.NEW ? Ink.QUIET : Ink.PLAIN);
        picture.text(x + 3, y, stones(highest), Colours.of(highest));
        if (!narrow) {
            picture.text(x + 5, y, Character.toString(mark), Ink.STRONG);
        }
        int change = grid.change(cell.family(), lastWeek);
        if (change != 0 && !narrow) {
            picture.text(x + 6, y, change > 0 ? "↑" : "↓", Ink.PLAIN);
        }
    }

    /** The stones of a level, or its letter. */
    private String stones(Mastery level) {
        return letters ? words.say("letter." + level.word()) : Stones.of(level, picture.unicode());
    }

    private Mastery highest(Family family, LifetimeProgress stones) {
        return switch (view) {
            case FAMILY -> stones.highest(family);
            case PRODUCTS -> stones.highest(family, Operation.MULTIPLY);
            case QUOTIENTS -> stones.highest(family, Operation.DIVIDE);
        };
    }

    private Mastery shown(Grid.Cell cell) {
        return switch (view) {
            case FAMILY -> cell.level();
            case PRODUCTS -> cell.products();
            case QUOTIENTS -> cell.quotients();
        };
    }

    private void legend(Progress progress) {
        int y = row(Families.LARGEST_FACTOR) + 2;
        int x = left + 4;
        for (Mastery level : Mastery.values()) {
            picture.text(x, y, stones(level), Colours.of(level));
            picture.text(x + 3, y, words.level(level));
            x += words.level(level).length() + (cellWidth < 6 ? 4 : 5);
        }
        picture.text(left + 4, y + 1, words.say("grid.marks"), Ink.QUIET);
        String week = words.say("grid.week", grid.firmer(lastWeek), grid.weaker(lastWeek));
        String trial = "   + " + words.say("grid.trial");
        boolean room = left + 4 + Picture.columns(week + trial) <= picture.width();
        picture.text(left + 4, y + 2, room ? week + trial : week, Ink.QUIET);
        if (picture.height() >= 24) {
            picture.text(left + 4, y + 3, String.join(" ", ActionWords.inForce(words, progress)), Ink.STRONG);
        }
    }

    private void corner(Progress progress, LifetimeProgress stones) {
        Grid.Cell cell = grid.cell(chosen);
        Mastery highest = highest(chosen, stones);
        List<String> square = SquareOfFour.rows(words, chosen);
        int x = left + 4 + 5 * cellWidth + 1;
        List<String> state = Wrapping.lines(state(words, cell, shown(cell), highest), picture.width() - x);
        List<String> lines = new ArrayList<>(List.of(square.get(0), square.get(square.size() - 1)));
        lines.addAll(state);
        if (progress.steering().opened().contains(chosen.high())) {
            lines.add(words.say("grid.opened", chosen.high()));
        } else if (progress.steering().closed().contains(chosen.high())) {
            lines.add(words.say("grid.closed", chosen.high()));
        } else if (Dates.taughtLately(progress).contains(chosen.high())) {
            lines.add(words.say("grid.taught", chosen.high()));
        }
        lines.add(cell.asked() == 0 ? words.say("grid.unasked") : words.say("grid.right", cell.right(), cell.asked()));
        progress.mastery(chosen.traces().get(0))
                .medianThinking()
                .ifPresent(t -> lines.add(words.say("grid.thinking", words.seconds(t))));
        // Below the fifth step there are cells: what is last is left out first.
        for (int i = 0; i < Math.min(lines.size(), 5 * stepHeight); i++) {
            boolean strong = i >= 2 && i < 2 + state.size();
            picture.text(x, top + i, lines.get(i), strong ? Ink.STRONG : Ink.PLAIN);
        }
    }

    /** How a family stands, in words. */
    static String state(Words words, Grid.Cell cell, Mastery shown, Mastery highest) {
        return words.level(shown)
                + (shown == highest ? "" : ", " + words.say("grid.was", words.level(highest)))
                + (cell.focused() ? ", " + words.say("grid.focused") : "")
                + (cell.held() ? ", " + words.say("grid.held") : "")
                + (cell.fading() ? ", " + words.say("grid.fading") : "")
                + (cell.knownByTrial() ? ", " + words.say("grid.trial") : "");
    }
}
