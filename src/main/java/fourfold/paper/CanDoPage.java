// SPDX-License-Identifier: Apache-2.0
package fourfold.paper;

import fourfold.facts.Family;
import fourfold.insight.PageContent;
import fourfold.insight.Portfolio;
import fourfold.progress.Mastery;
import fourfold.words.Words;
import java.util.List;

/** What a child can do now, told to the child: the stairs, and what is new on them. Nothing on it is a grade. */
final class CanDoPage {
    private static final int NAMED = 16;

    private CanDoPage() {}

    static void draw(HtmlPage page, PageContent.Report report, Words words) {
        Portfolio portfolio = report.portfolio();
        page.sheet("").head(words.say("paper.cando.title"), portfolio.name(), words.date(report.day()), 0);
        page.element("p", "how", words.say("paper.cando.how"));
        StairsDrawing.draw(page, portfolio, Portfolio.OfFamily::now, words.say("paper.stairs"));
        page.add("<ul class=\"can\">\n");
        line(page, words, "paper.cando.met", portfolio.families(Mastery.ACQUIRING, true));
        line(page, words, "paper.cando.accurate", portfolio.families(Mastery.ACCURATE, true));
        line(page, words, "paper.cando.fluent", portfolio.families(Mastery.FLUENT, true));
        gained(page, words, "paper.cando.gained.fluent", portfolio.gained(Mastery.FLUENT));
        List<Family> byHeart = portfolio.gained(Mastery.FLUENT);
        gained(
                page,
                words,
                "paper.cando.gained.accurate",
                portfolio.gained(Mastery.ACCURATE).stream()
                        .filter(f -> !byHeart.contains(f))
                        .toList());
        int days = portfolio.practice().days();
        line(page, words, "paper.cando.days", days);
        page.add("</ul>\n");
        String first = words.date(portfolio.period().first());
        page.foot(words.say("paper.period", first, words.date(portfolio.period().last())), "");
    }

    private static void line(HtmlPage page, Words words, String key, int count) {
        if (count > 0) {
            page.element("li", words.counted(key, count, count)).add("\n");
        }
    }

    private static void gained(HtmlPage page, Words words, String key, List<Family> families) {
        if (!families.isEmpty()) {
            page.element("li", words.say(key, Written.names(families, NAMED, words)))
                    .add("\n");
        }
    }
}
