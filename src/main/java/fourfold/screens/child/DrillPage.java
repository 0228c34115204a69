package fourfold.screens.child;

import fourfold.drill.Drill;
import fourfold.drill.Event;
import fourfold.drill.Phase;
import fourfold.drill.Step;
import fourfold.log.Child;
import fourfold.screens.Colours;
import fourfold.screens.PageContext;
import fourfold.terminal.Ink;
import fourfold.terminal.Key;
import fourfold.terminal.Navigation;
import fourfold.terminal.MutablePage;
import fourfold.terminal.Picture;
import fourfold.terminal.Theme;
import fourfold.terminal.WaitSign;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;

/**
 * The drill on the screen. Every event goes to the drill; what it says must be kept is kept first, on the file's thread,
 * and only then does the new state count and is drawn. Until then the old picture stands and keys belong to no question.
 * When the disk does not take it the child is told, and may go on: a quiet mark then shows how many answers are only in
 * memory, and at the end a grown-up is told whether they are lost.
 */
public final class DrillPage implements MutablePage {
    /** The program may be stopped for long: so long it waits that no other is shut out by a write half done. */
    private static final Duration BEFORE_A_STOP = Duration.ofMillis(50);

    private final DrillPicture drawing;
    private final DrillFile file;
    private WaitSign sign;
    private final Child child;
    private Drill drill;
    private SummaryPicture ending;
    private Optional<Drill> waiting = Optional.empty();
    private Optional<Instant> pauseMeant = Optional.empty();
    private Instant counted;
    private boolean refused;
    private boolean leaving;
    private String advice = "";

    /** Begins the drill at once. */
    public DrillPage(PageContext context, Child child, Drill ready, Instant at) {
        this.child = child;
        this.ending = SummaryPicture.without(context.words(), child, ready.progress());
        this.drawing = new DrillPicture(
                child, context.words(), ready.progress().steering().settings());
        this.file = new DrillFile(context);
        this.sign = new WaitSign(context.words().say("drill.moment"));
        this.drill = ready;
        this.counted = at;
        apply(new Event.Enter(at));
    }

    public Drill drill() {
        return drill;
    }

    @Override
    public void draw(Picture picture) {
        if (refused) {
            drawing.notKept(picture, file.reason());
        } else if (drill.isFinished() && file.isBehind()) {
            drawing.notKeptAtTheEnd(picture, file.answersBehind(), file.reason());
        } else {
            draw(picture, drill);
            drawing.mark(picture, file.answersBehind(), advice);
        }
        picture.centred(picture.height() - 2, sign.shown(), Ink.PLAIN);
    }

    private void draw(Picture picture, Drill now) {
        if (now.phase() instanceof Phase.Finished finished) {
            ending.draw(picture, finished.summary());
        } else {
            drawing.draw(picture, now);
        }
    }

    @Override
    public Optional<Theme> theme() {
        return Optional.of(Colours.of(drill.progress().steering().settings()));
    }

    @Override
    public Navigation on(Key key, Instant at) {
        look(at);
        if (sign.isWaiting()) {
            early(key, at);
        } else if (refused) {
            onTrouble(key, at);
        } else if (drill.isFinished()) {
            return onFinished(key, at);
        } else {
            apply(DrillKeys.event(key, at));
        }
        return Navigation.STAY;
    }

    /** A key before its question: it is seen not to count, but for a pause, which comes when the answer is kept. */
    private void early(Key key, Instant at) {
        sign = sign.early(at);
        if (DrillKeys.event(key, at) instanceof Event.Pause) {
            pauseMeant = pauseMeant.or(() -> Optional.of(at));
        }
    }

    /** Enter tries again, the space bar goes on without, Esc stops for today. */
    private void onTrouble(Key key, Instant at) {
        if (key.kind() == Key.Kind.ENTER) {
            file.tryAgain(at);
            sign = sign.begin(at);
        } else if (key.is(' ') || key.kind() == Key.Kind.ESCAPE) {
            file.goOn();
            counts(at);
            if (key.kind() == Key.Kind.ESCAPE) {
                apply(new Event.Leave(at));
                // What was to come next is not to be seen while the end is prepared.
                refused = true;
            }
        }
    }

    private Navigation onFinished(Key key, Instant at) {
        if (key.kind() == Key.Kind.ENTER && file.isBehind()) {
            file.tryAgain(at);
            sign = sign.begin(at);
            return Navigation.STAY;
        }
        Event meant = DrillKeys.event(key, at);
        if (!(meant instanceof Event.Enter) && !(meant instanceof Event.Pause)) {
            return Navigation.STAY;
        }
        if (drill.phase() instanceof Phase.Finished finished && ending.goOn(finished.summary())) {
            return Navigation.STAY;
        }
        leaving = true;
        if (file.isBehind()) {
            file.giveUp(at);
        }
        sign = sign.begin(at);
        return next();
    }

    @Override
    public Navigation next() {
        return leaving && !file.isBusy() ? Navigation.BACK : Navigation.STAY;
    }

    @Override
    public boolean tick(Instant at) {
        boolean came = look(at);
        if (sign.isWaiting()) {
            WaitSign before = sign;
            sign = sign.tick(at);
            return came || sign != before;
        }
        if (refused) {
            return came;
        }
        file.tryFromTimeToTime(at);
        Drill before = drill;
        if (!(drill.phase() instanceof Phase.Right) || !at.isBefore(counted.plus(Drill.RIGHT_STANDS))) {
            apply(new Event.Tick(at));
        }
        return came || !before.phase().equals(drill.phase());
    }

    /** Looks whether the file's thread is done, and takes what came of it. */
    private boolean look(Instant at) {
        Optional<DrillFile.Came> came = file.came();
        came.ifPresent(c -> took(c, at));
        return came.isPresent();
    }

    private void took(DrillFile.Came came, Instant at) {
        ending = came.ending().orElse(ending);
        advice = came.advice().orElse(advice);
        sign = sign.end();
        if (waiting.isPresent() && file.isBehind() && !file.isGoingOn()) {
            refused = true;
            pauseMeant = Optional.empty();
        } else {
            counts(at);
        }
    }

    @Override
    public boolean painted(Instant at) {
        if (waiting.isPresent()
                || !(drill.phase() instanceof Phase.Asking asking)
                || asking.shownAt().isPresent()) {
            return false;
        }
        apply(new Event.Painted(at));
        return true;
    }

    @Override
    public void interrupted(Instant at) {
        if (waiting.isPresent()) {
            if (pauseMeant.isEmpty()) {
                pauseMeant = Optional.of(at);
                file.finish(BEFORE_A_STOP);
            }
        } else if (!isAtRest()) {
            apply(new Event.Pause(at));
        }
    }

    private boolean isAtRest() {
        return drill.phase() instanceof Phase.Paused || drill.phase() instanceof Phase.HandsOff;
    }

    @Override
    public void leave(Instant at) {
        file.leave(drill.session(), at);
    }

    private void apply(Event event) {
        if (waiting.isPresent()) {
            return;
        }
        Step step = drill.on(event);
        boolean ends = step.next().isFinished() && !drill.isFinished();
        if (!ends && step.effects().isEmpty()) {
            drill = step.next();
            return;
        }
        waiting = Optional.of(step.next());
        if (ends) {
            file.keepLast(step.effects(), event.at(), child, step.next().progress());
            sign = sign.begin(event.at());
            return;
        }
        file.keep(step.effects(), event.at());
        if (file.isGoingOn()) {
            counts(event.at());
        } else {
            sign = sign.begin(event.at());
        }
    }

    /** What waited counts now: all is kept, or the child goes on without. */
    private void counts(Instant at) {
        refused = false;
        if (waiting.isPresent()) {
            drill = waiting.get();
            waiting = Optional.empty();
            counted = at;
        }
        Optional<Instant> meant = pauseMeant;
        pauseMeant = Optional.empty();
        if (drill.isFinished()) {
            if (!file.isBehind()) {
                file.end(drill.session(), at);
            }
        } else if (meant.isPresent() && !isAtRest() && !(drill.phase() instanceof Phase.OneMinute)) {
            apply(new Event.Pause(meant.get()));
        }
    }
}
