package fourfold.screens.parent;

import fourfold.home.Printable;
import fourfold.log.Child;
import fourfold.log.RecordsFailure;
import fourfold.paper.Paper;
import fourfold.paper.PrintedPage;
import fourfold.screens.PageContext;
import fourfold.terminal.Footer;
import fourfold.terminal.Ink;
import fourfold.terminal.Key;
import fourfold.terminal.Menu;
import fourfold.terminal.Navigation;
import fourfold.terminal.MutablePage;
import fourfold.terminal.Picture;
import fourfold.terminal.Wrapping;
import fourfold.words.Words;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;

/** Pages to print: makes a file and says where it is. */
final class PrintPage implements MutablePage {
    private final PageContext context;
    private final Words words;
    private final Child child;
    private final Menu menu;
    private boolean letter;
    private String told = "";

    PrintPage(PageContext context, Child child) {
        this.context = context;
        this.words = context.words();
        this.child = child;
        List<String> lines = new ArrayList<>();
        for (Printable page : Printable.values()) {
            lines.add(words.say("print." + page.key()));
        }
        this.menu = new Menu(lines);
    }

    @Override
    public void draw(Picture picture) {
        int top = Math.max(1, picture.height() / 2 - 8);
        picture.centred(top, words.say("print.title", child.name()), Ink.STRONG);
        menu.draw(picture, top + 2);
        int y = top + 3 + Printable.values().length;
        picture.centred(y, words.say(letter ? "print.letter" : "print.a4"), Ink.PLAIN);
        y += 2;
        for (String line : Wrapping.lines(told, picture.width() - 4)) {
            picture.centred(y++, line, Ink.STRONG);
        }
        Footer.draw(picture, List.of(words.say("print.foot").split("   ")));
    }

    @Override
    public Navigation on(Key key, Instant at) {
        if (key.kind() == Key.Kind.ESCAPE) {
            return Navigation.BACK;
        }
        if (key.is('s')) {
            letter = !letter;
            return Navigation.STAY;
        }
        if (menu.on(key)) {
            try {
                told = print(Printable.values()[menu.chosen()], at);
            } catch (RecordsFailure e) {
                told = words.failure(e);
            }
        }
        return Navigation.STAY;
    }

    private String print(Printable page, Instant at) {
        Paper paper = letter ? Paper.LETTER : Paper.A4;
        return context.home()
                .printPages()
                .content(child, page, at)
                .map(content -> context.home().printPages().keep(page, PrintedPage.html(content, paper, words), at))
                .map(file -> words.say("print.made", file))
                .orElseGet(() -> words.say("print.nothing", child.name()));
    }
}
