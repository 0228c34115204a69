// SPDX-License-Identifier: Apache-2.0
package fourfold.paper;

import fourfold.facts.MissingFactor;
import fourfold.facts.Operation;
import fourfold.facts.Prompt;
import fourfold.facts.Question;
import fourfold.insight.PageContent;
import fourfold.words.Words;
import java.util.List;

/** Facts where they are met in life: areas, packs, prices, sharing. The numbers are the child's own; the things change. */
final class LifePage {
    /** How many texts there are for each operation. */
    private static final int KINDS = 6;

    private final HtmlPage page;
    private final Words words;
    private final PageContent.Questions content;
    private final Layout layout;

    LifePage(HtmlPage page, Words words, PageContent.Questions content, Layout layout) {
        this.page = page;
        this.words = words;
        this.content = content;
        this.layout = layout;
    }

    void draw() {
        int most = layout.large() ? 6 : content.kind().most();
        List<Prompt> all = content.prompts();
        for (int from = 0; from < all.size(); from += most) {
            side(from, Math.min(all.size(), from + most), false);
            side(from, Math.min(all.size(), from + most), true);
        }
    }

    private void side(int from, int end, boolean key) {
        page.sheet(key ? "key" : "");
        String title = words.say(key ? "paper.key" : "paper.life.title");
        page.head(title, content.name(), words.date(content.day()), content.number());
        page.element("p", "how", words.say(key ? "paper.life.key" : "paper.life.how"));
        page.add("<div class=\"score\">");
        if (!key) {
            Blanks.score(page, end - from, words);
        }
        double row = Math.min(19, (layout.height() - 50) / 12) * (layout.large() ? 2 : 1);
        page.add(
                "</div>\n<table class=\"told\" style=\"--row: %.2fmm; --letters: %dpt\">\n",
                row, layout.large() ? 17 : 12);
        for (int i = from; i < end; i++) {
            Prompt prompt = content.prompts().get(i);
            page.add("<tr><td class=\"place\">" + (i + 1) + "</td>").element("td", told(prompt, i));
            page.add("<td class=\"answer\">");
            page.add(key ? Written.line(prompt, "<b>" + prompt.expected() + "</b>", words) : Written.LINE);
            page.add("</td></tr>\n");
        }
        page.add("</table>\n").foot(words.say("paper.enter"), words.say("paper.number", content.number()));
    }

    private String told(Prompt prompt, int place) {
        Question question = prompt instanceof MissingFactor hidden ? hidden.quotient() : (Question) prompt;
        String kind = question.operation() == Operation.MULTIPLY ? "paper.life.times." : "paper.life.by.";
        return words.say(kind + (place % KINDS + 1), question.left(), question.right());
    }
}
