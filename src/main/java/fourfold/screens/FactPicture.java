// SPDX-License-Identifier: Apache-2.0
package fourfold.screens;

import fourfold.drill.Depiction;
import fourfold.facts.Family;
import fourfold.facts.Operation;
import fourfold.facts.Question;
import fourfold.words.Words;
import java.util.ArrayList;
import java.util.List;

/**
 * A fact as a picture, computed for it and fitted into the room there is: dots in rows, jumps on a number line, or a bar
 * in equal parts. A product puts equal groups together; a quotient takes the whole apart: into rows, into jumps back to
 * zero, into parts.
 *
 * @param depiction which picture
 * @param split whether the whole is taken apart
 * @param groups how many rows, jumps or parts, 1 to 10
 * @param each how much one of them holds, 1 to 10
 * @param grown how many of them are drawn, 1 to {@code groups}
 */
public record FactPicture(Depiction depiction, boolean split, int groups, int each, int grown) {
    /** From so many columns on, pictures are drawn wider. */
    private static final int ROOMY = 110;

    private static final int WIDEST_JUMP = 8;
    private static final int NARROWEST_JUMP = 4;

    /** The picture of a family that grows: the smaller factor says how many groups. */
    public static FactPicture of(Depiction depiction, Family family, int grown) {
        return new FactPicture(depiction, false, family.low(), family.high(), grown);
    }

    /** The whole picture of a question's fact. */
    public static FactPicture of(Depiction depiction, Question question) {
        boolean split = question.operation() == Operation.DIVIDE;
        int groups = depiction.groups(question);
        return new FactPicture(depiction, split, groups, split ? question.left() / groups : question.right(), groups);
    }

    /** What it shows, in words: as much as is drawn. */
    public String words(Words words) {
        return words.picture(depiction, split, grown, each);
    }

    /** The same with all its groups drawn. */
    public FactPicture whole() {
        return new FactPicture(depiction, split, groups, each, groups);
    }

    /** This picture if it can be counted in the room there is, else another of the same fact with the same groups. */
    public FactPicture fitted(int width, int height) {
        if (!whole().rows(width, height).isEmpty()) {
            return this;
        }
        // Jumps back are as long as the divisor, so that their groups are others; a bar keeps those of the array.
        return new FactPicture(split ? Depiction.BAR : Depiction.JUMPS, split, groups, each, grown);
    }

    /** The picture in at most so many rows and columns; nothing if there is no room for it. */
    public List<String> rows(int width, int height) {
        List<String> rows = switch (depiction) {
            case ARRAY -> array();
            case JUMPS -> jumps(width);
            case BAR -> bar(width);
        };
        int widest = rows.stream().mapToInt(String::length).max().orElse(0);
        return rows.size() > height || widest > width ? List.of() : rows;
    }

    /** One dot for each thing, a row for each group; a dot is two columns wide and so as wide as it is tall. */
    private List<String> array() {
        List<String> rows = new ArrayList<>();
        for (int row = 0; row < groups; row++) {
            rows.add(row < grown ? "● ".repeat(each).strip() : "");
        }
        return rows;
    }

    private List<String> jumps(int width) {
        int jump = Math.max(
                NARROWEST_JUMP, Math.min(width >= ROOMY ? 2 * WIDEST_JUMP : WIDEST_JUMP, (width - 4) / groups));
        String arc = split ? "◄" + "─".repeat(jump - 2) + "┐" : "┌" + "─".repeat(jump - 2) + "►";
        StringBuilder sizes = new StringBuilder("  ");
        StringBuilder arcs = new StringBuilder("  ");
        StringBuilder line = new StringBuilder("  ");
        StringBuilder numbers = new StringBuilder(" ".repeat(jump * groups + 4));
        for (int i = 0; i < groups; i++) {
            boolean drawn = split ? groups - i <= grown : i < grown;
            String size = (split ? "−" : "+") + each;
            sizes.append(middle(drawn ? size : "", jump));
            arcs.append(drawn ? arc : " ".repeat(jump));
            line.append("┴").append("─".repeat(jump - 1));
        }
        line.append("┴");
        for (int i = 0; i <= groups; i++) {
            boolean reached = split ? groups - i <= grown : i <= grown;
            String number = reached ? Integer.toString(i * each) : "";
            int from = Math.max(0, 2 + i * jump - number.length() / 2);
            numbers.replace(from, from + number.length(), number);
        }
        return List.of(sizes.toString(), arcs.toString(), line.toString(), numbers.toString());
    }

    private List<String> bar(int width) {
        int part = Math.max(3, Math.min(width >= ROOMY ? 15 : 7, (width - 1) / groups - 1));
        List<StringBuilder> rows =
                List.of(new StringBuilder(), new StringBuilder("┌"), new StringBuilder("│"), new StringBuilder("└"));
        for (int i = 0; i < groups; i++) {
            boolean last = i == groups - 1;
            rows.get(1).append("─".repeat(part)).append(last ? "┐" : "┬");
            rows.get(2)
                    .append(middle(i < grown ? Integer.toString(each) : "", part))
                    .append("│");
            rows.get(3).append("─".repeat(part)).append(last ? "┘" : "┴");
        }
        // The whole stands over as much of the bar as is there.
        int covered = grown * (part + 1) - 1;
        String whole = " " + grown * each + " ";
        int left = Math.max(0, (covered - whole.length()) / 2);
        rows.get(0)
                .append(" ")
                .append("─".repeat(left))
                .append(whole)
                .append("─".repeat(Math.max(0, covered - left - whole.length())));
        int full = groups * (part + 1) + 1;
        rows.get(0).append(" ".repeat(Math.max(0, full - rows.get(0).length())));
        return rows.stream().map(StringBuilder::toString).toList();
    }

    private static String middle(String text, int width) {
        int before = (width - text.length()) / 2;
        return " ".repeat(Math.max(0, before)) + text + " ".repeat(Math.max(0, width - text.length() - before));
    }
}
