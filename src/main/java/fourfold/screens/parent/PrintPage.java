package fourfold.screens.parent;

import fourfold.home.Records;
import fourfold.log.Child;
import fourfold.log.RecordsFailure;
import fourfold.terminal.Footer;
import fourfold.terminal.Ink;
import fourfold.terminal.Key;
import fourfold.terminal.Menu;
import fourfold.terminal.Navigation;
import fourfold.terminal.Page;
import fourfold.terminal.Picture;
import fourfold.terminal.Wrapping;
import fourfold.words.Words;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;

/** Pages to print: makes a file and says where it is. */
final class PrintPage implements Page {
    private final Records records;
    private final Words words;
    private final Child child;
    private final Menu menu;
    private boolean letter;
    private String told = "";

    PrintPage(Records records, Child child) {
        this.records = records;
        this.words = records.words();
        this.child = child;
        List<String> lines = new ArrayList<>();
        for (Records.Printable page : Records.Printable.values()) {
            lines.add(words.say("print." + page.key()));
        }
        this.menu = new Menu(lines);
    }

    @Override
    public void draw(Picture picture) {
        int top = Math.max(1, picture.height() / 2 - 8);
        picture.centred(top, words.say("print.title", child.name()), Ink.STRONG);
        menu.draw(picture, top + 2);
        int y = top + 3 + Records.Printable.values().length;
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
                told = words.say(
                        "print.made", records.print(child, Records.Printable.values()[menu.chosen()], letter, at));
            } catch (RecordsFailure e) {
                told = records.words().failure(e);
            }
        }
        return Navigation.STAY;
    }
}
