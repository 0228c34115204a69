// SPDX-License-Identifier: Apache-2.0
package fourfold.paper;

import fourfold.facts.Prompt;
import fourfold.insight.PageContent;
import fourfold.words.Words;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;

/** A game for two with its rules, made from a child's own facts; all it needs is scissors, and something to lay on a board. */
final class GamePage {
    private static final int RULES = 5;
    private static final int ACROSS = 3;

    private final HtmlPage page;
    private final Words words;
    private final PageContent.Questions content;
    private final Layout layout;

    GamePage(HtmlPage page, Words words, PageContent.Questions content, Layout layout) {
        this.page = page;
        this.words = words;
        this.content = content;
        this.layout = layout;
    }

    void draw() {
        switch (content.kind()) {
            case DOMINO -> domino();
            case PAIRS -> pairs();
            default -> lotto();
        }
    }

    private void opening() {
        page.sheet("")
                .head(
                        words.say("paper." + content.kind().key() + ".title"),
                        content.name(),
                        words.date(content.day()),
                        0);
        page.add("<ol class=\"rules\">\n");
        for (int rule = 1; rule <= RULES; rule++) {
            page.element("li", words.say("paper." + content.kind().key() + ".rule." + rule))
                    .add("\n");
        }
        page.add("</ol>\n");
    }

    /** Mixed by what is on the page, so that the same page is always the same. */
    private List<String> mixed(List<String> tiles) {
        List<String> mixed = new ArrayList<>(tiles);
        Collections.shuffle(mixed, new Random(content.prompts().hashCode()));
        return mixed;
    }

    /** Each tile has the answer of the tile before it, and a question: together they make a ring. */
    private void domino() {
        List<Prompt> prompts = content.prompts();
        List<String> tiles = new ArrayList<>();
        for (int i = 0; i < prompts.size(); i++) {
            Prompt before = prompts.get((i + prompts.size() - 1) % prompts.size());
            tiles.add("<div class=\"tile\"><span>" + before.expected() + "</span><span>"
                    + HtmlPage.escaped(words.asked(prompts.get(i))) + "</span></div>");
        }
        opening();
        cut(mixed(tiles), ACROSS, 32);
        page.foot(words.say("paper.cut"), "");
    }

    private void pairs() {
        List<String> cards = new ArrayList<>();
        for (Prompt prompt : content.prompts()) {
            cards.add(HtmlPage.escaped(words.asked(prompt)));
            cards.add("<b>" + prompt.expected() + "</b>");
        }
        opening();
        cut(mixed(cards), ACROSS + 1, 32);
        page.foot(words.say("paper.cut"), "");
    }

    /** Two boards that share no answer, and the questions to call out. */
    private void lotto() {
        List<Prompt> prompts = content.prompts();
        int each = prompts.size() / 2;
        opening();
        board(prompts.subList(0, each));
        board(prompts.subList(each, 2 * each));
        page.foot(words.say("paper.cut"), "");
        page.sheet("").add("<p class=\"note\">").element("span", words.say("paper.cut"));
        page.element("span", content.name()).add("</p>\n");
        List<String> cards = new ArrayList<>();
        prompts.subList(0, 2 * each).forEach(p -> cards.add(HtmlPage.escaped(words.asked(p))));
        cut(mixed(cards), ACROSS, 36);
        page.foot("", "");
    }

    private void board(List<Prompt> prompts) {
        int across = prompts.size() < 2 * ACROSS ? 2 : ACROSS;
        page.add("<div class=\"cutout\"><table class=\"board\">\n");
        for (int i = 0; i < prompts.size(); i++) {
            page.add(i % across == 0 ? "<tr>" : "");
            page.element("td", Integer.toString(prompts.get(i).expected()));
            page.add(i % across == across - 1 || i == prompts.size() - 1 ? "</tr>\n" : "");
        }
        page.add("</table></div>\n");
    }

    private void cut(List<String> faces, int across, double cell) {
        int rows = (faces.size() + across - 1) / across;
        double fits = Math.min(cell, (layout.height() - 68) / rows);
        page.add("<table class=\"cut\" style=\"--cell: %.2fmm\">\n", fits);
        for (int i = 0; i < rows * across; i++) {
            page.add(i % across == 0 ? "<tr>" : "").add("<td>");
            page.add(i < faces.size() ? faces.get(i) : "").add("</td>");
            page.add(i % across == across - 1 ? "</tr>\n" : "");
        }
        page.add("</table>\n");
    }
}
