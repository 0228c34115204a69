package fourfold.screens.parent;

import fourfold.home.Records;
import fourfold.log.Child;
import fourfold.log.RecordsFailure;
import fourfold.terminal.Ink;
import fourfold.terminal.Key;
import fourfold.terminal.Menu;
import fourfold.terminal.Navigation;
import fourfold.terminal.Page;
import fourfold.terminal.Picture;
import fourfold.terminal.SessionClock;
import fourfold.words.Words;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;

/** The parent's other pages, by number. */
final class MorePage implements Page {
    private final Words words;
    private final Child child;
    private final List<Supplier<Page>> pages;
    private final Menu menu;
    private String trouble = "";

    MorePage(Records records, Child child, SessionClock moments) {
        this.words = records.words();
        this.child = child;
        Map<String, Supplier<Page>> all = new LinkedHashMap<>();
        all.put("more.plan", () -> new PlanPage(records, child, moments));
        all.put("more.away", () -> new AwayPage(records, child, moments));
        all.put("more.print", () -> new PrintPage(records, child));
        all.put("more.paper", () -> new PaperPage(records, child));
        all.put("more.rates", () -> new RatesPage(records, child));
        all.put("more.drills", () -> new DrillsPage(records, child, moments));
        all.put("more.history", () -> new HistoryPage(records, child));
        all.put("more.settings", () -> new SettingsPage(records, child));
        all.put("more.children", () -> new ChildrenPage(records));
        all.put("more.gate", () -> new GateSettingPage(records));
        all.put("more.cautions", () -> new CautionsPage(records));
        all.put("more.guide", () -> new GuidePage(records));
        this.pages = List.copyOf(all.values());
        List<String> lines =
                new ArrayList<>(all.keySet().stream().map(words::say).toList());
        this.menu = new Menu(lines);
    }

    @Override
    public void draw(Picture picture) {
        int top = Math.max(1, picture.height() / 2 - 7);
        picture.centred(top, words.say("more.title", child.name()), Ink.STRONG);
        menu.draw(picture, top + 2);
        picture.centred(picture.height() - 2, trouble, Ink.STRONG);
        picture.centred(picture.height() - 1, words.say("parent.foot"), Ink.QUIET);
    }

    @Override
    public Navigation on(Key key, Instant at) {
        if (key.kind() == Key.Kind.ESCAPE) {
            return Navigation.BACK;
        }
        try {
            return menu.on(key) ? new Navigation.Open(pages.get(menu.chosen()).get()) : Navigation.STAY;
        } catch (RecordsFailure e) {
            trouble = words.failure(e);
            return Navigation.STAY;
        }
    }
}
