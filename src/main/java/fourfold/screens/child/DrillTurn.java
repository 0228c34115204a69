// SPDX-License-Identifier: Apache-2.0
package fourfold.screens.child;

import fourfold.drill.Drill;
import fourfold.drill.Event;
import fourfold.drill.Phase;
import fourfold.drill.Step;
import fourfold.screens.HomeEffect;
import fourfold.terminal.Key;
import fourfold.terminal.PageEffect;
import fourfold.terminal.PageEvent;
import fourfold.terminal.PageResult;
import fourfold.terminal.WaitSign;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Works out what follows from one event on a drill's page; the page itself is left as it is. */
final class DrillTurn {
    /** How long to wait for an open write before the program is stopped: a write half done locks other programs out. */
    private static final Duration BEFORE_A_STOP = Duration.ofMillis(50);

    private final DrillPage page;
    private final List<PageEffect> effects = new ArrayList<>();
    private Drill drill;
    private Optional<Drill> waiting;
    private Optional<Instant> pauseMeant;
    private Instant counted;
    private DrillPage.Mood mood;
    private DrillFile file;
    private WaitSign sign;
    private SummaryPicture ending;
    private String advice;
    private String note;

    private DrillTurn(DrillPage page) {
        this.page = page;
        drill = page.drill();
        waiting = page.waiting();
        pauseMeant = page.pauseMeant();
        counted = page.counted();
        mood = page.mood();
        file = page.file();
        sign = page.sign();
        ending = page.ending();
        advice = page.advice();
        note = page.note();
    }

    /** What follows. */
    static PageResult of(DrillPage page, PageEvent event) {
        DrillTurn turn = new DrillTurn(page);
        turn.hear(event);
        DrillPage next = new DrillPage(
                page.words(),
                page.child(),
                turn.drill,
                turn.waiting,
                turn.pauseMeant,
                turn.counted,
                turn.mood,
                turn.file,
                turn.sign,
                turn.ending,
                turn.advice,
                turn.note);
        return new PageResult(next.equals(page) ? page : next, turn.effects);
    }

    private void hear(PageEvent event) {
        Instant at = event.at();
        if (event instanceof PageEvent.Opened) {
            if (mood != DrillPage.Mood.GREETING) {
                apply(new Event.Enter(at));
            }
        } else if (event instanceof PageEvent.Pressed pressed) {
            key(pressed.key(), at);
        } else if (event instanceof PageEvent.Tick) {
            tick(at);
        } else if (event instanceof PageEvent.Painted) {
            painted(at);
        } else if (event instanceof PageEvent.Interrupted) {
            interrupted(at);
        } else if (event instanceof PageEvent.Leave) {
            ask(
                    file.ended()
                            ? new DrillEffect.GiveUp(page.words(), at)
                            : new DrillEffect.Leave(drill.session(), page.words(), at));
            file = file.ending();
        } else if (event instanceof PageEvent.Done done) {
            done(done.outcome(), at);
        }
    }

    private void key(Key key, Instant at) {
        if (sign.isWaiting()) {
            early(key, at);
        } else if (mood == DrillPage.Mood.REFUSED) {
            onTrouble(key, at);
        } else if (drill.isFinished()) {
            onFinished(key, at);
        } else {
            Drill before = drill;
            Event meant = DrillKeys.meant(key, drill.phase(), at);
            apply(meant);
            note = waiting.isEmpty() && drill.phase().looksLike(before.phase())
                    ? new RefusedKey(page.words(), before).why(key, meant)
                    : "";
        }
    }

    /** A key before its question: it is seen not to count, but for a pause, which comes when the answer is kept. */
    private void early(Key key, Instant at) {
        sign = sign.early(at);
        if (DrillKeys.meant(key, drill.phase(), at) instanceof Event.Pause) {
            pauseMeant = pauseMeant.or(() -> Optional.of(at));
        }
    }

    /** Enter tries again, the space bar goes on without, Esc stops for today. */
    private void onTrouble(Key key, Instant at) {
        if (key.kind() == Key.Kind.ENTER) {
            ask(new DrillEffect.TryAgain(at));
            sign = sign.begin(at);
        } else if (key.is(' ') || key.kind() == Key.Kind.ESCAPE) {
            file = file.goingOn();
            ask(new DrillEffect.GoOn());
            counts(at);
            if (key.kind() == Key.Kind.ESCAPE) {
                apply(new Event.Leave(at));
                // What was to come next is not to be seen while the end is prepared.
                mood = DrillPage.Mood.REFUSED;
            }
        }
    }

    private void onFinished(Key key, Instant at) {
        if (ending.isMoving()) {
            ending = ending.still();
            return;
        }
        if (key.kind() == Key.Kind.ENTER && file.isBehind()) {
            ask(new DrillEffect.TryAgain(at));
            sign = sign.begin(at);
            return;
        }
        Event meant = DrillKeys.event(key, at);
        if (!(meant instanceof Event.Enter) && !(meant instanceof Event.Pause)) {
            return;
        }
        if (drill.phase() instanceof Phase.Finished finished && ending.hasMore(finished.summary())) {
            ending = ending.more();
            return;
        }
        mood = DrillPage.Mood.LEAVING;
        if (file.isBehind()) {
            ask(new DrillEffect.GiveUp(page.words(), at));
        }
        sign = sign.begin(at);
        leaveWhenDone();
    }

    private void leaveWhenDone() {
        if (mood == DrillPage.Mood.LEAVING && !file.isBusy()) {
            effects.add(PageEffect.BACK);
        }
    }

    private void tick(Instant at) {
        if (sign.isWaiting()) {
            sign = sign.tick(at);
            return;
        }
        if (mood == DrillPage.Mood.REFUSED) {
            return;
        }
        if (drill.isFinished()) {
            ending = ending.at(at);
        }
        if (file.isToBeTried(at)) {
            ask(new DrillEffect.Keep(List.of(), at));
        }
        if (!(drill.phase() instanceof Phase.Right) || !at.isBefore(counted.plus(Drill.RIGHT_STANDS))) {
            apply(new Event.Tick(at));
        }
    }

    private void done(PageEffect.Outcome outcome, Instant at) {
        if (outcome instanceof HomeEffect.Failed failed) {
            // What the disk does not take is part of what came; nothing else may fail here.
            throw failed.failure();
        }
        if (outcome instanceof DrillEffect.Came came) {
            file = file.done(came.state());
            ending = came.ending().orElse(ending);
            advice = came.advice().orElse(advice);
            if (!file.isBusy()) {
                allDone(at);
            }
        }
    }

    private void allDone(Instant at) {
        sign = sign.end();
        if (waiting.isPresent() && file.isBehind() && !file.isGoingOn()) {
            mood = DrillPage.Mood.REFUSED;
            pauseMeant = Optional.empty();
        } else {
            counts(at);
        }
        leaveWhenDone();
    }

    private void painted(Instant at) {
        if (waiting.isEmpty()
                && drill.phase() instanceof Phase.Asking asking
                && asking.shownAt().isEmpty()) {
            apply(new Event.Painted(at));
            effects.add(new PageEffect.DropEarlierKeys());
        }
    }

    private void interrupted(Instant at) {
        if (waiting.isPresent()) {
            if (pauseMeant.isEmpty()) {
                pauseMeant = Optional.of(at);
                effects.add(new PageEffect.Settle(BEFORE_A_STOP));
            }
        } else if (!drill.phase().isAtRest()) {
            apply(new Event.Pause(at));
        }
    }

    private void ask(DrillEffect effect) {
        file = file.asked(effect instanceof DrillEffect.Keep keep ? keep.answers() : 0);
        effects.add(effect);
    }

    private void apply(Event event) {
        if (waiting.isPresent()) {
            return;
        }
        Step step = drill.on(event);
        boolean ends = step.next().isFinished() && !drill.isFinished();
        if (!ends && step.effects().isEmpty()) {
            note = step.next().phase().getClass().equals(drill.phase().getClass()) ? note : "";
            drill = step.next();
            return;
        }
        waiting = Optional.of(step.next());
        if (ends) {
            ask(new DrillEffect.KeepLast(
                    step.effects(),
                    event.at(),
                    page.words(),
                    page.child(),
                    step.next().progress()));
            sign = sign.begin(event.at());
            return;
        }
        ask(new DrillEffect.Keep(step.effects(), event.at()));
        if (file.isGoingOn()) {
            counts(event.at());
        } else {
            sign = sign.begin(event.at());
        }
    }

    /** What waited counts now: all is kept, or the child goes on without. */
    private void counts(Instant at) {
        if (mood != DrillPage.Mood.LEAVING) {
            mood = DrillPage.Mood.PRACTISING;
        }
        if (waiting.isPresent()) {
            drill = waiting.get();
            waiting = Optional.empty();
            counted = at;
            note = "";
        }
        Optional<Instant> meant = pauseMeant;
        pauseMeant = Optional.empty();
        if (drill.isFinished()) {
            if (!file.isBehind() && !file.ended()) {
                file = file.ending();
                ask(new DrillEffect.End(drill.session(), page.words(), at));
            }
        } else if (meant.isPresent() && !drill.phase().isAtRest() && !(drill.phase() instanceof Phase.OneMinute)) {
            apply(new Event.Pause(meant.get()));
        }
    }
}
