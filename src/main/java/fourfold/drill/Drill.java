// SPDX-License-Identifier: Apache-2.0
package fourfold.drill;

import fourfold.drill.Phase.Asking;
import fourfold.drill.Phase.Finished;
import fourfold.drill.Phase.HandsOff;
import fourfold.drill.Phase.Meeting;
import fourfold.drill.Phase.OneMinute;
import fourfold.drill.Phase.Paused;
import fourfold.drill.Phase.Ready;
import fourfold.drill.Phase.Reason;
import fourfold.drill.Phase.Right;
import fourfold.log.Answer;
import fourfold.log.DrillSession;
import fourfold.log.Purpose;
import fourfold.log.Surface;
import fourfold.progress.Dates;
import fourfold.progress.DrillSoFar;
import fourfold.progress.Progress;
import fourfold.scheduling.Scheduler;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * One drill session of a child. Immutable: {@link #on} gives the next drill and what must be kept before it counts.
 *
 * <p>Numbers to copy, then turns from the scheduler until it has none left. A wrong or missing answer from memory is
 * followed by the right fact, typed once with the answer in view. A question that nobody touches is shown, and counts only
 * when a key shows that the child is there; if none comes, the drill pauses and asks it again.
 * Many keys at once are asked about, and a child who races with errors reads once that there is no hurry.
 * {@link NextPhase} chooses what comes after an answer, {@link Answering} what typing comes to.
 */
public final class Drill {
    /** How long a right answer is shown before the next question (our own choice). */
    public static final Duration RIGHT_STANDS = Duration.ofMillis(300);

    /** The most tries at typing what is in view; then the drill goes on all the same. */
    private static final int MOST_TRIES = 3;

    private final Progress before;
    private final Progress progress;
    private final Scheduler scheduler;
    private final Surface surface;
    private final Upcoming upcoming;
    private final AttentionSignals attention;
    private final Phase phase;

    private Drill(
            Progress before,
            Progress progress,
            Scheduler scheduler,
            Surface surface,
            Upcoming upcoming,
            AttentionSignals attention,
            Phase phase) {
        this.before = before;
        this.progress = progress;
        this.scheduler = scheduler;
        this.surface = surface;
        this.upcoming = upcoming;
        this.attention = attention;
        this.phase = phase;
    }

    /**
     * A drill that is ready to begin.
     *
     * @param progress what the child has reached
     * @param session whose drill it is, and how long; its start is when this is called
     * @param scheduler chooses the questions
     * @param surface where answers are typed
     */
    public static Drill ready(Progress progress, DrillSession session, Scheduler scheduler, Surface surface) {
        Progress begun = progress.beginning(session);
        return new Drill(
                progress,
                begun,
                scheduler,
                surface,
                Upcoming.beginning(
                        begun.isAllSetAside() || Dates.isBeforeAll(begun)
                                ? List.of()
                                : WarmUp.numbers(WarmUp.handsKnown(progress.motor(), surface), session.seed())),
                AttentionSignals.NOTHING,
                new Ready());
    }

    /** What the child sees now. */
    public Phase phase() {
        return phase;
    }

    /** What the child has reached, this drill's answers counted. */
    public Progress progress() {
        return progress;
    }

    /** Whose drill it is. */
    public DrillSession session() {
        return soFar().session();
    }

    /** Whether the drill is over. */
    public boolean isFinished() {
        return phase instanceof Finished;
    }

    private DrillSoFar soFar() {
        return progress.drill().orElseThrow();
    }

    /** What follows from an event. Events that mean nothing in the present phase change nothing. */
    public Step on(Event event) {
        if (event instanceof Event.Leave && !isFinished()) {
            return Step.to(finished(event.at()));
        }
        if (phase instanceof Ready) {
            return onReady(event);
        }
        if (phase instanceof Paused paused) {
            return onPaused(paused, event);
        }
        if (phase instanceof HandsOff handsOff) {
            return onHandsOff(handsOff, event);
        }
        if (event instanceof Event.Pause && !isFinished()) {
            return Step.to(
                    phase instanceof OneMinute ? finished(event.at()) : with(new Paused(phase, event.at(), false)));
        }
        Step step = onOpen(event);
        return event.isKey() ? countingIdleKeys(step, event) : step;
    }

    private Step onOpen(Event event) {
        if (phase instanceof Meeting meeting) {
            return event instanceof Event.Enter
                    ? Step.to(meeting.isWhole() ? goOn(event.at()) : with(meeting.grow()))
                    : Step.to(this);
        }
        if (phase instanceof OneMinute) {
            return event instanceof Event.Enter ? Step.to(goOn(event.at())) : Step.to(this);
        }
        if (phase instanceof Asking asking) {
            return onAsking(asking, event);
        }
        if (phase instanceof Right right) {
            return event instanceof Event.Tick && !event.at().isBefore(right.until())
                    ? Step.to(goOn(event.at()))
                    : Step.to(this);
        }
        return Step.to(this);
    }

    /** Counts keys that changed nothing; many of them at once are asked about. */
    private Step countingIdleKeys(Step step, Event event) {
        Instant at = event.at();
        Drill next = step.next();
        boolean nothingToErase = event instanceof Event.Erase
                && phase instanceof Asking asking
                && asking.typed().isEmpty();
        boolean idle = (next.phase.equals(phase) || nothingToErase) && !isFinished();
        Drill counted = next.with(idle ? next.attention.idleKey(at) : next.attention.meantKey());
        return counted.attention.isMashing()
                ? new Step(counted.handsOff(at), step.effects())
                : new Step(counted, step.effects());
    }

    private Drill handsOff(Instant at) {
        return with(attention.meantKey()).with(new HandsOff(phase, at, at));
    }

    private Step onReady(Event event) {
        if (event instanceof Event.Pause) {
            return Step.to(finished(event.at()));
        }
        if (!(event instanceof Event.Enter)) {
            return Step.to(this);
        }
        // Waiting for the child to begin is no practice.
        Duration waited = atLeastZero(Duration.between(session().startedAt(), event.at()));
        return Step.to(with(progress.pausedFor(waited)).goOn(event.at()), new Effect.Begin(session()));
    }

    private Step onPaused(Paused paused, Event event) {
        if (event instanceof Event.Pause) {
            return Step.to(rested(paused.since(), event.at()).finished(event.at()));
        }
        return event instanceof Event.Enter
                ? Step.to(
                        rested(paused.since(), event.at()).with(paused.resumed().goingOn(event.at())))
                : Step.to(this);
    }

    private Step onHandsOff(HandsOff handsOff, Event event) {
        Instant at = event.at();
        if (event instanceof Event.Pause) {
            return Step.to(rested(handsOff.since(), at).finished(at));
        }
        if (event instanceof Event.Enter && handsOff.isAtRest(at)) {
            return Step.to(rested(handsOff.since(), at).with(handsOff.wiped().goingOn(at)));
        }
        return Step.to(event.isKey() ? with(handsOff.pressed(at)) : this);
    }

    private Drill rested(Instant since, Instant at) {
        return with(progress.pausedFor(atLeastZero(Duration.between(since, at))))
                .with(attention.meantKey());
    }

    private Step onAsking(Asking asking, Event event) {
        if (event instanceof Event.Tick) {
            Duration calm = progress.steering().settings().calm();
            return Step.to(Answering.isUntouched(asking, event.at(), calm) ? untouched(asking, event.at()) : this);
        }
        if (Answering.ends(asking, event)) {
            return answered(event instanceof Event.Line line ? asking.line(line.digits()) : asking, event.at());
        }
        Asking typed = Answering.typing(asking, event);
        return Step.to(typed.equals(asking) ? this : with(typed));
    }

    /**
     * No key came for the calm limit. A question to be recalled is shown; it counts when the child types what is shown.
     * Whatever else stands there, and a question that was shown, waits in a pause until somebody is there again.
     */
    private Drill untouched(Asking asking, Instant at) {
        if (!asking.isInView() && asking.typed().isEmpty() && asking.purpose() != Purpose.TIMED) {
            Answer none = Answering.answer(asking, at, soFar(), surface);
            Help help = Help.after(none, progress).waitingFor(asking, none);
            return with(Asking.fresh(asking.prompt(), Purpose.INTRODUCE, Reason.SHOWN, help));
        }
        Asking again = asking.help().unanswered().map(Help.Unanswered::question).orElse(asking);
        return with(new Paused(again, at, true));
    }

    private Step answered(Asking asking, Instant at) {
        Optional<Answer> before = asking.help().unanswered().map(Help.Unanswered::answer);
        if (before.isPresent()) {
            Step rest = with(progress.after(before.get())).answered(asking.counted(), at);
            List<Effect> effects = new ArrayList<>(List.of(new Effect.Keep(before.get())));
            effects.addAll(rest.effects());
            return new Step(rest.next(), effects);
        }
        Answer answer = Answering.answer(asking, at, soFar(), surface);
        Drill after = with(progress.after(answer));
        return Step.to(after.follow(asking, answer, progress, at), new Effect.Keep(answer));
    }

    private Drill follow(Asking asking, Answer answer, Progress asItWas, Instant at) {
        Drill next = afterAnswer(asking, answer, asItWas, at);
        return !next.isFinished() && AttentionSignals.areUnread(soFar()) ? next.handsOff(at) : next;
    }

    private Drill afterAnswer(Asking asking, Answer answer, Progress asItWas, Instant at) {
        if (answer.purpose() == Purpose.TIMED) {
            return goOn(at);
        }
        if (answer.isCorrect()) {
            return with(new Right(answer, at.plus(RIGHT_STANDS)));
        }
        if (asking.isInView()) {
            boolean again = asking.tries() + 1 < MOST_TRIES;
            return again ? with(asking.onceMore()) : goOn(at);
        }
        Reason reason = answer.isMissing() ? Reason.SHOWN : Reason.PUTTING_RIGHT;
        return with(Asking.fresh(asking.prompt(), Purpose.INTRODUCE, reason, Help.after(answer, asItWas)));
    }

    /** To whatever comes next, or to the end. */
    private Drill goOn(Instant at) {
        NextPhase next = NextPhase.of(progress, upcoming, attention, scheduler, surface, at);
        return next.phase()
                .map(p -> new Drill(before, progress, scheduler, surface, next.upcoming(), next.attention(), p))
                .orElseGet(() -> with(new Finished(Summary.of(before, progress, at, false))));
    }

    private Drill finished(Instant at) {
        return with(new Finished(Summary.of(before, progress, at, true)));
    }

    private Drill with(Phase next) {
        return new Drill(before, progress, scheduler, surface, upcoming, attention, next);
    }

    private Drill with(Progress next) {
        return new Drill(before, next, scheduler, surface, upcoming, attention, phase);
    }

    private Drill with(AttentionSignals next) {
        return new Drill(before, progress, scheduler, surface, upcoming, next, phase);
    }

    static Duration atLeastZero(Duration duration) {
        return duration.isNegative() ? Duration.ZERO : duration;
    }
}
