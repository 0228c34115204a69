// SPDX-License-Identifier: Apache-2.0
package fourfold.paper;

import fourfold.facts.Fact;
import fourfold.facts.Family;
import fourfold.insight.PageContent;
import fourfold.words.Words;

/** A family taught by two pictures of it, an array and jumps on a line, with its facts to finish. */
final class PicturesPage {
    private static final String LINE = "<span class=\"line\" style=\"width: 12mm\">&nbsp;</span>";

    private PicturesPage() {}

    static void draw(HtmlPage page, PageContent.OfFamilies content, Layout layout, Words words) {
        page.sheet("");
        String title = words.say("paper.pictures.title");
        page.head(title, content.name(), words.date(content.day()), 0);
        page.element("p", "how", words.say("paper.pictures.how"));
        for (Family family : content.families()) {
            page.add("<div class=\"teach\" style=\"--letters: %dpt\">", layout.large() ? 20 : 14);
            page.element("h2", words.name(family));
            page.add("<div style=\"height: %.1fmm\">", (layout.height() - 40) * 0.17);
            page.add(FamilyDrawing.array(family, words).replace("<svg ", "<svg style=\"height: 100%\" "));
            page.add("</div>").add(FamilyDrawing.jumps(family, words)).add("<p class=\"facts\">");
            for (Fact fact : family.facts()) {
                page.add("<span>" + Written.line(content.asked(fact), LINE, words) + "</span>");
            }
            page.add("</p></div>\n");
        }
        page.foot(words.say("paper.pictures.foot"), "");
    }
}
