package fourfold.screens.parent;

import fourfold.home.Gate;
import fourfold.log.RecordsFailure;
import fourfold.screens.PageContext;
import fourfold.terminal.Footer;
import fourfold.terminal.Ink;
import fourfold.terminal.Key;
import fourfold.terminal.Navigation;
import fourfold.terminal.Page;
import fourfold.terminal.MutablePage;
import fourfold.terminal.Picture;
import fourfold.terminal.Wrapping;
import fourfold.words.Words;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.function.Supplier;

/** Asks for the grown-ups' PIN before it lets the next page open. */
public final class GatePage implements MutablePage {
    private static final int LONGEST = 8;

    private final Words words;
    private final Gate gate;
    private final Supplier<Page> behind;
    private final StringBuilder pin = new StringBuilder();
    private String told = "";

    private GatePage(PageContext context, Supplier<Page> behind) {
        this.words = context.words();
        this.gate = context.home().gate();
        this.behind = behind;
    }

    /** The page itself if there is no gate, else the gate before it. */
    public static Page before(PageContext context, Supplier<Page> behind) {
        return context.home().gate().isSet() ? new GatePage(context, behind) : behind.get();
    }

    @Override
    public void draw(Picture picture) {
        int y = picture.height() / 2 - 4;
        picture.centred(y, words.say("gate.title"), Ink.STRONG);
        picture.centred(y + 2, words.say("gate.type"), Ink.PLAIN);
        picture.centred(y + 4, "•".repeat(pin.length()) + "_", Ink.STRONG);
        for (String line : Wrapping.lines(told, picture.width() - 4)) {
            picture.centred(y++ + 6, line, Ink.PLAIN);
        }
        Footer.draw(picture, List.of(words.say("gate.foot").split("   ")));
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
            case ENTER -> {
                return tried(at);
            }
            default -> {
                return Navigation.STAY;
            }
        }
        return Navigation.STAY;
    }

    private Navigation tried(Instant at) {
        String typed = pin.toString();
        pin.setLength(0);
        try {
            if (gate.opens(typed, at)) {
                return new Navigation.Replace(behind.get());
            }
            Duration wait = gate.wait(at);
            told = wait.isZero()
                    ? words.say("gate.wrong")
                    : words.say("gate.wait", wait.plusMillis(999).toSeconds());
        } catch (RecordsFailure e) {
            told = words.failure(e);
        }
        return Navigation.STAY;
    }
}
