// SPDX-License-Identifier: Apache-2.0
package fourfold.screens.parent;

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
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/** Sets, changes or takes away the grown-ups' PIN, and says what it is good for. */
record GateSettingPage(Words words, boolean isSet, String pin, String first, String message) implements KeyPage {
    private static final int LONGEST = 8;
    private static final int SHORTEST = 4;

    GateSettingPage(Words words, boolean isSet) {
        this(words, isSet, "", "", "");
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
        picture.centred(y + 6, message, Ink.PLAIN);
        Footer.draw(
                picture,
                List.of(words.say(isSet ? "gate.set.foot.off" : "gate.set.foot").split("   ")));
    }

    @Override
    public PageResult pressed(PageEvent.Pressed key) {
        if (key.key().isDigits() || key.key().kind() == Key.Kind.ERASE) {
            return with(key.key().typedAfter(pin, LONGEST), first, message);
        }
        return switch (key.key().kind()) {
            case ESCAPE -> PageResult.of(this, PageEffect.BACK);
            case ENTER -> typed(key.at());
            default ->
                key.key().is('x') && isSet
                        ? PageResult.of(this, new Keep(Optional.empty(), key.at()))
                        : PageResult.of(this);
        };
    }

    private PageResult with(String nextPin, String nextFirst, String line) {
        return PageResult.of(new GateSettingPage(words, isSet, nextPin, nextFirst, line));
    }

    private PageResult typed(Instant at) {
        if (pin.length() < SHORTEST) {
            return with("", first, words.say("gate.short"));
        }
        if (first.isEmpty()) {
            return with("", pin, "");
        }
        if (!first.equals(pin)) {
            return with("", "", words.say("gate.differ"));
        }
        return PageResult.of(new GateSettingPage(words, isSet, "", "", message), new Keep(Optional.of(pin), at));
    }

    @Override
    public PageResult done(PageEffect.Outcome outcome, Instant at) {
        if (outcome instanceof HomeEffect.Failed failed) {
            return with(pin, first, words.failure(failed.failure()));
        }
        boolean set = outcome.equals(new NowSet(true));
        return PageResult.of(
                new GateSettingPage(words, set, pin, first, words.say(set ? "gate.kept" : "gate.removed")));
    }

    /** Sets a PIN, or takes it away. */
    record Keep(Optional<String> pin, Instant at) implements HomeEffect {
        @Override
        public Outcome perform(Home home) {
            pin.ifPresentOrElse(p -> home.gate().set(p, at), home.gate()::remove);
            return new NowSet(pin.isPresent());
        }

        @Override
        public String toString() {
            return "Keep";
        }
    }

    /** Whether a PIN is set now. */
    private record NowSet(boolean set) implements PageEffect.Outcome {}
}
