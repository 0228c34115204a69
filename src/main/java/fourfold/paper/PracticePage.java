package fourfold.paper;

import fourfold.facts.Question;
import fourfold.insight.PageContent;
import fourfold.words.Words;
import java.util.List;

/** Questions to answer by hand, and the answers on a page of their own. */
final class PracticePage {
    private static final int ACROSS = 2;

    private PracticePage() {}

    static String html(PageContent.Practice practice, Paper paper, Words words) {
        HtmlPage page = new HtmlPage(words, paper, words.say("paper.practice.title", practice.name()));
        String day = words.shortDate(practice.day());
        side(page, practice.name() + ", " + day, practice.questions(), false, words);
        String head = words.say("paper.practice.answers", practice.name(), day);
        side(page, head, practice.questions(), true, words);
        return page.closed();
    }

    private static void side(HtmlPage page, String head, List<Question> questions, boolean answers, Words words) {
        page.add("<section>\n").element("h1", head).add("\n<table class=\"questions\">\n");
        int rows = (questions.size() + ACROSS - 1) / ACROSS;
        for (int row = 0; row < rows; row++) {
            page.add("<tr>");
            for (int column = 0; column < ACROSS; column++) {
                int place = column * rows + row;
                page.add("<td>");
                if (place < questions.size()) {
                    Question question = questions.get(place);
                    page.add(HtmlPage.escaped(words.asked(question))).add(" = ");
                    page.add(answers ? "<b>" + question.expected() + "</b>" : "<span class=\"line\">&nbsp;</span>");
                }
                page.add("</td>");
            }
            page.add("</tr>\n");
        }
        page.add("</table>\n</section>\n");
    }
}
