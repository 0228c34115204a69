package fourfold.screens.parent;

import fourfold.home.Gate;
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

/** Sets, changes or takes away the grown-ups' PIN, and says what it is good for. */
final class GateSettingPage implements MutablePage {
    private static final int LONGEST = 8;
    private static final int SHORTEST = 4;

    private final Words words;
    private final Gate gate;
    private final StringBuilder pin = new StringBuilder();
    private String first = "";
    private String told = "";
    private boolean isSet;

    GateSettingPage(PageContext context) {
        this.words = context.words();
        this.gate = context.home().gate();
        this.isSet = gate.isSet();
    }

    @Override
    public void draw(Picture picture) {
        picture.centred(1, words.say("gate.set.title"), Ink.STRONG);
        int width = Math.min(66, picture.width() - 4);
        int x = (picture.width() - width) / 2;
        int y = 3;
        for (String text : List.of(words.say("gate.honest"), words.say("gate.forgotten"))) {
            for (String line : Wrapping.lines(text, width)) {
                picture.text(x, y++, line, Ink.PLAIN);
            }
        }
        picture.centred(y + 1, words.say(isSet ? "gate.isset" : "gate.unset"), Ink.STRONG);
        picture.centred(y + 3, words.say(first.isEmpty() ? "gate.new" : "gate.again"), Ink.PLAIN);
        picture.centred(y + 4, "•".repeat(pin.length()) + "_", Ink.STRONG);
        picture.centred(y + 6, told, Ink.PLAIN);
        Footer.draw(
                picture,
                List.of(words.say(isSet ? "gate.set.foot.off" : "gate.set.foot").split("   ")));
    }

    @Override
    public Navigation on(Key key, Instant at) {
        switch (key.kind()) {
            case ESCAPE -> {
                return Navigation.BACK;
            }
            case DIGIT -> {
                if (pin.length() < LONGEST) {
                    pin.append(key.digit());
                }
            }
            case ERASE -> pin.setLength(Math.max(0, pin.length() - 1));
            case ENTER -> typed(at);
            default -> {
                if (key.is('x') && isSet) {
                    remove();
                }
            }
        }
        return Navigation.STAY;
    }

    private void remove() {
        try {
            gate.remove();
            isSet = false;
            told = words.say("gate.removed");
        } catch (RecordsFailure e) {
            told = words.failure(e);
        }
    }

    private void typed(Instant at) {
        String now = pin.toString();
        pin.setLength(0);
        if (now.length() < SHORTEST) {
            told = words.say("gate.short");
        } else if (first.isEmpty()) {
            first = now;
            told = "";
        } else if (!first.equals(now)) {
            first = "";
            told = words.say("gate.differ");
        } else {
            first = "";
            try {
                gate.set(now, at);
                isSet = true;
                told = words.say("gate.kept");
            } catch (RecordsFailure e) {
                told = words.failure(e);
            }
        }
    }
}
