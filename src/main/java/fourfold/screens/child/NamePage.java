package fourfold.screens.child;

import fourfold.log.ChildName;
import fourfold.log.RecordsFailure;
import fourfold.screens.PageContext;
import fourfold.terminal.Ink;
import fourfold.terminal.Key;
import fourfold.terminal.Navigation;
import fourfold.terminal.MutablePage;
import fourfold.terminal.Picture;
import java.time.Instant;

/** A new child's name is typed here. */
final class NamePage implements MutablePage {
    private final PageContext context;
    private final StringBuilder name = new StringBuilder();
    private String trouble = "";

    NamePage(PageContext context) {
        this.context = context;
    }

    @Override
    public void draw(Picture picture) {
        int y = picture.height() / 2 - 3;
        picture.centred(y, context.words().say("name.question"), Ink.PLAIN);
        picture.centred(y + 2, name + "_", Ink.STRONG);
        picture.centred(y + 4, trouble, Ink.PLAIN);
        picture.centred(picture.height() - 1, context.words().say("name.foot"), Ink.QUIET);
    }

    @Override
    public Navigation on(Key key, Instant at) {
        trouble = "";
        switch (key.kind()) {
            case ESCAPE -> {
                return Navigation.BACK;
            }
            case ENTER -> {
                return keep(at);
            }
            case ERASE -> {
                if (name.length() > 0) {
                    name.setLength(name.offsetByCodePoints(name.length(), -1));
                }
            }
            case LETTER, DIGIT -> {
                if (name.codePointCount(0, name.length()) < ChildName.LONGEST) {
                    name.append(key.letter());
                }
            }
            default -> {
                return Navigation.STAY;
            }
        }
        return Navigation.STAY;
    }

    private Navigation keep(Instant at) {
        try {
            context.home().children().add(name.toString(), at);
            return Navigation.BACK;
        } catch (RecordsFailure e) {
            trouble = context.words().failure(e);
            return Navigation.STAY;
        } catch (IllegalArgumentException e) {
            trouble = String.valueOf(e.getMessage());
            return Navigation.STAY;
        }
    }
}
