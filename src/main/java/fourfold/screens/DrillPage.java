package fourfold.screens;

import fourfold.drill.Drill;
import fourfold.drill.Event;
import fourfold.drill.Phase;
import fourfold.drill.Step;
import fourfold.facts.Child;
import java.time.Instant;
import java.util.Optional;

/**
 * The drill on the screen. Every event goes to the drill; what it says must be kept is kept first, and only then does
 * the new state count and is drawn. When the disk does not take it the child is told, and may go on: a quiet mark then
 * shows how many answers are only in memory, and at the end a grown-up is told whether they are lost.
 */
public final class DrillPage implements Page {
    private final Records records;
    private final DrillPicture drawing;
    private final Keeping keeping;
    private final Child child;
    private Drill drill;
    private SummaryPicture ending;
    private Optional<Drill> waiting = Optional.empty();
    private String advice = "";

    /** Begins the drill at once. */
    public DrillPage(Records records, Child child, Drill ready, Instant at) {
        this.records = records;
        this.child = child;
        this.ending = SummaryPicture.without(records.words(), child, ready.progress());
        this.drawing = new DrillPicture(
                child, records.words(), ready.progress().steering().settings());
        this.keeping = new Keeping(records);
        this.drill = ready;
        apply(new Event.Enter(at));
    }

    Drill drill() {
        return drill;
    }

    @Override
    public void draw(Picture picture) {
        if (waiting.isPresent()) {
            drawing.notKept(picture, keeping.reason());
        } else if (drill.isFinished() && keeping.isBehind()) {
            drawing.notKeptAtTheEnd(picture, keeping.answers(), keeping.reason());
        } else {
            draw(picture, drill);
            drawing.mark(picture, keeping.answers(), advice);
        }
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
        return Optional.of(Theme.of(drill.progress().steering().settings()));
    }

    @Override
    public Move on(Key key, Instant at) {
        if (waiting.isPresent()) {
            onTrouble(key, at);
            return Move.STAY;
        }
        if (drill.isFinished()) {
            return onFinished(key, at);
        }
        apply(DrillKeys.event(key, at));
        return Move.STAY;
    }

    /** Enter tries again, the space bar goes on without, Esc stops for today. */
    private void onTrouble(Key key, Instant at) {
        if (key.kind() == Key.Kind.ENTER) {
            counts(keeping.tryNow(at));
        } else if (key.is(' ') || key.kind() == Key.Kind.ESCAPE) {
            keeping.goOn();
            counts(true);
            if (key.kind() == Key.Kind.ESCAPE) {
                apply(new Event.Leave(at));
            }
        }
    }

    private Move onFinished(Key key, Instant at) {
        if (key.kind() == Key.Kind.ENTER && keeping.isBehind()) {
            if (keeping.tryNow(at)) {
                advice = records.ended(drill.sitting(), at).orElse("");
            }
            return Move.STAY;
        }
        Event meant = DrillKeys.event(key, at);
        if (!(meant instanceof Event.Enter) && !(meant instanceof Event.Pause)) {
            return Move.STAY;
        }
        if (drill.phase() instanceof Phase.Finished finished && ending.goOn(finished.summary())) {
            return Move.STAY;
        }
        tellLoss(at);
        return Move.BACK;
    }

    @Override
    public boolean tick(Instant at) {
        if (waiting.isPresent()) {
            return false;
        }
        Drill before = drill;
        apply(new Event.Tick(at));
        return !before.phase().equals(drill.phase());
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
        if (!(drill.phase() instanceof Phase.Paused) && !(drill.phase() instanceof Phase.HandsOff)) {
            apply(new Event.Pause(at));
        }
    }

    @Override
    public void leave(Instant at) {
        if (waiting.isPresent()) {
            keeping.goOn();
            counts(true);
        }
        apply(new Event.Leave(at));
        tellLoss(at);
    }

    /** A last try; what the disk does not take even now is lost, and is said to be. */
    private void tellLoss(Instant at) {
        if (keeping.isBehind() && !keeping.tryNow(at)) {
            records.tellParent(keeping.loss());
        }
    }

    private void apply(Event event) {
        if (waiting.isPresent()) {
            return;
        }
        Step step = drill.on(event);
        boolean ended = step.next().isFinished() && !drill.isFinished();
        waiting = Optional.of(step.next());
        boolean kept = keeping.keep(step.effects(), event.at());
        if (ended && !kept) {
            kept = keeping.tryNow(event.at());
        }
        counts(kept || keeping.isGoingOn());
        if (ended) {
            ending = SummaryPicture.of(records, child, drill.progress());
        }
        if (ended && kept) {
            advice = records.ended(drill.sitting(), event.at()).orElse("");
        }
    }

    /** The next drill counts when nothing is left to be kept, or when the child goes on without. */
    private void counts(boolean settled) {
        if (settled) {
            waiting.ifPresent(next -> drill = next);
            waiting = Optional.empty();
        }
    }
}
