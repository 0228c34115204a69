// SPDX-License-Identifier: Apache-2.0
package fourfold.paper;

import fourfold.facts.Prompt;
import fourfold.insight.PageContent;
import fourfold.words.Words;
import java.util.List;

/**
 * Questions to answer by hand, and a key whose rows stand at the same height: cut into strips it is laid beside the
 * answers.
 */
final class PracticePage {
    private static final int ACROSS = 2;

    private final HtmlPage page;
    private final Words words;
    private final PageContent.Questions content;
    private final Layout layout;

    PracticePage(HtmlPage page, Words words, PageContent.Questions content, Layout layout) {
        this.page = page;
        this.words = words;
        this.content = content;
        this.layout = layout;
    }

    void draw() {
        int most = ACROSS * layout.rows();
        List<Prompt> all = content.prompts();
        for (int from = 0; from < all.size(); from += most) {
            List<Prompt> sheet = all.subList(from, Math.min(all.size(), from + most));
            side(sheet, from, false);
            side(sheet, from, true);
        }
    }

    private void side(List<Prompt> sheet, int from, boolean key) {
        String kind = key ? "key" : "";
        page.sheet(layout.large() ? (kind + " large").strip() : kind);
        String title = words.say(key ? "paper.key" : "paper.practice.title");
        page.head(title, content.name(), words.date(content.day()), content.number());
        page.element("p", "how", words.say(key ? "paper.key.how" : "paper.practice.how"));
        page.add("<div class=\"score\">");
        if (key) {
            page.element("span", words.say("paper.fold"));
        } else {
            Blanks.score(page, sheet.size(), words);
        }
        page.add("</div>\n<div class=\"questions\" style=\"--row: %.2fmm; --letters: %dpt\">\n", row(), letters());
        int rows = layout.rows();
        for (int column = 0; column < ACROSS; column++) {
            column(sheet, from, column * rows, Math.min(sheet.size(), (column + 1) * rows), key);
        }
        page.add("</div>\n").foot(words.say("paper.enter"), words.say("paper.number", content.number()));
    }

    private double row() {
        return (layout.height() - 46) / layout.rows();
    }

    private int letters() {
        return layout.large() ? 25 : 17;
    }

    private void column(List<Prompt> sheet, int from, int first, int end, boolean key) {
        page.add("<table>\n");
        for (int i = first; i < end; i++) {
            Prompt prompt = sheet.get(i);
            page.add("<tr><td class=\"place\">" + (from + i + 1) + "</td>");
            page.add(Written.cells(prompt, key ? "<b>" + prompt.expected() + "</b>" : Written.LINE, words));
            page.add("</tr>\n");
        }
        page.add("</table>\n");
    }
}
