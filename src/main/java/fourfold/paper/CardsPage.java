package fourfold.paper;

import fourfold.facts.Question;
import fourfold.insight.PageContent;
import fourfold.insight.PaperQuestions;
import fourfold.words.Words;
import java.util.List;

/**
 * Cards to cut: questions on the first side; on the second their answers, with the columns the other way round, so that
 * each falls behind its question when the sheet is turned over its long edge.
 */
final class CardsPage {
    private static final int DOWN = 8;
    private static final int ACROSS = PaperQuestions.CARDS / DOWN;

    private CardsPage() {}

    static String html(PageContent.Cards cards, Paper paper, Words words) {
        HtmlPage page = new HtmlPage(words, paper, words.say("paper.cards.title", cards.name()));
        side(page, cards.questions(), false, words);
        side(page, cards.questions(), true, words);
        return page.closed();
    }

    private static void side(HtmlPage page, List<Question> questions, boolean answers, Words words) {
        page.add("<section>\n<table class=\"cards\">\n");
        int rows = (questions.size() + ACROSS - 1) / ACROSS;
        for (int row = 0; row < rows; row++) {
            page.add("<tr>");
            for (int column = 0; column < ACROSS; column++) {
                int place = row * ACROSS + (answers ? ACROSS - 1 - column : column);
                page.element("td", place < questions.size() ? face(questions.get(place), answers, words) : "");
            }
            page.add("</tr>\n");
        }
        page.add("</table>\n</section>\n");
    }

    private static String face(Question question, boolean answer, Words words) {
        return answer ? Integer.toString(question.expected()) : words.asked(question);
    }
}
