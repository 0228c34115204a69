// SPDX-License-Identifier: Apache-2.0
package fourfold.screens.parent;

import fourfold.home.Home;
import fourfold.home.NumberedPage;
import fourfold.log.Child;
import fourfold.screens.HomeEffect;
import fourfold.screens.KeyPage;
import fourfold.terminal.Footer;
import fourfold.terminal.Ink;
import fourfold.terminal.PageEffect;
import fourfold.terminal.PageEvent;
import fourfold.terminal.PageResult;
import fourfold.terminal.Picture;
import fourfold.terminal.Wrapping;
import fourfold.words.Words;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;

/**
 * The printed pages of a child: which one is entered? By the number that stands on it, or from the list.
 *
 * @param typed digits of a number
 */
record PaperPage(Words words, Child child, ZoneId zone, List<NumberedPage> pages, int chosen, String typed)
        implements KeyPage {
    private static final int DIGITS = 4;

    PaperPage {
        pages = List.copyOf(pages);
    }

    @Override
    public void draw(Picture picture) {
        int y = picture.height() >= 22 ? 1 : 0;
        picture.centred(y, words.say("paper.title", child.name()), Ink.STRONG);
        y += 2;
        if (pages.isEmpty()) {
            y += 2;
            for (String line : Wrapping.lines(words.say("paper.none"), picture.width() - 2)) {
                picture.centred(y++, line, Ink.PLAIN);
            }
        } else {
            picture.centred(y, words.say("paper.which", typed + "_"), Ink.PLAIN);
            y += 2;
        }
        int room = Math.max(1, picture.height() - y - 4);
        int first = Math.max(0, Math.min(chosen - room / 2, pages.size() - room));
        int x = Math.max(0, (picture.width() - 64) / 2);
        for (int i = first; i < Math.min(pages.size(), first + room); i++) {
            picture.text(
                    x, y++, (i == chosen ? "► " : "  ") + line(pages.get(i)), i == chosen ? Ink.STRONG : Ink.PLAIN);
        }
        int above = Footer.draw(picture, List.of(words.say("paper.foot").split("   ")));
        boolean unknown = typed.length() == DIGITS && typedPage().isEmpty();
        Footer.say(picture, above, unknown ? words.say("paper.unknown", typed) : "");
    }

    private String line(NumberedPage page) {
        String done = switch (page.entered().size()) {
            case 0 -> "";
            case 1 -> "   " + words.say("paper.entered");
            default -> "   " + words.say("paper.entered.twice");
        };
        return page.number() + "   " + words.date(page.day()) + "   "
                + words.say("paper." + page.kind().key() + ".title") + done;
    }

    private Optional<NumberedPage> typedPage() {
        return pages.stream()
                .filter(p -> Integer.toString(p.number()).equals(typed))
                .findFirst();
    }

    @Override
    public PageResult pressed(PageEvent.Pressed key) {
        int last = Math.max(0, pages.size() - 1);
        return switch (key.key().kind()) {
            case ESCAPE -> PageResult.of(this, PageEffect.BACK);
            case UP -> PageResult.of(at(Math.max(0, chosen - 1), ""));
            case DOWN -> PageResult.of(at(Math.min(last, chosen + 1), ""));
            case DIGIT -> typed(typed.length() < DIGITS ? typed + key.key().digit() : typed);
            case ERASE -> typed(typed.substring(0, Math.max(0, typed.length() - 1)));
            case ENTER -> entered(key);
            default -> PageResult.of(this);
        };
    }

    private PaperPage at(int page, String number) {
        return new PaperPage(words, child, zone, pages, page, number);
    }

    /** The page whose number is typed is marked in the list. */
    private PageResult typed(String number) {
        PaperPage next = at(chosen, number);
        return PageResult.of(
                next.typedPage().map(p -> at(pages.indexOf(p), number)).orElse(next));
    }

    private PageResult entered(PageEvent.Pressed key) {
        boolean unknown = !typed.isEmpty() && typedPage().isEmpty();
        if (pages.isEmpty() || unknown) {
            return PageResult.of(this);
        }
        LocalDate today = LocalDate.ofInstant(key.at(), zone);
        return PageResult.of(
                at(chosen, ""), new PageEffect.Open(PaperEntryPage.of(words, child, pages.get(chosen), today)));
    }

    @Override
    public PageResult returned(Instant at) {
        return PageResult.of(this, new Read(child));
    }

    @Override
    public PageResult done(PageEffect.Outcome outcome, Instant at) {
        return outcome instanceof Pages read
                ? PageResult.of(new PaperPage(words, child, zone, read.pages(), chosen, ""))
                : PageResult.of(this);
    }

    /** Reads the pages anew. */
    private record Read(Child child) implements HomeEffect {
        @Override
        public Outcome perform(Home home) {
            return new Pages(home.paperAnswers().pages(child));
        }
    }

    /** The pages as they are now. */
    private record Pages(List<NumberedPage> pages) implements PageEffect.Outcome {}
}
