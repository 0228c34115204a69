// SPDX-License-Identifier: Apache-2.0
package fourfold.screens.child;

import fourfold.facts.Family;
import fourfold.home.Home;
import fourfold.home.KnownChild;
import fourfold.home.PracticeRecords;
import fourfold.log.Child;
import fourfold.log.RecordsFailure;
import fourfold.screens.HomeEffect;
import fourfold.screens.KeyPage;
import fourfold.screens.TallDigits;
import fourfold.screens.parent.CarePage;
import fourfold.screens.parent.GuidePage;
import fourfold.screens.parent.OpenParents;
import fourfold.terminal.Ink;
import fourfold.terminal.Key;
import fourfold.terminal.Menu;
import fourfold.terminal.Page;
import fourfold.terminal.PageEffect;
import fourfold.terminal.PageEvent;
import fourfold.terminal.PageResult;
import fourfold.terminal.Picture;
import fourfold.terminal.Wrapping;
import fourfold.words.TodayWords;
import fourfold.words.Words;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The first page: who wants to practise?
 *
 * @param children who practises here
 * @param today what today holds for each of them, for the parent; empty where the records can't be read
 * @param known whether there is any child, those put away among them
 */
public record HomePage(
        PageContext context, List<Child> children, List<String> today, boolean known, Menu menu, String trouble)
        implements KeyPage {
    public HomePage {
        children = List.copyOf(children);
        today = List.copyOf(today);
    }

    private static HomePage of(PageContext context, List<Child> children, List<String> today, boolean known) {
        Words words = context.words();
        List<String> lines = new ArrayList<>();
        for (Child child : children) {
            lines.add(child.name());
        }
        lines.add(words.say("home.add"));
        lines.add(words.say(known ? "home.parents" : "home.bring"));
        lines.add(words.say("home.leave"));
        return new HomePage(context, children, today, known, new Menu(lines), "");
    }

    /** Reads who practises here, and makes the page. */
    public record Open(PageContext context) implements HomeEffect {
        @Override
        public Outcome perform(Home home) {
            List<KnownChild> all = home.children().all();
            List<Child> children = new ArrayList<>();
            List<String> today = new ArrayList<>();
            for (KnownChild known : all) {
                if (!known.away()) {
                    children.add(known.child());
                    today.add(today(home.records(), known.child(), context.words()));
                }
            }
            return new Made(of(context, children, today, !all.isEmpty()));
        }

        /** Who can't be read is asked for all the same: the page that follows says why it can't go on. */
        private static String today(PracticeRecords records, Child child, Words words) {
            try {
                return child.name() + ". " + TodayWords.forParent(words, records.today(child, records.today()));
            } catch (RecordsFailure e) {
                return "";
            }
        }

        /** The page a program begins with; with nobody on it, and why, if the records can't be read. */
        public Page first(Home home) {
            try {
                return ((Made) perform(home)).page();
            } catch (RecordsFailure e) {
                return of(context, List.of(), List.of(), false)
                        .with(context.words().failure(e));
            }
        }
    }

    private HomePage with(String line) {
        return new HomePage(context, children, today, known, menu, line);
    }

    @Override
    public void draw(Picture picture) {
        boolean roomy = TallDigits.isRoomy(picture);
        int top = Math.max(1, picture.height() / 2 - (roomy ? 13 : 7));
        picture.centred(top, "F O U R F O L D", Ink.STRONG);
        if (roomy) {
            int step = TallDigits.SMALL.height() + 1;
            picture.centredBlock(top + 3, TallDigits.SMALL.rows(fact(0), picture), Ink.QUIET);
            picture.centredBlock(top + 3 + step, TallDigits.SMALL.rows(fact(3), picture), Ink.QUIET);
            top += 2 * step + 1;
        } else {
            picture.centred(top + 1, fact(0) + "   ↔   " + fact(3), Ink.QUIET);
        }
        picture.centred(top + 3, context.words().say(children.isEmpty() ? "home.welcome" : "home.who"), Ink.PLAIN);
        menu.draw(picture, top + 5);
        if (trouble.isEmpty() && menu.chosen() < today.size()) {
            List<String> lines = Wrapping.lines(today.get(menu.chosen()), picture.width() - 4);
            for (int i = 0; i < lines.size() && i < 2; i++) {
                picture.centred(picture.height() - 3 + i, lines.get(i), Ink.QUIET);
            }
        }
        picture.centred(picture.height() - 2, trouble, Ink.STRONG);
        picture.centred(picture.height() - 1, context.words().say("home.foot"), Ink.QUIET);
    }

    private String fact(int place) {
        return context.words().fact(Family.of(7, 8).facts().get(place));
    }

    @Override
    public PageResult pressed(PageEvent.Pressed key) {
        if (key.key().kind() == Key.Kind.ESCAPE) {
            return PageResult.of(this, PageEffect.LEAVE);
        }
        if (key.key().is('?')) {
            return PageResult.of(this, new PageEffect.Open(GuidePage.of(context.words())));
        }
        Menu next = menu.on(key.key());
        HomePage page = new HomePage(context, children, today, known, next, trouble);
        return next.picked() ? PageResult.of(page, chosen(next.chosen(), key.at())) : PageResult.of(page);
    }

    private PageEffect chosen(int line, Instant at) {
        if (line < children.size()) {
            return new MinutesPage.Open(context, children.get(line), at);
        }
        if (line == children.size()) {
            return new PageEffect.Open(new NamePage(context.words(), "", ""));
        }
        if (line > children.size() + 1) {
            return PageEffect.LEAVE;
        }
        return known ? new OpenParents(context.words(), at) : new CarePage.Open(context.words(), true);
    }

    @Override
    public PageResult done(PageEffect.Outcome outcome, Instant at) {
        return outcome instanceof HomeEffect.Made made && made.page() instanceof HomePage renewed
                ? PageResult.of(marked().map(renewed::marking).orElse(renewed))
                : KeyPage.super.done(outcome, at);
    }

    private Optional<Child> marked() {
        return Optional.of(menu.chosen()).filter(line -> line < children.size()).map(children::get);
    }

    /** With a child's line marked, if the child is still there: whoever has practised is not taken for another. */
    private HomePage marking(Child child) {
        for (int line = 0; line < children.size(); line++) {
            if (children.get(line).id().equals(child.id())) {
                Menu marked = new Menu(menu.lines(), line, false);
                return new HomePage(context, children, today, known, marked, trouble);
            }
        }
        return this;
    }

    @Override
    public Page failed(RecordsFailure failure) {
        return with(context.words().failure(failure));
    }

    @Override
    public PageResult returned(Instant at) {
        return PageResult.of(with(""), new Open(context));
    }
}
