// SPDX-License-Identifier: Apache-2.0
package fourfold.screens.parent;

import fourfold.home.ChildRegister;
import fourfold.home.Home;
import fourfold.home.KnownChild;
import fourfold.log.Child;
import fourfold.log.ChildName;
import fourfold.log.InvalidValue;
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
import java.util.List;

/**
 * All children: rename, put away, bring back, remove.
 *
 * @param changed whether the pages behind this one may be about a child who is gone or called otherwise
 */
record ChildrenPage(
        Words words,
        List<KnownChild> children,
        int chosen,
        Asking asking,
        String typed,
        String message,
        boolean changed)
        implements KeyPage {
    /** What is typed. */
    enum Asking {
        NOTHING,
        NEW_NAME,
        NAME_TO_REMOVE
    }

    /** All children, the first one chosen. */
    ChildrenPage(Words words, List<KnownChild> children) {
        this(words, children, 0, Asking.NOTHING, "", "", false);
    }

    @Override
    public void draw(Picture picture) {
        picture.centred(1, words.say("children.title"), Ink.STRONG);
        int x = Math.max(1, (picture.width() - 40) / 2);
        int y = 3;
        int room = Math.max(1, picture.height() - 11);
        int first = Math.max(0, Math.min(chosen - room / 2, children.size() - room));
        for (int i = first; i < Math.min(children.size(), first + room); i++) {
            KnownChild known = children.get(i);
            String line = (i == chosen ? "► " : "  ")
                    + known.child().name()
                    + (known.away() ? "   " + words.say("children.away") : "");
            picture.text(x, y++, line, i == chosen ? Ink.STRONG : Ink.PLAIN);
        }
        y++;
        if (asking != Asking.NOTHING) {
            String question = words.say(
                    asking == Asking.NEW_NAME ? "children.newname" : "children.remove",
                    children.get(chosen).child().name());
            for (String line : Wrapping.lines(question, Math.min(70, picture.width() - 2))) {
                picture.centred(y++, line, Ink.PLAIN);
            }
            picture.centred(y + 1, typed + "_", Ink.STRONG);
        }
        int above = Footer.draw(
                picture,
                List.of(words.say(asking == Asking.NOTHING ? "children.foot" : "children.foot.typing")
                        .split("   ")));
        Footer.say(picture, above, message);
    }

    @Override
    public PageResult pressed(PageEvent.Pressed key) {
        return asking == Asking.NOTHING ? chooses(key) : types(key);
    }

    private PageResult chooses(PageEvent.Pressed key) {
        return switch (key.key().kind()) {
            case UP -> chosen(Math.max(0, chosen - 1));
            case DOWN -> chosen(Math.min(children.size() - 1, chosen + 1));
            case ESCAPE -> PageResult.of(this, changed ? PageEffect.FIRST : PageEffect.BACK);
            default -> children.isEmpty() ? PageResult.of(this) : letter(key.key(), key.at());
        };
    }

    private PageResult chosen(int line) {
        return PageResult.of(new ChildrenPage(words, children, line, asking, typed, message, changed));
    }

    private PageResult letter(Key key, Instant at) {
        if (key.is('n')) {
            return PageResult.of(asks(Asking.NEW_NAME, "", ""));
        }
        if (key.is('x')) {
            return PageResult.of(asks(Asking.NAME_TO_REMOVE, "", ""));
        }
        return key.is('p') ? PageResult.of(this, new PutAway(words, children.get(chosen), at)) : PageResult.of(this);
    }

    private ChildrenPage asks(Asking what, String text, String line) {
        return new ChildrenPage(words, children, chosen, what, text, line, changed);
    }

    private PageResult types(PageEvent.Pressed key) {
        return switch (key.key().kind()) {
            case ESCAPE -> PageResult.of(asks(Asking.NOTHING, typed, words.say("family.unchanged")));
            case ENTER -> entered(children.get(chosen).child(), key.at());
            default -> PageResult.of(asks(asking, key.key().typedAfter(typed, ChildName.LONGEST), message));
        };
    }

    private PageResult entered(Child child, Instant at) {
        ChildrenPage idle = asks(Asking.NOTHING, typed, message);
        if (asking == Asking.NEW_NAME) {
            try {
                ChildName.chosen(typed);
                return PageResult.of(idle, new Rename(words, child, typed, at));
            } catch (InvalidValue e) {
                return PageResult.of(asks(Asking.NOTHING, typed, words.problem(e.problem())));
            }
        }
        return typed.equals(child.name())
                ? PageResult.of(idle, new Remove(words, child, at))
                : PageResult.of(asks(Asking.NOTHING, typed, words.say("children.notremoved", child.name())));
    }

    @Override
    public PageResult done(PageEffect.Outcome outcome, Instant at) {
        if (outcome instanceof Changed now) {
            int line = Math.max(0, Math.min(chosen, now.children().size() - 1));
            return PageResult.of(new ChildrenPage(
                    words, now.children(), line, asking, typed, now.message(), changed || now.changed()));
        }
        return outcome instanceof HomeEffect.Failed failed
                ? PageResult.of(asks(asking, typed, words.failure(failed.failure())))
                : PageResult.of(this);
    }

    /** The children as they are now. */
    private record Changed(List<KnownChild> children, boolean changed, String message) implements PageEffect.Outcome {}

    /** Puts a child away, or brings back one who is. */
    record PutAway(Words words, KnownChild known, Instant at) implements HomeEffect {
        @Override
        public Outcome perform(Home home) {
            if (known.away()) {
                home.children().bringBack(known.child(), at);
            } else {
                home.children().putAway(known.child(), at);
            }
            String message = known.away() ? "children.isback" : "children.isaway";
            return new Changed(
                    home.children().all(),
                    true,
                    words.say(message, known.child().name()));
        }
    }

    /** Gives a child another name. */
    record Rename(Words words, Child child, String name, Instant at) implements HomeEffect {
        @Override
        public Outcome perform(Home home) {
            home.children().rename(child, name, at);
            return new Changed(home.children().all(), true, words.say("children.renamed"));
        }
    }

    /** Removes a child for good. */
    record Remove(Words words, Child child, Instant at) implements HomeEffect {
        @Override
        public Outcome perform(Home home) {
            ChildRegister.Removal removal = home.children().remove(child, at);
            String removed = removal.backup()
                    .map(b -> words.say("children.removed", child.name(), b))
                    .orElseGet(() -> words.say("children.removed.only", child.name()));
            return new Changed(
                    home.children().all(),
                    removal.done(),
                    removal.done() ? removed : words.say("drill.elsewhere", child.name()));
        }
    }
}
