// SPDX-License-Identifier: Apache-2.0
package fourfold.paper;

import fourfold.facts.Families;
import fourfold.facts.Family;
import fourfold.insight.PageContent;
import fourfold.words.Words;
import java.util.Locale;

/** The last page: the child's stairs with all their stones, a capstone over the highest step, the name and the day. */
final class WholePage {
    private static final int SQUARE = 40;
    private static final int LEFT = 60;
    private static final int TOP = 80;

    private WholePage() {}

    static void draw(HtmlPage page, PageContent.Whole whole, Words words) {
        page.sheet("whole").element("h1", words.say("paper.whole.head"));
        page.add("\n<svg viewBox=\"0 0 520 490\" role=\"img\" aria-label=\"")
                .add(HtmlPage.escaped(words.say("paper.stairs")))
                .add("\">\n");
        rect(page, LEFT - 8, TOP - 16, 2 * SQUARE + 8, 12);
        page.add("<circle cx=\"" + (LEFT + 15) + "\" cy=\"" + (TOP - 30) + "\" r=\"8\" fill=\"#fff\" stroke=\"#000\""
                + " stroke-width=\"3\"/>\n");
        text(page, 40, 28, whole.name());
        text(page, 66, 16, words.date(whole.day()));
        for (Family family : Families.all()) {
            square(page, LEFT + (family.low() - 1) * SQUARE, TOP + (family.high() - 1) * SQUARE);
        }
        page.add("</svg>\n");
        page.element("p", words.say("paper.whole.told", Families.COUNT)).add("\n");
        page.element("p", words.say("paper.whole.stones")).add("\n</section>\n");
    }

    private static void text(HtmlPage page, int y, int size, String told) {
        page.add(String.format(
                Locale.ROOT,
                "<text x=\"%d\" y=\"%d\" font-size=\"%d\">%s</text>\n",
                LEFT + 3 * SQUARE,
                y,
                size,
                HtmlPage.escaped(told)));
    }

    /** Four stones. */
    private static void square(HtmlPage page, int x, int y) {
        for (int stone = 0; stone < 4; stone++) {
            rect(page, x + stone % 2 * 16, y + stone / 2 * 16, 14, 14);
        }
    }

    private static void rect(HtmlPage page, int x, int y, int width, int height) {
        page.add(String.format(
                Locale.ROOT, "<rect x=\"%d\" y=\"%d\" width=\"%d\" height=\"%d\"/>\n", x, y, width, height));
    }
}
