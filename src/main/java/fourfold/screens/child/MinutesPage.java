package fourfold.screens.child;

import fourfold.drill.Drill;
import fourfold.log.Child;
import fourfold.log.DrillSession;
import fourfold.log.RecordsFailure;
import fourfold.log.Surface;
import fourfold.progress.Progress;
import fourfold.scheduling.Scheduler;
import fourfold.screens.Colours;
import fourfold.screens.PageContext;
import fourfold.terminal.Ink;
import fourfold.terminal.Key;
import fourfold.terminal.Navigation;
import fourfold.terminal.MutablePage;
import fourfold.terminal.Picture;
import fourfold.terminal.SessionClock;
import fourfold.terminal.Theme;
import fourfold.terminal.Wrapping;
import fourfold.words.ClockAdvice;
import fourfold.words.Words;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** How many minutes today? Enter begins. */
final class MinutesPage implements MutablePage {
    private static final int SHORTEST = 5;
    private static final int LONGEST = 10;

    private final PageContext context;
    private final Scheduler scheduler;
    private final SessionClock moments;
    private final Surface surface;
    private final Child child;
    private final Progress progress;
    private int minutes;
    private String trouble = "";

    MinutesPage(PageContext context, Scheduler scheduler, SessionClock moments, Surface surface, Child child) {
        this.context = context;
        this.scheduler = scheduler;
        this.moments = moments;
        this.surface = surface;
        this.child = child;
        this.progress = context.home().records().progress(child);
        this.trouble = ClockAdvice.of(context.words(), progress, moments.now()).orElse("");
        this.minutes = progress.steering().settings().minutes();
    }

    @Override
    public void draw(Picture picture) {
        Words words = context.words();
        DrillKeys keys = new DrillKeys(words, progress.steering().settings());
        int y = picture.height() / 2 - 5;
        picture.centred(y, words.say("minutes.hello", Words.isolated(child.name())), Ink.STRONG);
        picture.centred(y + 2, words.say("minutes.question"), Ink.PLAIN);
        List<String> choices = new ArrayList<>();
        for (int m = SHORTEST; m <= LONGEST; m++) {
            choices.add(m == minutes ? "[" + m + "]" : " " + m + " ");
        }
        picture.centred(y + 4, String.join(" ", choices), Ink.STRONG);
        picture.centred(y + 7, words.say("minutes.how", keys.ready()), Ink.PLAIN);
        picture.centred(y + 8, words.say("minutes.pause", keys.pause()), Ink.PLAIN);
        int line = y + 10;
        for (String part : Wrapping.lines(trouble, picture.width() - 4)) {
            picture.centred(line++, part, Ink.STRONG);
        }
        picture.centred(picture.height() - 1, words.say("minutes.foot"), Ink.QUIET);
    }

    @Override
    public Optional<Theme> theme() {
        return Optional.of(Colours.of(progress.steering().settings()));
    }

    @Override
    public Navigation on(Key key, Instant at) {
        switch (key.kind()) {
            case LEFT, DOWN -> minutes = Math.max(SHORTEST, minutes - 1);
            case RIGHT, UP -> minutes = Math.min(LONGEST, minutes + 1);
            case DIGIT -> minutes = key.digit() == 0 || key.digit() == 1 ? LONGEST : Math.max(SHORTEST, key.digit());
            case ESCAPE -> {
                return Navigation.BACK;
            }
            case ENTER -> {
                return begin(at);
            }
            case LETTER -> {
                return letter(key, at);
            }
            default -> {
                return Navigation.STAY;
            }
        }
        return Navigation.STAY;
    }

    /** The same keys as in the drill, so that one hand is enough here as well. */
    private Navigation letter(Key key, Instant at) {
        return switch (key.letter()) {
            case ' ', '+' -> begin(at);
            case '-', '.', ',' -> Navigation.BACK;
            default -> Navigation.STAY;
        };
    }

    private Navigation begin(Instant at) {
        try {
            Optional<DrillSession> session = context.home().practice().newSession(child, minutes, at);
            if (session.isEmpty()) {
                trouble = context.words().say("drill.elsewhere", child.name());
                return Navigation.STAY;
            }
            Drill drill = Drill.ready(progress, session.get(), scheduler, surface);
            return new Navigation.Replace(new DrillPage(context, child, drill, moments.now()));
        } catch (RecordsFailure e) {
            trouble = context.words().failure(e);
            return Navigation.STAY;
        }
    }
}
