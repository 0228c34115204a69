// SPDX-License-Identifier: Apache-2.0
package fourfold.paper;

import fourfold.insight.ComingWeeks;
import fourfold.insight.PageContent;
import fourfold.words.Words;
import java.util.stream.Collectors;

/** What the pages and games of the coming weeks need: only what they do need, and how much. */
final class SuppliesPage {
    private static final int MOST_NAMED = 12;

    private final HtmlPage page;
    private final Words words;
    private final ComingWeeks weeks;

    private SuppliesPage(HtmlPage page, Words words, ComingWeeks weeks) {
        this.page = page;
        this.words = words;
        this.weeks = weeks;
    }

    static void draw(HtmlPage page, PageContent.Supplies content, Words words) {
        page.sheet("").head(words.say("paper.supplies.title"), content.name(), words.date(content.day()), 0);
        SuppliesPage supplies = new SuppliesPage(page, words, content.weeks());
        supplies.planned();
        supplies.needed();
        page.foot(words.say("paper.supplies.foot"), "");
    }

    private void planned() {
        tell("p", "how", words.say("paper.supplies.how", words.date(weeks.last()), weeks.days()));
        if (weeks.pages().isEmpty()) {
            tell("p", "", words.say(weeks.days() == 0 ? "paper.supplies.off" : "paper.supplies.nothing"));
            return;
        }
        String kinds = weeks.pages().entrySet().stream()
                .map(e -> words.say("paper." + e.getKey().key() + ".title") + " " + e.getValue())
                .collect(Collectors.joining(", "));
        tell("p", "", words.say("paper.supplies.pages", kinds));
        if (!weeks.shaky().isEmpty()) {
            tell("p", "", words.say("paper.supplies.shaky", Written.names(weeks.shaky(), MOST_NAMED, words)));
        }
        weeks.opening()
                .forEach((table, day) -> tell("p", "", words.say("paper.supplies.table", words.date(day), table)));
    }

    private void needed() {
        page.add("<ul class=\"list\">\n");
        counted("paper.supplies.paper", weeks.sheets());
        counted("paper.supplies.card", weeks.card());
        if (weeks.card() > 0) {
            tell("li", "", words.say("paper.supplies.scissors"));
        }
        tell("li", "", words.say("paper.supplies.pencil"));
        counted("paper.supplies.things", weeks.counters());
        if (weeks.hasClock()) {
            tell("li", "", words.say("paper.supplies.clock"));
        }
        counted("paper.supplies.piles", weeks.piles());
        page.add("</ul>\n");
    }

    private void counted(String key, int count) {
        if (count > 0) {
            tell("li", "", words.say(key, count));
        }
    }

    private void tell(String tag, String kind, String text) {
        page.element(tag, kind, text).add("\n");
    }
}
