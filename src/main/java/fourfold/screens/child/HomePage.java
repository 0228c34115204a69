package fourfold.screens.child;

import fourfold.facts.Family;
import fourfold.home.KnownChild;
import fourfold.log.Child;
import fourfold.log.RecordsFailure;
import fourfold.progress.Steering;
import fourfold.scheduling.Scheduler;
import fourfold.screens.Colours;
import fourfold.screens.PageContext;
import fourfold.screens.parent.ChildrenPage;
import fourfold.screens.parent.GatePage;
import fourfold.screens.parent.GridPage;
import fourfold.screens.parent.GuidePage;
import fourfold.screens.parent.ParentPage;
import fourfold.terminal.Ink;
import fourfold.terminal.Key;
import fourfold.terminal.Menu;
import fourfold.terminal.Navigation;
import fourfold.terminal.Page;
import fourfold.terminal.MutablePage;
import fourfold.terminal.Picture;
import fourfold.terminal.SessionClock;
import fourfold.terminal.Theme;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The first page: who wants to practise? */
public final class HomePage implements MutablePage {
    private final PageContext context;
    private final Scheduler scheduler;
    private final SessionClock moments;
    private final fourfold.log.Surface surface;
    private List<Child> children = List.of();
    private boolean known;
    private Menu menu = new Menu(List.of());
    private String trouble = "";
    private Theme theme = Theme.TERMINAL;

    /** The home of these records. */
    public HomePage(PageContext context, Scheduler scheduler, SessionClock moments, fourfold.log.Surface surface) {
        this.context = context;
        this.scheduler = scheduler;
        this.moments = moments;
        this.surface = surface;
        returned();
    }

    @Override
    public void returned() {
        trouble = "";
        try {
            List<KnownChild> all = context.home().children().all();
            known = !all.isEmpty();
            children =
                    all.stream().filter(k -> !k.away()).map(KnownChild::child).toList();
            theme = Colours.shared(children.stream()
                    .map(child -> Colours.of(
                            Steering.of(context.home().records().actions(child)).settings()))
                    .toList());
        } catch (RecordsFailure e) {
            trouble = context.words().failure(e);
        }
        List<String> lines = new ArrayList<>(children.stream().map(Child::name).toList());
        lines.add(context.words().say("home.add"));
        if (known) {
            lines.add(context.words().say("home.parents"));
        }
        lines.add(context.words().say("home.leave"));
        menu = new Menu(lines);
    }

    @Override
    public void draw(Picture picture) {
        int top = Math.max(1, picture.height() / 2 - 7);
        picture.centred(top, "F O U R F O L D", Ink.STRONG);
        picture.centred(top + 1, example(), Ink.QUIET);
        picture.centred(top + 3, context.words().say(children.isEmpty() ? "home.welcome" : "home.who"), Ink.PLAIN);
        menu.draw(picture, top + 5);
        picture.centred(picture.height() - 2, trouble, Ink.STRONG);
        picture.centred(picture.height() - 1, context.words().say("home.foot"), Ink.QUIET);
    }

    private String example() {
        Family family = Family.of(7, 8);
        return context.words().fact(family.facts().get(0)) + "   ↔   "
                + context.words().fact(family.facts().get(3));
    }

    @Override
    public Optional<Theme> theme() {
        return Optional.of(theme);
    }

    @Override
    public Navigation on(Key key, Instant at) {
        if (key.kind() == Key.Kind.ESCAPE) {
            return Navigation.LEAVE;
        }
        if (key.is('?')) {
            return new Navigation.Open(new GuidePage(context));
        }
        if (!menu.on(key)) {
            return Navigation.STAY;
        }
        int line = menu.chosen();
        try {
            return open(line);
        } catch (RecordsFailure e) {
            trouble = context.words().failure(e);
            return Navigation.STAY;
        }
    }

    private Navigation open(int line) {
        if (line < children.size()) {
            return new Navigation.Open(new MinutesPage(context, scheduler, moments, surface, children.get(line)));
        }
        if (line == children.size()) {
            return new Navigation.Open(new NamePage(context));
        }
        if (line == children.size() + 1 && known) {
            return new Navigation.Open(GatePage.before(context, this::forParents));
        }
        return Navigation.LEAVE;
    }

    /** The only child's stairs, a choice of several, or those who were put away, so that they can come back. */
    private Page forParents() {
        return switch (children.size()) {
            case 0 -> new ChildrenPage(context);
            case 1 -> new GridPage(context, children.get(0), moments);
            default -> new ParentPage(context, moments);
        };
    }
}
