package fourfold.screens;

import fourfold.drill.Drill;
import fourfold.drill.Effect;
import fourfold.drill.Event;
import fourfold.drill.Phase;
import fourfold.drill.Step;
import fourfold.facts.Child;
import java.time.Instant;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Optional;

/**
 * The drill on the screen. Every event goes to the drill; what it says must be kept is kept first, and only then does
 * the new state count and is drawn.
 */
public final class DrillPage implements Page {
    private final Records records;
    private final DrillPicture drawing;
    private final Deque<Effect> unkept = new ArrayDeque<>();
    private Drill drill;
    private Optional<Drill> waiting = Optional.empty();
    private String reason = "";

    /** Begins the drill at once. */
    public DrillPage(Records records, Child child, Drill ready, Instant at) {
        this.records = records;
        this.drawing = new DrillPicture(child);
        this.drill = ready;
        apply(new Event.Enter(at));
    }

    Drill drill() {
        return drill;
    }

    @Override
    public void draw(Picture picture) {
        if (waiting.isPresent()) {
            drawing.notKept(picture, reason);
        } else {
            drawing.draw(picture, drill);
        }
    }

    @Override
    public Move on(Key key, Instant at) {
        if (waiting.isPresent()) {
            return onTrouble(key, at);
        }
        if (drill.isFinished()) {
            boolean goOn = key.kind() == Key.Kind.ENTER || key.kind() == Key.Kind.ESCAPE;
            return goOn ? Move.BACK : Move.STAY;
        }
        switch (key.kind()) {
            case DIGIT -> apply(new Event.Digit(key.digit(), at));
            case ERASE -> apply(new Event.Erase(at));
            case ENTER -> apply(new Event.Enter(at));
            case ESCAPE -> apply(new Event.Pause(at));
            default -> {
                return Move.STAY;
            }
        }
        return Move.STAY;
    }

    /** Stopping tries once more; after that the page closes without a summary, which would say that all is kept. */
    private Move onTrouble(Key key, Instant at) {
        if (key.kind() != Key.Kind.ENTER && key.kind() != Key.Kind.ESCAPE) {
            return Move.STAY;
        }
        settle();
        if (key.kind() == Key.Kind.ENTER) {
            return Move.STAY;
        }
        apply(new Event.Leave(at));
        return waiting.isPresent() ? Move.BACK : Move.STAY;
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
        if (!(drill.phase() instanceof Phase.Paused)) {
            apply(new Event.Pause(at));
        }
    }

    @Override
    public void leave(Instant at) {
        if (waiting.isEmpty()) {
            apply(new Event.Leave(at));
        }
    }

    private void apply(Event event) {
        if (waiting.isPresent()) {
            return;
        }
        Step step = drill.on(event);
        unkept.addAll(step.effects());
        waiting = Optional.of(step.next());
        settle();
    }

    /** Keeps what is still to be kept; the next drill counts only when nothing is left. */
    private void settle() {
        try {
            while (!unkept.isEmpty()) {
                Effect effect = unkept.element();
                if (effect instanceof Effect.Begin begin) {
                    records.begin(begin.sitting());
                } else if (effect instanceof Effect.Keep keep) {
                    records.keep(keep.answer());
                }
                unkept.remove();
            }
            waiting.ifPresent(next -> drill = next);
            waiting = Optional.empty();
        } catch (Records.NotKept e) {
            reason = e.line();
        }
    }
}
