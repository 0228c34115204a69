// SPDX-License-Identifier: Apache-2.0
package fourfold.screens.parent;

import fourfold.home.Gate;
import fourfold.home.Home;
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
import java.time.Duration;
import java.time.Instant;
import java.util.List;

/** Asks for the grown-ups' PIN before it lets the next page open. */
record GatePage(Words words, HomeEffect behind, String pin, String message) implements KeyPage {
    private static final int LONGEST = 8;

    GatePage(Words words, HomeEffect behind) {
        this(words, behind, "", "");
    }

    @Override
    public void draw(Picture picture) {
        int y = picture.height() / 2 - 4;
        picture.centred(y, words.say("gate.title"), Ink.STRONG);
        picture.centred(y + 2, words.say("gate.type"), Ink.PLAIN);
        picture.centred(y + 4, "•".repeat(pin.length()) + "_", Ink.STRONG);
        for (String line : Wrapping.lines(message, picture.width() - 4)) {
            picture.centred(y++ + 6, line, Ink.PLAIN);
        }
        Footer.draw(picture, List.of(words.say("gate.foot").split("   ")));
    }

    @Override
    public PageResult pressed(PageEvent.Pressed key) {
        if (key.key().isDigits() || key.key().kind() == Key.Kind.ERASE) {
            return PageResult.of(with(key.key().typedAfter(pin, LONGEST), message));
        }
        return switch (key.key().kind()) {
            case ESCAPE -> PageResult.of(this, PageEffect.BACK);
            case ENTER -> PageResult.of(with("", message), new Try(pin, key.at()));
            default -> PageResult.of(this);
        };
    }

    private GatePage with(String nextPin, String line) {
        return new GatePage(words, behind, nextPin, line);
    }

    @Override
    public PageResult done(PageEffect.Outcome outcome, Instant at) {
        if (outcome instanceof HomeEffect.Made made) {
            return PageResult.of(this, new PageEffect.Replace(made.page()));
        }
        if (outcome instanceof HomeEffect.Failed failed) {
            return PageResult.of(with(pin, words.failure(failed.failure())));
        }
        Tried tried = (Tried) outcome;
        if (tried.opens()) {
            return PageResult.of(this, behind);
        }
        if (!tried.possible()) {
            return PageResult.of(with(pin, words.say("gate.short")));
        }
        return PageResult.of(with(
                pin,
                tried.left().isZero()
                        ? words.say("gate.wrong")
                        : words.say("gate.wait", tried.left().plusMillis(999).toSeconds())));
    }

    /** Tries a PIN. */
    record Try(String pin, Instant at) implements HomeEffect {
        @Override
        public Outcome perform(Home home) {
            boolean opens = home.gate().opens(pin, at);
            return new Tried(
                    Gate.isPossible(pin),
                    opens,
                    opens ? Duration.ZERO : home.gate().wait(at));
        }

        @Override
        public String toString() {
            return "Try";
        }
    }

    /** Whether it could be a PIN, whether the gate opens, and if not, how long there is to wait before the next try. */
    private record Tried(boolean possible, boolean opens, Duration left) implements PageEffect.Outcome {}
}
