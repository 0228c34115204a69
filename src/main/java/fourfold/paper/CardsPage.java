// SPDX-License-Identifier: Apache-2.0
package fourfold.paper;

import fourfold.facts.Family;
import fourfold.facts.Prompt;
import fourfold.insight.PageContent;
import fourfold.insight.PageKind;
import fourfold.words.Words;
import java.util.List;
import java.util.function.Function;

/**
 * Cards to cut: questions on the first side; on the second their answers, with the columns the other way round, so that
 * each falls behind its question when the sheet is turned over its long edge.
 */
final class CardsPage {
    private static final int NOTES = 14;

    private CardsPage() {}

    /** A question in front, its answer behind. */
    static void questions(HtmlPage page, PageContent.Questions content, Layout layout, Words words) {
        int across = layout.large() ? 3 : 4;
        int down = layout.large() ? 6 : 8;
        List<Prompt> all = content.prompts();
        for (int from = 0; from < all.size(); from += across * down) {
            List<Prompt> sheet = all.subList(from, Math.min(all.size(), from + across * down));
            String told = content.name() + "   " + words.say("paper.number", content.number());
            Sheet<Prompt> front = new Sheet<>(page, layout, words, across, down, told);
            front.side(sheet, false, p -> HtmlPage.escaped(words.asked(p)));
            front.side(sheet, true, p -> "<b>" + p.expected() + "</b>");
        }
    }

    /** A picture or an open square in front, the facts behind. */
    static void families(HtmlPage page, PageContent.OfFamilies content, Layout layout, Words words) {
        Sheet<Family> sheet = new Sheet<>(page, layout, words, 2, 4, content.name());
        Function<Family, String> front = content.kind() == PageKind.PICTURECARDS
                ? family -> FamilyDrawing.array(family, words)
                : family -> FamilyDrawing.square(family, content, true, words);
        sheet.side(content.families(), false, front);
        sheet.side(content.families(), true, family -> FamilyDrawing.square(family, content, false, words));
    }

    /** A sheet of cards with two sides. */
    private record Sheet<T>(HtmlPage page, Layout layout, Words words, int across, int down, String told) {
        void side(List<T> cards, boolean back, Function<T, String> face) {
            page.sheet(layout.large() ? "large" : "");
            page.add("<p class=\"note\">").element("span", words.say("paper.cut"));
            page.element("span", told).add("</p>\n");
            page.add("<table class=\"cut\" style=\"--cell: %.2fmm\">\n", (layout.height() - NOTES) / down);
            int rows = (cards.size() + across - 1) / across;
            for (int row = 0; row < rows; row++) {
                page.add("<tr>");
                for (int column = 0; column < across; column++) {
                    int place = row * across + (back ? across - 1 - column : column);
                    page.add("<td>")
                            .add(place < cards.size() ? face.apply(cards.get(place)) : "")
                            .add("</td>");
                }
                page.add("</tr>\n");
            }
            page.add("</table>\n").foot(words.say(back ? "paper.cards.back" : "paper.cards.front"), "");
        }
    }
}
