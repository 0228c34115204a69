package fourfold.screens.parent;

import fourfold.home.ChildRegister;
import fourfold.home.KnownChild;
import fourfold.log.Child;
import fourfold.log.ChildName;
import fourfold.log.RecordsFailure;
import fourfold.screens.PageContext;
import fourfold.terminal.Footer;
import fourfold.terminal.Ink;
import fourfold.terminal.Key;
import fourfold.terminal.Navigation;
import fourfold.terminal.MutablePage;
import fourfold.terminal.Picture;
import fourfold.terminal.Wrapping;
import fourfold.words.Words;
import java.time.Instant;
import java.util.List;

/** All children: rename, put away, bring back, remove. */
public final class ChildrenPage implements MutablePage {
    private enum Asking {
        NOTHING,
        NEW_NAME,
        NAME_TO_REMOVE
    }

    private final PageContext context;
    private final Words words;
    private final StringBuilder typed = new StringBuilder();
    private List<KnownChild> children = List.of();
    private int chosen;
    private Asking asking = Asking.NOTHING;
    private String told = "";
    /** Whether the pages behind this one may be about a child who is gone or called otherwise. */
    private boolean changed;

    public ChildrenPage(PageContext context) {
        this.context = context;
        this.words = context.words();
        renew();
    }

    private void renew() {
        children = context.home().children().all();
        chosen = Math.max(0, Math.min(chosen, children.size() - 1));
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
            String line = (i == chosen ? "▸ " : "  ")
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
        picture.centred(above - 1, told, Ink.STRONG);
    }

    @Override
    public Navigation on(Key key, Instant at) {
        try {
            return asking == Asking.NOTHING ? chooses(key, at) : types(key, at);
        } catch (RecordsFailure e) {
            told = words.failure(e);
            return Navigation.STAY;
        } catch (IllegalArgumentException e) {
            told = String.valueOf(e.getMessage());
            return Navigation.STAY;
        }
    }

    private Navigation chooses(Key key, Instant at) {
        switch (key.kind()) {
            case UP -> chosen = Math.max(0, chosen - 1);
            case DOWN -> chosen = Math.min(children.size() - 1, chosen + 1);
            case ESCAPE -> {
                return changed ? Navigation.HOME : Navigation.BACK;
            }
            default -> letter(key, at);
        }
        return Navigation.STAY;
    }

    private void letter(Key key, Instant at) {
        if (children.isEmpty()) {
            return;
        }
        KnownChild known = children.get(chosen);
        if (key.is('n')) {
            ask(Asking.NEW_NAME);
        } else if (key.is('x')) {
            ask(Asking.NAME_TO_REMOVE);
        } else if (key.is('p')) {
            if (known.away()) {
                context.home().children().bringBack(known.child(), at);
            } else {
                context.home().children().putAway(known.child(), at);
            }
            changed = true;
            told = words.say(
                    known.away() ? "children.isback" : "children.isaway",
                    known.child().name());
            renew();
        }
    }

    private void ask(Asking what) {
        asking = what;
        typed.setLength(0);
        told = "";
    }

    private Navigation types(Key key, Instant at) {
        switch (key.kind()) {
            case ESCAPE -> {
                asking = Asking.NOTHING;
                told = words.say("family.unchanged");
            }
            case ENTER -> done(at);
            case ERASE -> {
                if (typed.length() > 0) {
                    typed.setLength(typed.offsetByCodePoints(typed.length(), -1));
                }
            }
            case LETTER, DIGIT -> {
                if (typed.codePointCount(0, typed.length()) < ChildName.LONGEST) {
                    typed.append(key.letter());
                }
            }
            default -> {
                return Navigation.STAY;
            }
        }
        return Navigation.STAY;
    }

    private void done(Instant at) {
        Child child = children.get(chosen).child();
        Asking asked = asking;
        asking = Asking.NOTHING;
        if (asked == Asking.NEW_NAME) {
            context.home().children().rename(child, typed.toString(), at);
            changed = true;
            told = words.say("children.renamed");
        } else if (typed.toString().equals(child.name())) {
            ChildRegister.Removal removal = context.home().children().remove(child, at);
            changed = removal.done();
            told = removal.done()
                    ? removal.backup()
                            .map(b -> words.say("children.removed", child.name(), b))
                            .orElseGet(() -> words.say("children.removed.only", child.name()))
                    : words.say("drill.elsewhere", child.name());
        } else {
            told = words.say("children.notremoved", child.name());
        }
        renew();
    }
}
