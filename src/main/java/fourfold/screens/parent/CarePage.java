// SPDX-License-Identifier: Apache-2.0
package fourfold.screens.parent;

import fourfold.home.RecordsCare;
import fourfold.log.RecordsFailure;
import fourfold.screens.HomeEffect;
import fourfold.screens.KeyPage;
import fourfold.terminal.Footer;
import fourfold.terminal.Ink;
import fourfold.terminal.Key;
import fourfold.terminal.Menu;
import fourfold.terminal.Page;
import fourfold.terminal.PageEffect;
import fourfold.terminal.PageEvent;
import fourfold.terminal.PageResult;
import fourfold.terminal.Picture;
import fourfold.terminal.Wrapping;
import fourfold.upkeep.Backup;
import fourfold.upkeep.RowCounts;
import fourfold.upkeep.RowCounts.Kind;
import fourfold.words.Words;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;

/** The care of the records: what there is, and all that can be done with it, one step after the other. */
public record CarePage(Words words, ZoneId zone, RecordsCare.State state, Step step, List<String> told)
        implements KeyPage {
    private static final int LONGEST = 300;

    /** What can be done. */
    enum Deed {
        BACKUP,
        CHECK,
        RESTORE,
        MERGE,
        MOVE,
        EXPORT;

        /** Its name in texts. */
        String key() {
            return "care." + name().toLowerCase(Locale.ROOT);
        }
    }

    /** What is asked just now. */
    sealed interface Step {
        /** What shall be done? */
        record What(Menu menu) implements Step {}

        /** To which backup? The last line is a file that is named. */
        record Which(Menu menu) implements Step {}

        /** The name of a file or folder. */
        record Name(Deed deed, String text) implements Step {}

        /** Shall it really be done? */
        record Sure(HomeEffect effect) implements Step {}

        /** Is a child of one name one child? */
        record SameChild(CareWork.Take take, String name) implements Step {}

        /** Only what is told. */
        record Shown() implements Step {}

        /** The home is closed; all begins anew. */
        record Anew() implements Step {}
    }

    /** The page as it opens. */
    static CarePage of(Words words, ZoneId zone, RecordsCare.State state) {
        return new CarePage(words, zone, state, what(words, 0), List.of());
    }

    /** Reads how the records are, and makes the page; where there are none yet, it asks where they are. */
    public record Open(Words words, boolean fresh) implements HomeEffect {
        @Override
        public Outcome perform(fourfold.home.Home home) {
            CarePage page = of(words, home.moments().zone(), home.care().state());
            return new Made(fresh ? page.asks(new Step.Name(Deed.RESTORE, "")) : page);
        }
    }

    public CarePage {
        told = List.copyOf(told);
    }

    /** So many rows of each kind, in words. */
    public static String counts(Words words, RowCounts counts) {
        List<String> all = List.of(
                words.counted("count.children", counts.of(Kind.CHILD), counts.of(Kind.CHILD)),
                words.counted("count.drills", counts.of(Kind.DRILL), counts.of(Kind.DRILL)),
                words.counted("count.answers", counts.of(Kind.ANSWER), counts.of(Kind.ANSWER)),
                words.counted("count.changes", counts.of(Kind.ACTION), counts.of(Kind.ACTION)));
        return String.join(", ", all);
    }

    private static Step what(Words words, int chosen) {
        List<String> lines =
                Stream.of(Deed.values()).map(d -> words.say(d.key())).toList();
        return new Step.What(new Menu(lines, chosen, false));
    }

    private CarePage asks(Step next, String... lines) {
        return new CarePage(words, zone, state, next, List.of(lines));
    }

    @Override
    public void draw(Picture picture) {
        int width = Math.min(74, picture.width() - 2);
        int y = picture.height() >= 22 ? 1 : 0;
        picture.centred(y, words.say("care.title"), Ink.STRONG);
        y += 2;
        for (String line : about()) {
            for (String part : Wrapping.lines(line, width)) {
                picture.centred(y++, part, Ink.PLAIN);
            }
        }
        y++;
        if (step instanceof Step.What what) {
            what.menu().draw(picture, y);
        } else if (step instanceof Step.Which which) {
            which.menu().draw(picture, y);
        } else if (step instanceof Step.Name name) {
            for (String part : Wrapping.lines(name.text() + "_", picture.width() - 4)) {
                picture.centred(y++, part, Ink.STRONG);
            }
        }
        int above = Footer.draw(picture, List.of(words.say(foot()).split("   ")));
        List<String> lines =
                told.stream().flatMap(l -> Wrapping.lines(l, width).stream()).toList();
        int room = Math.max(
                1, above - y - (isMenu() ? ((Step.What) step).menu().lines().size() : 0));
        List<String> shown = lines.subList(0, Math.min(lines.size(), room));
        for (int i = 0; i < shown.size(); i++) {
            picture.centred(above - shown.size() + i, shown.get(i), Ink.STRONG);
        }
    }

    private boolean isMenu() {
        return step instanceof Step.What;
    }

    /** What stands above what is asked. */
    private List<String> about() {
        if (step instanceof Step.What) {
            return state.file().isEmpty()
                    ? List.of(words.say("care.demo"))
                    : List.of(words.say("care.kept", state.file().get()), backups());
        }
        if (step instanceof Step.Which) {
            return List.of(words.say("care.which"));
        }
        return step instanceof Step.Name name ? List.of(words.say(name.deed().key() + ".name")) : List.of();
    }

    private String backups() {
        return state.whole()
                .map(b -> words.say(
                        "care.whole",
                        b.name(),
                        state.made()
                                .map(at -> words.date(LocalDate.ofInstant(at, zone)))
                                .orElse("?"),
                        state.folder()))
                .orElseGet(() -> words.say("care.none"));
    }

    private String foot() {
        if (step instanceof Step.Name || step instanceof Step.Shown) {
            return "care.foot.name";
        }
        if (step instanceof Step.Sure) {
            return "care.foot.sure";
        }
        if (step instanceof Step.SameChild) {
            return "care.foot.same";
        }
        return step instanceof Step.Anew ? "care.foot.anew" : "parent.foot";
    }

    @Override
    public PageResult pressed(PageEvent.Pressed key) {
        if (step instanceof Step.Anew) {
            return PageResult.of(this, PageEffect.LEAVE);
        }
        if (step instanceof Step.Shown) {
            return PageResult.of(asks(what(words, 0)));
        }
        if (key.key().kind() == Key.Kind.ESCAPE) {
            return step instanceof Step.What
                    ? PageResult.of(this, PageEffect.BACK)
                    : PageResult.of(asks(what(words, 0), words.say("family.unchanged")));
        }
        if (step instanceof Step.What what) {
            Menu next = what.menu().on(key.key());
            CarePage page = new CarePage(words, zone, state, new Step.What(next), told);
            return next.picked() ? begin(Deed.values()[next.chosen()], key.at()) : PageResult.of(page);
        }
        if (step instanceof Step.Which which) {
            return chooses(which.menu().on(key.key()));
        }
        if (step instanceof Step.Name name) {
            return types(name, key);
        }
        if (step instanceof Step.SameChild same) {
            return settles(same, key.key());
        }
        boolean sure = step instanceof Step.Sure && key.key().kind() == Key.Kind.ENTER;
        return sure ? PageResult.of(asks(what(words, 0)), ((Step.Sure) step).effect()) : PageResult.of(this);
    }

    private PageResult begin(Deed deed, Instant at) {
        CarePage idle = asks(what(words, deed.ordinal()));
        return switch (deed) {
            case BACKUP -> PageResult.of(idle, new CareWork.BackUp(words, LocalDate.ofInstant(at, zone), new SoFar()));
            case CHECK -> PageResult.of(idle, new CareWork.Check(words, new SoFar()));
            case RESTORE -> PageResult.of(asks(which()));
            case MOVE -> PageResult.of(asks(new Step.Name(deed, ""), words.say("care.move.then")));
            case MERGE, EXPORT -> PageResult.of(asks(new Step.Name(deed, "")));
        };
    }

    private Step which() {
        List<String> lines =
                new ArrayList<>(state.backups().stream().map(Backup::name).toList());
        lines.add(words.say("care.another"));
        return new Step.Which(new Menu(lines));
    }

    private PageResult chooses(Menu next) {
        if (!next.picked()) {
            return PageResult.of(asks(new Step.Which(next)));
        }
        return next.chosen() < state.backups().size()
                ? PageResult.of(
                        asks(new Step.Which(new Menu(next.lines(), next.chosen(), false))),
                        new CareWork.Compare(
                                words, state.backups().get(next.chosen()).file().toString(), new SoFar()))
                : PageResult.of(asks(new Step.Name(Deed.RESTORE, "")));
    }

    private PageResult types(Step.Name name, PageEvent.Pressed key) {
        if (key.key().kind() != Key.Kind.ENTER) {
            String text = key.key().typedAfter(name.text(), LONGEST);
            return PageResult.of(new CarePage(words, zone, state, new Step.Name(name.deed(), text), told));
        }
        String text = name.text().strip();
        return text.isEmpty() ? PageResult.of(this) : PageResult.of(this, effect(name.deed(), text, key.at()));
    }

    private HomeEffect effect(Deed deed, String text, Instant at) {
        return switch (deed) {
            case MERGE -> CareWork.Take.of(words, text, at);
            case MOVE -> new CareWork.CopyTo(words, text, new SoFar());
            case EXPORT -> new CareWork.WriteOut(words, text);
            default -> new CareWork.Compare(words, text, new SoFar());
        };
    }

    private PageResult settles(Step.SameChild same, Key key) {
        int digit = key.kind() == Key.Kind.DIGIT ? key.digit() : 0;
        return switch (digit) {
            case 1 -> PageResult.of(this, same.take().same(same.name()));
            case 2 -> PageResult.of(this, same.take().apart(same.name()));
            default -> PageResult.of(this);
        };
    }

    @Override
    public PageResult done(PageEffect.Outcome outcome, Instant at) {
        if (outcome instanceof CareWork.Told done) {
            Step next = done.next().orElseGet(() -> what(words, 0));
            RecordsCare.State now = done.state().orElse(state);
            return PageResult.of(new CarePage(words, zone, now, next, done.lines()));
        }
        return KeyPage.super.done(outcome, at);
    }

    @Override
    public Page failed(RecordsFailure failure) {
        return new CarePage(words, zone, state, step, List.of(words.failure(failure)));
    }
}
