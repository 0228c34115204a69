package fourfold.screens.parent;

import fourfold.home.Home;
import fourfold.home.Printable;
import fourfold.log.Child;
import fourfold.paper.Paper;
import fourfold.paper.PrintedPage;
import fourfold.screens.HomeEffect;
import fourfold.screens.KeyPage;
import fourfold.terminal.Footer;
import fourfold.terminal.Ink;
import fourfold.terminal.Key;
import fourfold.terminal.Menu;
import fourfold.terminal.PageEffect;
import fourfold.terminal.PageEvent;
import fourfold.terminal.PageResult;
import fourfold.terminal.Picture;
import fourfold.terminal.Wrapping;
import fourfold.words.Words;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** Pages to print: makes a file and says where it is. */
record PrintPage(Words words, Child child, Menu menu, boolean letter, String message) implements KeyPage {
    PrintPage(Words words, Child child) {
        this(words, child, new Menu(lines(words)), false, "");
    }

    private static List<String> lines(Words words) {
        return Stream.of(Printable.values())
                .map(page -> words.say("print." + page.key()))
                .toList();
    }

    @Override
    public void draw(Picture picture) {
        int top = Math.max(1, picture.height() / 2 - 8);
        picture.centred(top, words.say("print.title", child.name()), Ink.STRONG);
        menu.draw(picture, top + 2);
        int y = top + 3 + Printable.values().length;
        picture.centred(y, words.say(letter ? "print.letter" : "print.a4"), Ink.PLAIN);
        y += 2;
        for (String line : Wrapping.lines(message, picture.width() - 4)) {
            picture.centred(y++, line, Ink.STRONG);
        }
        Footer.draw(picture, List.of(words.say("print.foot").split("   ")));
    }

    @Override
    public PageResult pressed(PageEvent.Pressed key) {
        if (key.key().kind() == Key.Kind.ESCAPE) {
            return PageResult.of(this, PageEffect.BACK);
        }
        if (key.key().is('s')) {
            return PageResult.of(new PrintPage(words, child, menu, !letter, message));
        }
        Menu next = menu.on(key.key());
        PrintPage page = new PrintPage(words, child, next, letter, message);
        Printable printable = Printable.values()[next.chosen()];
        return next.picked()
                ? PageResult.of(page, new Print(words, child, printable, letter ? Paper.LETTER : Paper.A4, key.at()))
                : PageResult.of(page);
    }

    @Override
    public PageResult done(PageEffect.Outcome outcome, Instant at) {
        if (outcome instanceof HomeEffect.Failed failed) {
            return PageResult.of(new PrintPage(words, child, menu, letter, words.failure(failed.failure())));
        }
        String line = ((Printed) outcome)
                .file()
                .map(file -> words.say("print.made", file))
                .orElseGet(() -> words.say("print." + Printable.values()[menu.chosen()].nothing(), child.name()));
        return PageResult.of(new PrintPage(words, child, menu, letter, line));
    }

    /** Makes a page to print, in a file. */
    record Print(Words words, Child child, Printable page, Paper paper, Instant at) implements HomeEffect {
        @Override
        public Outcome perform(Home home) {
            return new Printed(home.printPages()
                    .content(child, page, at)
                    .map(content -> home.printPages().keep(page, PrintedPage.html(content, paper, words), at)));
        }
    }

    /** The file that was made; empty if there was nothing to print. */
    private record Printed(Optional<String> file) implements PageEffect.Outcome {}
}
