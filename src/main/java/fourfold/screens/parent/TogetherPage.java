// SPDX-License-Identifier: Apache-2.0
package fourfold.screens.parent;

import fourfold.home.Home;
import fourfold.home.TwoComputers;
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
import fourfold.upkeep.SharedFolder;
import fourfold.words.Words;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;

/** Where two computers of the household meet: which folder, and who was there when. */
record TogetherPage(Words words, ZoneId zone, TwoComputers.State state, Optional<String> typed, String message)
        implements KeyPage {
    private static final int LONGEST = 300;

    @Override
    public void draw(Picture picture) {
        int y = picture.height() >= 22 ? 1 : 0;
        picture.centred(y, words.say("together.title"), Ink.STRONG);
        y += 2;
        String what = state.folder().map(f -> words.say("together.in", f)).orElseGet(() -> words.say("together.none"));
        for (String line : Wrapping.lines(what + " " + words.say("together.how"), Math.min(70, picture.width() - 2))) {
            picture.centred(y++, line, Ink.PLAIN);
        }
        y++;
        if (typed.isPresent()) {
            picture.centred(y++, words.say("together.type"), Ink.PLAIN);
            for (String line : Wrapping.lines(typed.get() + "_", picture.width() - 4)) {
                picture.centred(y++, line, Ink.STRONG);
            }
        } else {
            for (SharedFolder.Laid laid :
                    state.there().subList(0, Math.min(6, state.there().size()))) {
                picture.centred(y++, line(laid), Ink.PLAIN);
            }
        }
        int above = Footer.draw(picture, List.of(words.say(foot()).split("   ")));
        List<String> lines = Wrapping.lines(message, picture.width() - 4);
        for (int i = 0; i < lines.size(); i++) {
            picture.centred(above - lines.size() + i, lines.get(i), Ink.STRONG);
        }
    }

    private String line(SharedFolder.Laid laid) {
        String own = laid.computer().equals(state.own()) ? "   " + words.say("together.own") : "";
        return laid.computer() + "   " + words.date(LocalDate.ofInstant(laid.at(), zone)) + own;
    }

    private String foot() {
        if (typed.isPresent()) {
            return "together.foot.typing";
        }
        return state.folder().isPresent() ? "together.foot" : "together.foot.none";
    }

    @Override
    public PageResult pressed(PageEvent.Pressed key) {
        return typed.isPresent() ? types(key, typed.get()) : chooses(key);
    }

    private PageResult chooses(PageEvent.Pressed key) {
        Key.Kind kind = key.key().kind();
        if (kind == Key.Kind.ESCAPE) {
            return PageResult.of(this, PageEffect.BACK);
        }
        if (key.key().is('n')) {
            return PageResult.of(with(Optional.of(""), ""));
        }
        boolean any = state.folder().isPresent();
        return any && key.key().is('x') ? PageResult.of(this, new Stop(words)) : PageResult.of(this);
    }

    private PageResult types(PageEvent.Pressed key, String text) {
        return switch (key.key().kind()) {
            case ESCAPE -> PageResult.of(with(Optional.empty(), words.say("family.unchanged")));
            case ENTER -> PageResult.of(with(Optional.empty(), ""), new SetUp(words, text, key.at()));
            default -> PageResult.of(with(Optional.of(key.key().typedAfter(text, LONGEST)), message));
        };
    }

    private TogetherPage with(Optional<String> text, String line) {
        return new TogetherPage(words, zone, state, text, line);
    }

    @Override
    public PageResult done(PageEffect.Outcome outcome, Instant at) {
        if (outcome instanceof Changed changed) {
            return PageResult.of(new TogetherPage(words, zone, changed.state(), Optional.empty(), changed.message()));
        }
        return outcome instanceof HomeEffect.Failed failed
                ? PageResult.of(with(Optional.empty(), words.failure(failed.failure())))
                : PageResult.of(this);
    }

    /** How it stands now. */
    private record Changed(TwoComputers.State state, String message) implements PageEffect.Outcome {}

    /** Meets the others in a folder from now on. */
    record SetUp(Words words, String folder, Instant at) implements HomeEffect {
        @Override
        public Outcome perform(Home home) {
            List<TwoComputers.Report> reports =
                    home.together().setUp(Home.path(folder.strip()), home.computerName(), at);
            String passed = reports.stream()
                    .flatMap(r -> r.failure().stream())
                    .map(words::failure)
                    .findFirst()
                    .orElseGet(() -> words.say("together.done"));
            return new Changed(home.together().state(), passed);
        }
    }

    /** Meets nobody any more. */
    record Stop(Words words) implements HomeEffect {
        @Override
        public Outcome perform(Home home) {
            home.together().stop();
            return new Changed(home.together().state(), words.say("together.stopped"));
        }
    }
}
