package fourfold.screens.parent;

import fourfold.facts.Families;
import fourfold.facts.Family;
import fourfold.insight.Grid;
import fourfold.log.Child;
import fourfold.log.RecordsFailure;
import fourfold.progress.Progress;
import fourfold.screens.Colours;
import fourfold.screens.PageContext;
import fourfold.terminal.Footer;
import fourfold.terminal.Ink;
import fourfold.terminal.Key;
import fourfold.terminal.Navigation;
import fourfold.terminal.MutablePage;
import fourfold.terminal.Picture;
import fourfold.terminal.SessionClock;
import fourfold.terminal.Theme;
import fourfold.words.Words;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** The stairs: one cell for each family, the parent's keys beneath. */
public final class GridPage implements MutablePage {
    /** What the cells show. */
    enum View {
        FAMILY,
        PRODUCTS,
        QUOTIENTS;

        /** Its name in texts. */
        String key() {
            return "grid." + name().toLowerCase(Locale.ROOT);
        }

        View next() {
            return values()[(ordinal() + 1) % values().length];
        }
    }

    private final PageContext context;
    private final Child child;
    private final SessionClock moments;
    private final Words words;
    private SteeringKeys steers;
    private final Progress lastWeek;
    private Family chosen;
    private SelectionScope reach = SelectionScope.FAMILY;
    private boolean letters;
    private boolean askReset;
    private View view = View.FAMILY;

    public GridPage(PageContext context, Child child, SessionClock moments) {
        this.context = context;
        this.child = child;
        this.moments = moments;
        this.words = context.words();
        this.steers = new SteeringKeys(context, child);
        this.lastWeek = lastWeek();
        this.chosen = grid().shakiest().orElse(Family.of(2, 2));
        grid().shakiest().ifPresent(f -> steers.say(words.say("grid.shakiest", words.name(f))));
    }

    @Override
    public void returned() {
        try {
            steers = new SteeringKeys(context, child);
        } catch (RecordsFailure e) {
            steers.say(words.failure(e));
        }
    }

    @Override
    public Optional<Theme> theme() {
        return Optional.of(Colours.of(progress().steering().settings()));
    }

    /** The levels of a week ago, under what the parent has chosen today. */
    private Progress lastWeek() {
        Instant then = moments.now().minus(Duration.ofDays(7));
        Progress.Fold fold = Progress.Fold.ofLevels(steers.progress().steering());
        context.home().records().read(child, answer -> {
            if (answer.askedAt().isBefore(then)) {
                fold.accept(answer);
            }
        });
        return fold.progress();
    }

    Grid grid() {
        return Grid.of(progress(), moments.now());
    }

    Progress progress() {
        return steers.progress();
    }

    Family chosen() {
        return chosen;
    }

    @Override
    public void draw(Picture picture) {
        new StairsPicture(picture, words, grid(), lastWeek, view, chosen, reach, letters)
                .draw(child.name(), progress());
        String line = askReset ? words.say("grid.reset", scopeName()) : steers.told();
        List<String> keys = new ArrayList<>(List.of(words.say("grid.foot").split("   ")));
        keys.add("v " + words.say(view.next().key()));
        keys.add("t " + words.say(reach.next().key()));
        keys.add(words.say(letters ? "grid.shades" : "grid.letters"));
        keys.add(words.say("grid.open", chosen.high()));
        keys.add(words.say("grid.close"));
        int above = Footer.draw(picture, keys);
        picture.centred(above - 1, line, Ink.STRONG);
    }

    @Override
    public Navigation on(Key key, Instant at) {
        try {
            return askReset ? confirm(key, at) : act(key, at);
        } catch (RecordsFailure e) {
            steers.say(words.failure(e));
            return Navigation.STAY;
        }
    }

    private Navigation confirm(Key key, Instant at) {
        askReset = false;
        if (key.is(words.say("key.yes").charAt(0))) {
            steers.reset(scope(), scopeName(), at);
        } else {
            steers.say(words.say("family.unchanged"));
        }
        return Navigation.STAY;
    }

    private Navigation act(Key key, Instant at) {
        switch (key.kind()) {
            case ESCAPE -> {
                return Navigation.BACK;
            }
            case ENTER -> {
                return new Navigation.Open(new FamilyPage(context, child, chosen, moments));
            }
            case UP -> move(0, -1);
            case DOWN -> move(0, 1);
            case LEFT -> move(-1, 0);
            case RIGHT -> move(1, 0);
            default -> {
                return letter(key, at);
            }
        }
        return Navigation.STAY;
    }

    private Navigation letter(Key key, Instant at) {
        if (key.is('?')) {
            return new Navigation.Open(new GuidePage(context));
        } else if (key.is('m')) {
            return new Navigation.Open(new MorePage(context, child, moments));
        } else if (key.is('p')) {
            return new Navigation.Open(new PlanPage(context, child, moments));
        } else if (key.is('w')) {
            return new Navigation.Open(new AwayPage(context, child, moments));
        } else if (key.is('s')) {
            return new Navigation.Open(new SettingsPage(context, child));
        } else if (key.is('f')) {
            steers.focus(scope(), scopeName(), at);
        } else if (key.is('h')) {
            steers.hold(scope(), scopeName(), at);
        } else if (key.is('r')) {
            askReset = true;
        } else if (key.is('u')) {
            steers.undo(at);
        } else if (key.is('t')) {
            reach = reach.next();
            steers.say(reach == SelectionScope.FAMILY ? "" : words.say("grid.whole", scopeName()));
        } else if (key.is('l')) {
            letters = !letters;
        } else if (key.is('v')) {
            view = view.next();
        } else if (key.is('o')) {
            steers.open(chosen.high(), true, at);
        } else if (key.is('c')) {
            steers.open(chosen.high(), false, at);
        }
        return Navigation.STAY;
    }

    private List<Family> scope() {
        return reach.families(chosen);
    }

    private String scopeName() {
        return switch (reach) {
            case FAMILY -> words.name(chosen);
            case TABLE -> words.say("grid.thetable", chosen.high());
            case ALL -> words.say("grid.allfamilies");
        };
    }

    private void move(int columns, int rows) {
        int high = Math.max(1, Math.min(Families.LARGEST_FACTOR, chosen.high() + rows));
        int low = Math.max(1, Math.min(high, chosen.low() + columns));
        chosen = new Family(low, high);
        steers.say("");
    }
}
