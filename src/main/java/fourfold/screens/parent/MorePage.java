package fourfold.screens.parent;

import fourfold.log.Child;
import fourfold.log.RecordsFailure;
import fourfold.screens.PageContext;
import fourfold.terminal.Ink;
import fourfold.terminal.Key;
import fourfold.terminal.Menu;
import fourfold.terminal.Navigation;
import fourfold.terminal.Page;
import fourfold.terminal.MutablePage;
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
final class MorePage implements MutablePage {
    private final Words words;
    private final Child child;
    private final List<Supplier<Page>> pages;
    private final Menu menu;
    private String trouble = "";

    MorePage(PageContext context, Child child, SessionClock moments) {
        this.words = context.words();
        this.child = child;
        Map<String, Supplier<Page>> all = new LinkedHashMap<>();
        all.put("more.plan", () -> new PlanPage(context, child, moments));
        all.put("more.away", () -> new AwayPage(context, child, moments));
        all.put("more.print", () -> new PrintPage(context, child));
        all.put("more.paper", () -> new PaperPage(context, child));
        all.put("more.rates", () -> new RatesPage(context, child));
        all.put("more.drills", () -> new DrillsPage(context, child, moments));
        all.put("more.history", () -> new HistoryPage(context, child));
        all.put("more.settings", () -> new SettingsPage(context, child));
        all.put("more.children", () -> new ChildrenPage(context));
        all.put("more.gate", () -> new GateSettingPage(context));
        all.put("more.cautions", () -> new CautionsPage(context));
        all.put("more.guide", () -> new GuidePage(context));
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
