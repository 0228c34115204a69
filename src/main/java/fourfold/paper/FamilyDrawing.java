// SPDX-License-Identifier: Apache-2.0
package fourfold.paper;

import fourfold.facts.Fact;
import fourfold.facts.Family;
import fourfold.facts.MissingFactor;
import fourfold.facts.Prompt;
import fourfold.insight.PageContent;
import fourfold.words.Words;
import java.util.List;
import java.util.Locale;

/** A family as a picture: array, number line, and the square of four. */
final class FamilyDrawing {
    private static final int GAP = 10;

    private FamilyDrawing() {}

    /** As many rows as the smaller factor says, as many dots in each as the larger. */
    static String array(Family family, Words words) {
        StringBuilder svg = new StringBuilder(String.format(
                Locale.ROOT,
                "<svg viewBox=\"0 0 %d %d\" role=\"img\" aria-label=\"%s\">",
                (Math.max(family.high(), 5) + 1) * GAP,
                (Math.max(family.low(), 3) + 1) * GAP,
                HtmlPage.escaped(words.name(family))));
        int left = (Math.max(family.high(), 5) - family.high()) * GAP / 2;
        int top = (Math.max(family.low(), 3) - family.low()) * GAP / 2;
        for (int row = 1; row <= family.low(); row++) {
            for (int column = 1; column <= family.high(); column++) {
                svg.append(String.format(
                        Locale.ROOT, "<circle cx=\"%d\" cy=\"%d\" r=\"3.6\"/>", left + column * GAP, top + row * GAP));
            }
        }
        return svg.append("</svg>").toString();
    }

    /** Jumps of the larger factor, as many as the smaller says. */
    static String jumps(Family family, Words words) {
        double scale = 500.0 / family.product();
        StringBuilder svg = new StringBuilder("<svg viewBox=\"0 0 540 92\" role=\"img\" aria-label=\""
                + HtmlPage.escaped(words.name(family)) + "\"><line x1=\"20\" y1=\"66\" x2=\"520\" y2=\"66\""
                + " stroke=\"#000\" stroke-width=\"1.5\"/>");
        for (int jump = 0; jump <= family.low(); jump++) {
            double x = 20 + scale * family.high() * jump;
            svg.append(String.format(
                    Locale.ROOT,
                    "<line x1=\"%.1f\" y1=\"60\" x2=\"%.1f\" y2=\"72\" stroke=\"#000\" stroke-width=\"1.5\"/>",
                    x,
                    x));
            if (jump == 0 || jump == family.low()) {
                svg.append(String.format(
                        Locale.ROOT,
                        "<text x=\"%.1f\" y=\"88\" font-size=\"13\" text-anchor=\"middle\">%d</text>",
                        x,
                        family.high() * jump));
            }
            if (jump > 0) {
                double from = x - scale * family.high();
                svg.append(String.format(
                        Locale.ROOT,
                        "<path d=\"M %.1f 62 Q %.1f 8 %.1f 62\" fill=\"none\" stroke=\"#000\" stroke-width=\"1.2\"/>"
                                + "<text x=\"%.1f\" y=\"24\" font-size=\"11\" text-anchor=\"middle\">%d</text>",
                        from,
                        (from + x) / 2,
                        x,
                        (from + x) / 2,
                        family.high()));
            }
        }
        return svg.append("</svg>").toString();
    }

    /**
     * The square of four: turn-around sideways, inverse up and down; two facts below each other for a square number.
     *
     * @param content the page, which knows the divisions that are still asked without their sign
     * @param open whether only the first fact is shown, with lines for the others
     */
    static String square(Family family, PageContent.OfFamilies content, boolean open, Words words) {
        List<Fact> facts = family.facts();
        StringBuilder html = new StringBuilder("<table class=\"four\">");
        int half = facts.size() / 2;
        for (int row = 0; row < 2; row++) {
            html.append("<tr>");
            for (int column = 0; column < half; column++) {
                int place = row * half + column;
                html.append(column > 0 ? "<td class=\"arrow\">↔</td>" : "").append("<td>");
                html.append(cell(content.asked(facts.get(place)), open && place > 0, words));
                html.append("</td>");
            }
            html.append("</tr>");
            if (row == 0) {
                html.append("<tr>").append("<td class=\"arrow\">↕</td>");
                html.append(half > 1 ? "<td></td><td class=\"arrow\">↕</td>" : "")
                        .append("</tr>");
            }
        }
        return html.append("</table>").toString();
    }

    /** Where the sign of a division waits, the product stands there and its factor alone is to be filled in. */
    private static String cell(Prompt prompt, boolean open, Words words) {
        if (prompt instanceof MissingFactor) {
            return Written.line(prompt, open ? blank("1.9em") : "<b>" + prompt.expected() + "</b>", words);
        }
        return open ? blank("4.4em") : Written.line(prompt, Integer.toString(prompt.expected()), words);
    }

    private static String blank(String width) {
        return "<span class=\"line\" style=\"width: " + width + "\">&nbsp;</span>";
    }
}
