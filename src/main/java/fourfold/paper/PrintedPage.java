package fourfold.paper;

import fourfold.insight.PageContent;
import fourfold.words.Words;

/** A page for practice away from the screen, as one HTML file in the family's language. */
public final class PrintedPage {
    private PrintedPage() {}

    /** The text of the file. */
    public static String html(PageContent content, Paper paper, Words words) {
        if (content instanceof PageContent.Cards cards) {
            return CardsPage.html(cards, paper, words);
        }
        if (content instanceof PageContent.Practice practice) {
            return PracticePage.html(practice, paper, words);
        }
        if (content instanceof PageContent.Whole whole) {
            return WholePage.html(whole, paper, words);
        }
        return content instanceof PageContent.Report report
                ? ProgressPage.html(report, paper, words)
                : TablePage.html(paper, words);
    }
}
