// SPDX-License-Identifier: Apache-2.0
package fourfold.paper;

import fourfold.facts.MissingFactor;
import fourfold.facts.Prompt;
import fourfold.insight.PageContent;
import fourfold.words.Words;
import java.util.List;

/**
 * One minute, counted as curriculum-based measurement counts it: each right digit in its place (Shinn 1989). The key has
 * the digits up to the end of each row.
 */
final class MinutePage {
    private static final int ACROSS = 5;

    private final HtmlPage page;
    private final Words words;
    private final PageContent.Questions content;
    private final Layout layout;

    MinutePage(HtmlPage page, Words words, PageContent.Questions content, Layout layout) {
        this.page = page;
        this.words = words;
        this.content = content;
        this.layout = layout;
    }

    void draw() {
        side(false);
        side(true);
    }

    private void side(boolean key) {
        page.sheet(key ? "key" : "");
        String title = words.say(key ? "paper.key" : "paper.minute.title");
        page.head(title, content.name(), words.date(content.day()), content.number());
        page.element("p", "how", words.say(key ? "paper.minute.rule" : "paper.minute.how"));
        if (!key) {
            page.add("<div class=\"score\">").element("span", words.say("paper.minute.score"));
            page.element("span", words.say("paper.done")).add("</div>\n");
        }
        boxes(key);
        if (key) {
            page.ranges();
        }
        page.foot(words.say("paper.minute.calm"), words.say("paper.number", content.number()));
    }

    private void boxes(boolean key) {
        List<Prompt> prompts = content.prompts();
        int rows = (prompts.size() + ACROSS - 1) / ACROSS;
        double row = Math.min(26, (layout.height() - 66) / rows);
        page.add(
                "<table class=\"minute\" style=\"--row: %.2fmm; --letters: %dpt\">\n",
                row, layout.letters(key ? 11 : 14));
        int digits = 0;
        for (int r = 0; r < rows; r++) {
            page.add("<tr>");
            for (int i = r * ACROSS; i < Math.min(prompts.size(), (r + 1) * ACROSS); i++) {
                Prompt prompt = prompts.get(i);
                digits += Integer.toString(prompt.expected()).length();
                page.add("<td>")
                        .add(key ? Written.line(prompt, "<b>" + prompt.expected() + "</b>", words) : open(prompt));
                page.add("</td>");
            }
            page.add(key ? "<td class=\"count\">" + digits + "</td></tr>\n" : "</tr>\n");
        }
        page.add("</table>\n");
    }

    /** A hidden factor is written below as well, so that all columns are of one width. */
    private String open(Prompt prompt) {
        return HtmlPage.escaped(words.asked(prompt))
                + (prompt instanceof MissingFactor ? "<br>" : " =<br>")
                + Written.LINE;
    }
}
