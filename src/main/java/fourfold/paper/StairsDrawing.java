// SPDX-License-Identifier: Apache-2.0
package fourfold.paper;

import fourfold.facts.Family;
import fourfold.insight.Portfolio;
import fourfold.progress.Mastery;
import fourfold.words.Stones;
import java.util.function.Function;

/** The stairs on paper: each family's product beside its stones. */
final class StairsDrawing {
    private StairsDrawing() {}

    /** The stairs at the beginning or at the end of a period. */
    static void draw(HtmlPage page, Portfolio portfolio, Function<Portfolio.OfFamily, Mastery> level, String label) {
        page.add("<svg viewBox=\"0 0 454 264\" role=\"img\" aria-label=\"" + HtmlPage.escaped(label) + "\">\n");
        for (Portfolio.OfFamily one : portfolio.families()) {
            Family family = one.family();
            // The one product of three digits stands a little apart.
            int x = (family.low() - 1) * 45 + (family.product() == 100 ? 9 : 0);
            int y = (family.high() - 1) * 26;
            page.add(
                    "<text x=\"%d\" y=\"%d\" font-size=\"14.5\" text-anchor=\"end\">%d</text>\n",
                    x + 20, y + 17, family.product());
            square(page, x + 24, y + 4, level.apply(one));
        }
        page.add("</svg>\n");
    }

    /** Four places for stones, laid from the lower left as on the screen. */
    private static void square(HtmlPage page, int x, int y, Mastery level) {
        for (boolean upper : new boolean[] {false, true}) {
            for (boolean right : new boolean[] {false, true}) {
                page.add(
                        "<rect x=\"%d\" y=\"%d\" width=\"7\" height=\"7\" fill=\"%s\" stroke=\"#777\""
                                + " stroke-width=\"0.5\"/>\n",
                        x + (right ? 8 : 0),
                        y + (upper ? 0 : 8),
                        Stones.isLaid(level.ordinal(), upper, right) ? "#000" : "#fff");
            }
        }
    }
}
