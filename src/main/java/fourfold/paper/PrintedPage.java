// SPDX-License-Identifier: Apache-2.0
package fourfold.paper;

import fourfold.insight.PageContent;
import fourfold.insight.PageKind;
import fourfold.words.Words;
import java.time.LocalDate;

/** A page for practice away from the screen, as one HTML file in the family's language. */
public final class PrintedPage {
    private PrintedPage() {}

    /** The text of the file. */
    public static String html(PageContent content, Layout layout, Words words) {
        HtmlPage page = new HtmlPage(words, layout, title(content, words));
        if (content instanceof PageContent.Questions questions) {
            questions(page, questions, layout, words);
        } else if (content instanceof PageContent.OfFamilies families) {
            families(page, families, layout, words);
        } else if (content instanceof PageContent.Whole whole) {
            WholePage.draw(page, whole, words);
        } else if (content instanceof PageContent.Report report) {
            if (report.kind() == PageKind.CANDO) {
                CanDoPage.draw(page, report, words);
            } else {
                new ReportPage(page, words, report).draw();
            }
        } else if (content instanceof PageContent.Supplies supplies) {
            SuppliesPage.draw(page, supplies, words);
        } else {
            TablePage.draw(page, words);
        }
        return page.closed();
    }

    private static void questions(HtmlPage page, PageContent.Questions content, Layout layout, Words words) {
        switch (content.kind()) {
            case MINUTE -> new MinutePage(page, words, content, layout).draw();
            case LIFE -> new LifePage(page, words, content, layout).draw();
            case CARDS -> CardsPage.questions(page, content, layout, words);
            case DOMINO, PAIRS, LOTTO -> new GamePage(page, words, content, layout).draw();
            default -> new PracticePage(page, words, content, layout).draw();
        }
    }

    private static void families(HtmlPage page, PageContent.OfFamilies content, Layout layout, Words words) {
        switch (content.kind()) {
            case SQUARES -> SquaresPage.draw(page, content, layout, words);
            case PICTURES -> PicturesPage.draw(page, content, layout, words);
            default -> CardsPage.families(page, content, layout, words);
        }
    }

    /** What the page is called, with the child's name if it has one. */
    public static String title(PageContent content, Words words) {
        String kind = words.say("paper." + content.kind().key() + ".title");
        return content.name().isEmpty() ? kind : content.name() + " – " + kind;
    }

    /** A name for the file, without ending: whose page, which, of which day, and its number if it has one. */
    public static String fileName(PageContent content, LocalDate made, Words words) {
        String number = content instanceof PageContent.Questions questions && questions.number() > 0
                ? " – " + words.say("paper.number", questions.number())
                : "";
        String day = content instanceof PageContent.Table ? "" : " – " + words.date(made);
        return title(content, words) + day + number;
    }
}
