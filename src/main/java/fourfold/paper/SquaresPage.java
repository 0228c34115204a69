// SPDX-License-Identifier: Apache-2.0
package fourfold.paper;

import fourfold.facts.Family;
import fourfold.insight.PageContent;
import fourfold.words.Words;
import java.util.List;

/** The family's square of four to fill in, and the same filled. */
final class SquaresPage {
    private SquaresPage() {}

    static void draw(HtmlPage page, PageContent.OfFamilies content, Layout layout, Words words) {
        int most = most(content, layout);
        List<Family> all = content.families();
        for (int from = 0; from < all.size(); from += most) {
            List<Family> sheet = all.subList(from, Math.min(all.size(), from + most));
            side(page, content, sheet, true, layout, words);
            side(page, content, sheet, false, layout, words);
        }
    }

    /** How many stand on a sheet: two beside each other; with large letters each has the whole width. */
    private static int most(PageContent.OfFamilies content, Layout layout) {
        return layout.large() ? 4 : content.kind().most();
    }

    private static void side(
            HtmlPage page,
            PageContent.OfFamilies content,
            List<Family> sheet,
            boolean open,
            Layout layout,
            Words words) {
        String kind = open ? "" : "key";
        page.sheet(layout.large() ? (kind + " large").strip() : kind);
        String title = words.say(open ? "paper.squares.title" : "paper.key");
        page.head(title, content.name(), words.date(content.day()), 0);
        page.element("p", "how", words.say(open ? "paper.squares.how" : "paper.squares.key"));
        double cell = (layout.height() - 34) / (layout.large() ? most(content, layout) : 3);
        page.add("<div class=\"grid\" style=\"--cell: %.2fmm; --letters: %dpt\">\n", cell, layout.large() ? 24 : 18);
        for (Family family : sheet) {
            page.add("<div>").element("h2", family.low() + "   " + family.high() + "   " + family.product());
            page.add(FamilyDrawing.square(family, content, open, words)).add("</div>\n");
        }
        page.add("</div>\n").foot("", words.date(content.day()));
    }
}
