// SPDX-License-Identifier: Apache-2.0
package fourfold.screens.parent;

import fourfold.facts.Families;
import fourfold.facts.Family;
import fourfold.insight.Grid;
import fourfold.plain.GridText;
import fourfold.progress.Mastery;
import fourfold.progress.Progress;
import fourfold.screens.HomeEffect;
import fourfold.screens.KeyPage;
import fourfold.terminal.Footer;
import fourfold.terminal.Key;
import fourfold.terminal.PageEffect;
import fourfold.terminal.PageEvent;
import fourfold.terminal.PageResult;
import fourfold.terminal.Picture;
import fourfold.words.ActionWords;
import fourfold.words.Words;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** The stairs: one cell for each family, the parent's keys beneath. */
record GridPage(SteeringKeys steers, Progress lastWeek, Instant now, Family chosen, Look look, boolean askReset)
        implements KeyPage, Speaking {
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

    /** How the grid is looked at: what cells show, how far keys reach, letters in place of stones. */
    record Look(View view, SelectionScope reach, boolean letters) {}

    /** The grid as it opens: with the shakiest family chosen. */
    static GridPage of(SteeringKeys steers, Progress lastWeek, Instant now) {
        Optional<Family> shakiest = Grid.of(steers.progress(), now).shakiest();
        Words words = steers.words();
        boolean aside = steers.progress().isAllSetAside();
        return new GridPage(
                aside
                        ? steers.say(words.say("grid.setaside"))
                        : shakiest.map(f -> steers.say(words.say("grid.shakiest", words.name(f))))
                                .orElse(steers),
                lastWeek,
                now,
                shakiest.orElse(Family.of(2, 2)),
                new Look(View.FAMILY, SelectionScope.FAMILY, false),
                false);
    }

    @Override
    public PageResult returned(Instant at) {
        return PageResult.of(with(steers.say("")), steers.say("").renew(at));
    }

    @Override
    public Words words() {
        return steers.words();
    }

    @Override
    public void draw(Picture picture) {
        new StairsPicture(picture, words(), Grid.of(steers.progress(), now), lastWeek, look, chosen)
                .draw(title(), steers);
        Footer.say(picture, Footer.draw(picture, keys(true)), line());
    }

    private String line() {
        return askReset ? words().say("grid.reset", scopeName()) : steers.message();
    }

    @Override
    public String keys() {
        return String.join("   ", keys(false));
    }

    /** With those that change nothing but the picture, or without. */
    private List<String> keys(boolean drawn) {
        List<String> keys = new ArrayList<>(List.of(words().say("grid.foot").split("   ")));
        if (drawn) {
            keys.add("v " + words().say(look.view().next().key()));
        }
        keys.add("t " + words().say(look.reach().next().key()));
        if (drawn) {
            keys.add(words().say(look.letters() ? "grid.stones" : "grid.letters"));
        }
        keys.add(words().say("grid.open", chosen.high()));
        keys.add(words().say("grid.close"));
        keys.add(words().say("grid.note", chosen.high()));
        keys.add(words().say("grid.year"));
        return keys;
    }

    @Override
    public List<String> said() {
        Grid grid = Grid.of(steers.progress(), now);
        List<String> said = new ArrayList<>(List.of(line()));
        if (look.reach() != SelectionScope.FAMILY) {
            said.add(title());
        }
        said.add(words().say(
                        "spoken.chosen",
                        GridText.family(
                                words(), grid.cell(chosen), steers.stones().highest(chosen))));
        said.addAll(GridText.said(
                words(),
                steers.child().name(),
                grid,
                lastWeek,
                steers.stones(),
                ActionWords.inForce(words(), steers.progress())));
        return said;
    }

    /** While the keys act on more than one family the title says so, whatever else is told. */
    private String title() {
        String name = steers.child().name();
        return look.reach() == SelectionScope.FAMILY
                ? words().say(
                                "grid.title",
                                name,
                                words().say(look.view().key()),
                                steers.progress().families(Mastery.FLUENT))
                : words().say("grid.title.whole", name, scopeName());
    }

    @Override
    public PageResult pressed(PageEvent.Pressed key) {
        if (askReset) {
            return confirmed(key);
        }
        return switch (key.key().kind()) {
            case ESCAPE -> PageResult.of(this, PageEffect.BACK);
            case ENTER -> PageResult.of(this, new FamilyPage.Open(words(), steers.child(), chosen, key.at()));
            case UP -> moved(0, -1);
            case DOWN -> moved(0, 1);
            case LEFT -> moved(-1, 0);
            case RIGHT -> moved(1, 0);
            default -> letter(key.key(), key.at());
        };
    }

    private PageResult confirmed(PageEvent.Pressed key) {
        return key.key().is(words().say("key.yes").charAt(0))
                ? PageResult.of(asking(false), steers.reset(scope(), scopeName(), key.at()))
                : PageResult.of(asking(false).with(steers.say(words().say("family.unchanged"))));
    }

    private PageResult letter(Key key, Instant at) {
        if (key.is('?')) {
            return PageResult.of(this, new PageEffect.Open(GuidePage.of(words())));
        } else if (key.is('m')) {
            return PageResult.of(this, new PageEffect.Open(MorePage.of(words(), steers.child())));
        } else if (key.is('y')) {
            return PageResult.of(this, new YearPage.Open(words(), steers.child(), at));
        } else if (key.is('n')) {
            return PageResult.of(this, new PageEffect.Open(NotePage.of(words(), chosen.high())));
        } else if (key.is('p')) {
            return PageResult.of(this, open(OpenPage.What.PLAN, at));
        } else if (key.is('w')) {
            return PageResult.of(this, open(OpenPage.What.AWAY, at));
        } else if (key.is('k')) {
            return PageResult.of(this, open(OpenPage.What.CALENDAR, at));
        } else if (key.is('s')) {
            return PageResult.of(this, open(OpenPage.What.SETTINGS, at));
        } else if (key.is('r')) {
            return PageResult.of(asking(true));
        } else if (key.is('t')) {
            return nextReach();
        } else if (key.is('l')) {
            return PageResult.of(with(new Look(look.view(), look.reach(), !look.letters())));
        } else if (key.is('v')) {
            return PageResult.of(with(new Look(look.view().next(), look.reach(), look.letters())));
        }
        return steered(key, at).map(effect -> PageResult.of(this, effect)).orElseGet(() -> PageResult.of(this));
    }

    private Optional<HomeEffect> steered(Key key, Instant at) {
        if (key.is('f')) {
            return Optional.of(steers.focus(scope(), scopeName(), at));
        } else if (key.is('h')) {
            return Optional.of(steers.hold(scope(), scopeName(), at));
        } else if (key.is('u')) {
            return Optional.of(steers.undo(at));
        } else if (key.is('o')) {
            return Optional.of(steers.open(chosen.high(), true, at));
        }
        return key.is('c') ? Optional.of(steers.open(chosen.high(), false, at)) : Optional.empty();
    }

    private HomeEffect open(OpenPage.What what, Instant at) {
        return new OpenPage(what, words(), steers.child(), at);
    }

    @Override
    public PageResult done(PageEffect.Outcome outcome, Instant at) {
        return outcome instanceof HomeEffect.Made
                ? KeyPage.super.done(outcome, at)
                : PageResult.of(new GridPage(steers.after(outcome), lastWeek, at, chosen, look, askReset));
    }

    private PageResult nextReach() {
        GridPage next = with(new Look(look.view(), look.reach().next(), look.letters()));
        String line = next.look.reach() == SelectionScope.FAMILY ? "" : words().say("grid.whole", next.scopeName());
        return PageResult.of(next.with(steers.say(line)));
    }

    private GridPage with(SteeringKeys next) {
        return new GridPage(next, lastWeek, now, chosen, look, askReset);
    }

    private GridPage with(Look next) {
        return new GridPage(steers, lastWeek, now, chosen, next, askReset);
    }

    private GridPage asking(boolean asks) {
        return new GridPage(steers, lastWeek, now, chosen, look, asks);
    }

    private List<Family> scope() {
        return look.reach().families(chosen);
    }

    private String scopeName() {
        return switch (look.reach()) {
            case FAMILY -> words().name(chosen);
            case TABLE -> words().say("grid.thetable", chosen.high());
            case ALL -> words().say("grid.allfamilies");
        };
    }

    private PageResult moved(int columns, int rows) {
        int high = Math.max(1, Math.min(Families.LARGEST_FACTOR, chosen.high() + rows));
        int low = Math.max(1, Math.min(high, chosen.low() + columns));
        return PageResult.of(new GridPage(steers.say(""), lastWeek, now, new Family(low, high), look, askReset));
    }
}
