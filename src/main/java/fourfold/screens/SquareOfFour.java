package fourfold.screens;

import fourfold.facts.Family;
import fourfold.terminal.Ink;
import fourfold.terminal.Picture;
import fourfold.words.Words;
import java.util.ArrayList;
import java.util.List;

/** The square of four: a family's facts, turn-around sideways, inverse up and down. */
public final class SquareOfFour {
    private SquareOfFour() {}

    /** Draws it in the middle of three rows. */
    public static void draw(Picture picture, int y, Words words, Family family) {
        List<String> rows = rows(words, family);
        for (int i = 0; i < rows.size(); i++) {
            picture.centred(y + i, rows.get(i), Ink.QUIET);
        }
    }

    public static List<String> rows(Words words, Family family) {
        List<String> facts = family.facts().stream().map(words::fact).toList();
        if (family.isSquare()) {
            return List.of(facts.get(0), "↕", facts.get(1));
        }
        int wide = facts.stream().mapToInt(String::length).max().orElse(0);
        String gap = " ".repeat(wide / 2);
        List<String> rows = new ArrayList<>();
        rows.add(padded(facts.get(0), wide) + "  ↔  " + padded(facts.get(1), wide));
        rows.add(gap + "↕" + " ".repeat(wide - 1 - gap.length() + 5 + gap.length()) + "↕"
                + " ".repeat(wide - 1 - gap.length()));
        rows.add(padded(facts.get(2), wide) + "  ↔  " + padded(facts.get(3), wide));
        return rows;
    }

    private static String padded(String text, int width) {
        int before = (width - text.length()) / 2;
        return " ".repeat(before) + text + " ".repeat(width - text.length() - before);
    }
}
