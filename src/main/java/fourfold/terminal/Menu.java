// SPDX-License-Identifier: Apache-2.0
package fourfold.terminal;

import java.util.List;

/**
 * A short list of lines to choose from, by arrows and Enter or by the digit in front of a line.
 *
 * @param lines what there is to choose from
 * @param chosen which line is marked, from 0
 * @param picked whether the last key picked the marked line for good
 */
public record Menu(List<String> lines, int chosen, boolean picked) {
    public Menu {
        lines = List.copyOf(lines);
    }

    /** With the first line marked. */
    public Menu(List<String> lines) {
        this(lines, 0, false);
    }

    /** The menu after a key. */
    public Menu on(Key key) {
        switch (key.kind()) {
            case UP, LEFT -> {
                return at(chosen - 1, false);
            }
            case DOWN, RIGHT -> {
                return at(chosen + 1, false);
            }
            case ENTER -> {
                return at(chosen, true);
            }
            case DIGIT -> {
                int line = key.digit() == 0 ? 9 : key.digit() - 1;
                return line < lines.size() ? at(line, true) : at(chosen, false);
            }
            default -> {
                return at(chosen, false);
            }
        }
    }

    private Menu at(int line, boolean pick) {
        return new Menu(lines, Math.floorMod(line, lines.size()), pick);
    }

    /** Draws the lines in the middle, from this row on. */
    public void draw(Picture picture, int y) {
        int widest = lines.stream().mapToInt(Picture::columns).max().orElse(0) + 8;
        int x = Math.max(0, (picture.width() - widest) / 2);
        int room = Math.max(1, picture.height() - y - 3);
        int first = Math.max(0, Math.min(chosen - room / 2, lines.size() - room));
        for (int i = first; i < Math.min(lines.size(), first + room); i++) {
            String number = i < 10 ? Integer.toString((i + 1) % 10) : " ";
            String line = (i == chosen ? " ► " : "   ") + number + "  " + lines.get(i) + " ";
            picture.text(x, y + i - first, line, i == chosen ? Ink.STRONG : Ink.PLAIN);
        }
        // That there is more above or below.
        int edge = Math.min(picture.width() - 1, x + widest);
        picture.text(edge, y, first > 0 ? "↑" : " ", Ink.QUIET);
        picture.text(edge, y + room - 1, first + room < lines.size() ? "↓" : " ", Ink.QUIET);
    }
}
