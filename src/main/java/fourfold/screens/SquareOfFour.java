// SPDX-License-Identifier: Apache-2.0
package fourfold.screens;

import fourfold.facts.Family;
import fourfold.facts.Prompt;
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
        draw(picture, y, words, family.questions());
    }

    /** The same of a family's facts as they are shown, products first. */
    public static void draw(Picture picture, int y, Words words, List<? extends Prompt> prompts) {
        List<String> rows = rows(words, prompts);
        for (int i = 0; i < rows.size(); i++) {
            picture.centred(y + i, rows.get(i), Ink.QUIET);
        }
    }

    /** Its rows. */
    public static List<String> rows(Words words, Family family) {
        return rows(words, family.questions());
    }

    /** The same of a family's facts as they are shown, products first. */
    public static List<String> rows(Words words, List<? extends Prompt> prompts) {
        List<String> facts = prompts.stream().map(words::shown).toList();
        if (facts.size() == 2) {
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
