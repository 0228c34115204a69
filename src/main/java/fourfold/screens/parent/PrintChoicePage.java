// SPDX-License-Identifier: Apache-2.0
package fourfold.screens.parent;

import fourfold.home.Home;
import fourfold.home.MadePage;
import fourfold.insight.PageContent;
import fourfold.insight.PageKind;
import fourfold.log.Child;
import fourfold.paper.PrintedPage;
import fourfold.screens.HomeEffect;
import fourfold.screens.KeyPage;
import fourfold.terminal.Footer;
import fourfold.terminal.Ink;
import fourfold.terminal.Key;
import fourfold.terminal.PageEffect;
import fourfold.terminal.PageEvent;
import fourfold.terminal.PageResult;
import fourfold.terminal.Picture;
import fourfold.terminal.Wrapping;
import fourfold.words.Words;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;

/**
 * What is chosen for a page before it is made; says afterwards where it is.
 *
 * @param folder into which pages go
 */
record PrintChoicePage(Words words, Child child, PrintRow.Chosen chosen, int row, String folder, String message)
        implements KeyPage {
    private static final int NAME = 22;

    static PrintChoicePage of(Words words, Child child, PageKind kind, String folder) {
        return new PrintChoicePage(words, child, PrintRow.Chosen.usual(kind), 0, folder, "");
    }

    private PrintChoicePage with(PrintRow.Chosen other, int at, String line) {
        return new PrintChoicePage(words, child, other, at, folder, line);
    }

    private List<PrintRow> rows() {
        return PrintRow.of(chosen.kind());
    }

    @Override
    public void draw(Picture picture) {
        boolean tall = picture.height() >= 22;
        picture.centred(tall ? 1 : 0, words.say("print.title", child.name()), Ink.STRONG);
        picture.centred(tall ? 3 : 1, words.say("print." + chosen.kind().key()), Ink.PLAIN);
        int x = Math.max(1, (picture.width() - 64) / 2);
        int y = tall ? 5 : 3;
        for (int i = 0; i < rows().size(); i++) {
            PrintRow one = rows().get(i);
            String name = words.say(one.key());
            String line = name + " ".repeat(Math.max(1, NAME - Picture.columns(name)));
            String value = one.said(words, chosen.value(one));
            picture.text(
                    x, y++, (i == row ? "► " : "  ") + line + "◄ " + value + " ►", i == row ? Ink.STRONG : Ink.PLAIN);
        }
        y++;
        String told = message.isEmpty() ? words.say("print.where", folder) : message;
        for (String line : Wrapping.lines(told, picture.width() - 4)) {
            picture.centred(y++, line, message.isEmpty() ? Ink.QUIET : Ink.STRONG);
        }
        Footer.draw(picture, List.of(words.say("print.choose.foot").split("   ")));
    }

    @Override
    public PageResult pressed(PageEvent.Pressed key) {
        int count = rows().size();
        return switch (key.key().kind()) {
            case ESCAPE -> PageResult.of(this, PageEffect.BACK);
            case UP -> PageResult.of(with(chosen, Math.floorMod(row - 1, count), message));
            case DOWN -> PageResult.of(with(chosen, Math.floorMod(row + 1, count), message));
            case LEFT, RIGHT ->
                PageResult.of(
                        with(chosen.changed(rows().get(row), key.key().kind() == Key.Kind.LEFT ? -1 : 1), row, ""));
            case ENTER -> PageResult.of(this, new Print(words, child, chosen, key.at()));
            default -> PageResult.of(this);
        };
    }

    @Override
    public PageResult done(PageEffect.Outcome outcome, Instant at) {
        if (outcome instanceof HomeEffect.Failed failed) {
            return PageResult.of(with(chosen, row, words.failure(failed.failure())));
        }
        return PageResult.of(with(chosen, row, told(((Printed) outcome).pages())));
    }

    private String told(List<MadePage> pages) {
        if (pages.isEmpty()) {
            return words.say("print." + chosen.kind().nothing(), child.name());
        }
        MadePage first = pages.get(0);
        String shown = words.say(first.shown() ? "print.shown" : "print.open");
        String file = words.say(first.before() ? "print.before" : "print.made", first.file());
        return pages.size() == 1
                ? file + " " + shown
                : file + " " + words.say("print.more", pages.size() - 1) + " " + shown;
    }

    /** Makes pages to print, each in a file. */
    private record Print(Words words, Child child, PrintRow.Chosen chosen, Instant at) implements HomeEffect {
        @Override
        public Outcome perform(Home home) {
            LocalDate today = LocalDate.ofInstant(at, home.moments().zone());
            List<MadePage> made = new ArrayList<>();
            for (PageContent content : home.printPages().content(child, chosen.order(today), at)) {
                String html = PrintedPage.html(content, chosen.layout(), words);
                made.add(home.printPages().keep(PrintedPage.fileName(content, today, words), html, true));
            }
            return new Printed(made);
        }
    }

    /** The files that were made; none if there was nothing to print. */
    private record Printed(List<MadePage> pages) implements PageEffect.Outcome {}
}
