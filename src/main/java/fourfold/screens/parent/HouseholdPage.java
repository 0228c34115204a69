// SPDX-License-Identifier: Apache-2.0
package fourfold.screens.parent;

import fourfold.home.Home;
import fourfold.home.HouseholdSettings;
import fourfold.screens.HomeEffect;
import fourfold.screens.KeyPage;
import fourfold.terminal.Footer;
import fourfold.terminal.Ink;
import fourfold.terminal.Key;
import fourfold.terminal.PageEffect;
import fourfold.terminal.PageEvent;
import fourfold.terminal.PageResult;
import fourfold.terminal.Picture;
import fourfold.terminal.Theme;
import fourfold.terminal.Wrapping;
import fourfold.words.Languages;
import fourfold.words.Words;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * What is set for the whole household: language, colours, whether stones move at the end of a drill, whether a page that
 * was made is opened at once, and whether the parent's pages speak in sentences.
 *
 * @param values for each line the place of its value among those it can have
 */
record HouseholdPage(Words words, List<Integer> values, int chosen, String message) implements KeyPage {
    private static final int NAME = 22;

    HouseholdPage {
        values = List.copyOf(values);
    }

    /** The lines, as they stand on the page. */
    private enum Line {
        LANGUAGE,
        THEME,
        MOTION,
        PAGES,
        PARENTS;

        String key() {
            return "household." + name().toLowerCase(Locale.ROOT);
        }

        /** The values it can have as they are kept, what the system or the terminal says first. */
        List<Optional<String>> offered() {
            Stream<String> named = switch (this) {
                case LANGUAGE -> Languages.all().stream();
                case THEME -> Stream.of(Theme.values()).map(Theme::key);
                case MOTION -> Stream.of("still");
                case PAGES -> Stream.of("closed");
                case PARENTS -> Stream.of("sentences");
            };
            List<Optional<String>> offered = new ArrayList<>(List.of(Optional.empty()));
            named.map(Optional::of).forEach(offered::add);
            return offered;
        }
    }

    /** Reads what is set, and makes the page. */
    record Open(Words words) implements HomeEffect {
        @Override
        public Outcome perform(Home home) {
            HouseholdSettings settings = home.settings();
            List<Integer> values = List.of(
                    Math.max(0, Line.LANGUAGE.offered().indexOf(settings.language())),
                    Line.THEME.offered().indexOf(settings.theme().map(Theme::key)),
                    settings.isStill() ? 1 : 0,
                    settings.showsPages() ? 0 : 1,
                    settings.isInSentences() ? 1 : 0);
            return new Made(new HouseholdPage(words, values, 0, ""));
        }
    }

    @Override
    public void draw(Picture picture) {
        boolean tall = picture.height() >= 22;
        picture.centred(tall ? 1 : 0, words.say("household.title"), Ink.STRONG);
        int x = Math.max(1, (picture.width() - 56) / 2);
        int y = tall ? 4 : 2;
        for (Line line : Line.values()) {
            boolean here = line.ordinal() == chosen;
            String name = words.say(line.key());
            String row = name + " ".repeat(Math.max(1, NAME - Picture.columns(name)));
            picture.text(x, y++, (here ? "► " : "  ") + row + "◄ " + value(line) + " ►", here ? Ink.STRONG : Ink.PLAIN);
        }
        y++;
        for (String text :
                Wrapping.lines(words.say(Line.values()[chosen].key() + ".help"), Math.min(70, picture.width() - 2))) {
            picture.centred(y++, text, Ink.PLAIN);
        }
        int above = Footer.draw(picture, List.of(words.say("household.foot").split("   ")));
        Footer.say(picture, above, message);
    }

    private String value(Line line) {
        Optional<String> kept = line.offered().get(values.get(line.ordinal()));
        return line == Line.LANGUAGE && kept.isPresent()
                ? Words.of(Locale.forLanguageTag(kept.get())).say("language.name")
                : words.say(line.key() + "." + kept.orElse("usual"));
    }

    @Override
    public PageResult pressed(PageEvent.Pressed key) {
        int lines = Line.values().length;
        Key.Kind kind = key.key().kind();
        return switch (kind) {
            case UP -> PageResult.of(new HouseholdPage(words, values, Math.floorMod(chosen - 1, lines), ""));
            case DOWN -> PageResult.of(new HouseholdPage(words, values, Math.floorMod(chosen + 1, lines), ""));
            case LEFT, RIGHT -> changed(kind == Key.Kind.LEFT ? -1 : 1);
            case ESCAPE -> PageResult.of(this, PageEffect.BACK);
            default -> PageResult.of(this);
        };
    }

    /** The next value, not past the first or the last. */
    private PageResult changed(int by) {
        Line line = Line.values()[chosen];
        int next = values.get(chosen) + by;
        if (next < 0 || next >= line.offered().size()) {
            return PageResult.of(this);
        }
        List<Integer> other = new ArrayList<>(values);
        other.set(chosen, next);
        return PageResult.of(this, new Keep(line, line.offered().get(next), other));
    }

    @Override
    public PageResult done(PageEffect.Outcome outcome, Instant at) {
        if (outcome instanceof HomeEffect.Failed failed) {
            return PageResult.of(new HouseholdPage(words, values, chosen, words.failure(failed.failure())));
        }
        return outcome instanceof NowSet kept
                ? PageResult.of(new HouseholdPage(words, kept.values(), chosen, words.say("household.kept")))
                : PageResult.of(this);
    }

    /** Keeps a value for all; empty for what the system or the terminal says. */
    private record Keep(Line line, Optional<String> value, List<Integer> values) implements HomeEffect {
        @Override
        public Outcome perform(Home home) {
            switch (line) {
                case LANGUAGE -> home.settings().setLanguage(value);
                case THEME -> home.settings().setTheme(value.flatMap(Theme::named));
                case MOTION -> home.settings().setStill(value.isPresent());
                case PAGES -> home.settings().setShowsPages(value.isEmpty());
                case PARENTS -> home.settings().setInSentences(value.isPresent());
            }
            return new NowSet(values);
        }
    }

    /** What holds now. */
    private record NowSet(List<Integer> values) implements PageEffect.Outcome {}
}
