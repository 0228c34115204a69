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
import fourfold.facts.Family;
import fourfold.facts.Question;
import fourfold.log.Answer;
import fourfold.log.DrillSession;
import fourfold.log.Purpose;
import fourfold.log.Surface;
import fourfold.progress.DrillSoFar;
import fourfold.progress.Hint;
import fourfold.progress.Progress;
import fourfold.scheduling.Scheduler;
import fourfold.scheduling.Turn;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * One sitting of a child. Immutable: {@link #on} gives the next drill and what must be kept before it counts.
 *
 * <p>Numbers to copy, then turns from the scheduler until it has none left. A wrong or missing answer from memory is
 * followed by the right fact, typed once with the answer in view. Two missing answers in a row make a pause.
 * Many keys at once are asked about, and a child who races with errors hears once that there is no hurry.
 */
public final class Drill {
    /** How long a right answer stands before the next question (our own choice). */
    public static final Duration RIGHT_STANDS = Duration.ofMillis(600);

    /** So long no key may come before Enter goes on after too many keys at once (our own choice). */
    static final Duration HANDS_REST = Duration.ofMillis(1200);

    /** After so many slips in typing what is in view the drill goes on all the same. */
    private static final int MOST_TRIES = 3;

    private final Progress before;
    private final Progress progress;
    private final Scheduler scheduler;
    private final Surface surface;
    private final Upcoming ahead;
    private final AttentionSignals noticed;
    private final Phase phase;

    private Drill(
            Progress before,
            Progress progress,
            Scheduler scheduler,
            Surface surface,
            Upcoming ahead,
            AttentionSignals noticed,
            Phase phase) {
        this.before = before;
        this.progress = progress;
        this.scheduler = scheduler;
        this.surface = surface;
        this.ahead = ahead;
        this.noticed = noticed;
        this.phase = phase;
    }

    /**
     * A drill that is ready to begin.
     *
     * @param progress where the child stands
     * @param sitting whose drill it is, and how long; its start is when this is called
     * @param scheduler chooses the questions
     * @param surface where answers are typed
     */
    public static Drill ready(Progress progress, DrillSession sitting, Scheduler scheduler, Surface surface) {
        return new Drill(
                progress,
                progress.beginning(sitting),
                scheduler,
                surface,
                Upcoming.beginning(WarmUp.numbers(WarmUp.handsKnown(progress.motor(), surface), sitting.seed())),
                AttentionSignals.NOTHING,
                new Ready());
    }

    /** What the child sees now. */
    public Phase phase() {
        return phase;
    }

    /** Where the child stands, this drill's answers counted. */
    public Progress progress() {
        return progress;
    }

    /** Whose drill it is. */
    public DrillSession sitting() {
        return soFar().sitting();
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
        return event.isKey() ? noticing(step, event) : step;
    }

    private Step onOpen(Event event) {
        if (phase instanceof Meeting meeting) {
            return event instanceof Event.Enter ? Step.to(onMeeting(meeting, event.at())) : Step.to(this);
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
    private Step noticing(Step step, Event event) {
        Instant at = event.at();
        Drill next = step.next();
        boolean nothingToErase = event instanceof Event.Erase
                && phase instanceof Asking asking
                && asking.typed().isEmpty();
        boolean idle = (next.phase.equals(phase) || nothingToErase) && !isFinished();
        Drill counted = next.with(idle ? next.noticed.idleKey(at) : next.noticed.meantKey());
        return counted.noticed.isMashing()
                ? new Step(counted.handsOff(at), step.effects())
                : new Step(counted, step.effects());
    }

    private Drill handsOff(Instant at) {
        return with(noticed.meantKey()).with(new HandsOff(phase, at, at));
    }

    private Step onReady(Event event) {
        if (event instanceof Event.Pause) {
            return Step.to(finished(event.at()));
        }
        if (!(event instanceof Event.Enter)) {
            return Step.to(this);
        }
        // Waiting for the child to begin is no practice.
        Duration waited = atLeastZero(Duration.between(sitting().startedAt(), event.at()));
        return Step.to(with(progress.pausedFor(waited)).goOn(event.at()), new Effect.Begin(sitting()));
    }

    private Step onPaused(Paused paused, Event event) {
        if (event instanceof Event.Pause) {
            return Step.to(rested(paused.since(), event.at()).finished(event.at()));
        }
        return event instanceof Event.Enter
                ? Step.to(rested(paused.since(), event.at()).resume(paused.resumed(), event.at()))
                : Step.to(this);
    }

    private Step onHandsOff(HandsOff handsOff, Event event) {
        Instant at = event.at();
        if (event instanceof Event.Pause) {
            return Step.to(rested(handsOff.since(), at).finished(at));
        }
        boolean rested = Duration.between(handsOff.lastKeyAt(), at).compareTo(HANDS_REST) >= 0;
        if (event instanceof Event.Enter && rested) {
            return Step.to(rested(handsOff.since(), at).resume(handsOff.resumed(), at));
        }
        return Step.to(event.isKey() ? with(new HandsOff(handsOff.resumed(), handsOff.since(), at)) : this);
    }

    private Drill rested(Instant since, Instant at) {
        return with(progress.pausedFor(atLeastZero(Duration.between(since, at))))
                .with(noticed.withMissing(0));
    }

    private Drill resume(Phase again, Instant at) {
        if (again instanceof Asking asking) {
            return with(asking.afterPause());
        }
        return with(again instanceof Right right ? new Right(right.answer(), at.plus(RIGHT_STANDS)) : again);
    }

    private Drill onMeeting(Meeting meeting, Instant at) {
        return meeting.isWhole() ? typeNextFact(meeting.family(), at) : with(meeting.grow());
    }

    private Step onAsking(Asking asking, Event event) {
        if (event instanceof Event.Painted painted) {
            return Step.to(asking.shownAt().isPresent() ? this : with(asking.shown(painted.at())));
        }
        if (asking.shownAt().isEmpty()) {
            return Step.to(this);
        }
        if (event instanceof Event.Digit digit) {
            return asking.typed().length() >= Answer.LONGEST_TYPED
                    ? Step.to(this)
                    : Step.to(with(asking.typed(asking.typed() + digit.digit(), digit.at())));
        }
        if (event instanceof Event.Erase erase) {
            return Step.to(with(asking.erased(erase.at())));
        }
        if (event instanceof Event.Line line) {
            return answered(asking.line(line.digits()), line.at(), false);
        }
        if (event instanceof Event.Enter enter) {
            return asking.typed().isEmpty() && !Answering.mayBeShown(asking, enter.at())
                    ? Step.to(this)
                    : answered(asking, enter.at(), false);
        }
        Duration calm = progress.steering().settings().calm();
        return event instanceof Event.Tick && Answering.isOverdue(asking, event.at(), calm)
                ? answered(asking, event.at(), true)
                : Step.to(this);
    }

    private Step answered(Asking asking, Instant at, boolean waitedFor) {
        Answer answer = Answering.answer(asking, at, soFar(), surface);
        // Digits that nobody ended with Enter are an absence as well: a book may lie on the keys.
        int missing = waitedFor ? noticed.missingInARow() + 1 : 0;
        Drill after = with(progress.after(answer)).with(noticed.withMissing(missing));
        return Step.to(after.follow(asking, answer, progress, at), new Effect.Keep(answer));
    }

    private Drill follow(Asking asking, Answer answer, Progress asItWas, Instant at) {
        Drill next = afterAnswer(asking, answer, asItWas, at);
        if (noticed.missingInARow() >= 2) {
            return next.with(new Paused(next.phase, at, true));
        }
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

    /** To the next thing: what is settled already, or the scheduler's next turn, or at last a timing. */
    private Drill goOn(Instant at) {
        if (!ahead.toCopy().isEmpty()) {
            return with(ahead.afterCopy()).with(Asking.fresh(ahead.toCopy().get(0), Purpose.COPY, Reason.WARMING_UP));
        }
        if (!ahead.toMeet().isEmpty()) {
            return typeNextFact(ahead.toMeet().get(0).family(), at);
        }
        if (ahead.timed()) {
            return ahead.toTime().isEmpty() || OneMinuteTiming.isOver(soFar())
                    ? finished(at)
                    : with(ahead.afterTimed()).with(Asking.fresh(ahead.toTime().get(0), Purpose.TIMED, Reason.TIMED));
        }
        Optional<Turn> turn = scheduler.next(progress, at, sitting().seed());
        return turn.isEmpty() ? atLast(at) : ask(turn.get());
    }

    private Drill ask(Turn turn) {
        if (turn.purpose() == Purpose.INTRODUCE) {
            Family family = turn.question().family();
            Upcoming meeting = ahead.meeting(family, progress);
            // Plain lines tell the whole picture at once.
            int grown = surface == Surface.PLAIN ? family.low() : 1;
            return with(meeting)
                    .with(new Meeting(family, meeting.picture(), Hint.to(turn.question(), progress), grown));
        }
        boolean tell = noticed.shouldHearThereIsNoHurry(soFar());
        Drill told = tell ? with(noticed.said(soFar().turns())) : this;
        return told.with(Asking.fresh(
                HiddenFactors.form(turn.question(), progress), turn.purpose(), tell ? Reason.NO_HURRY : Reason.RECALL));
    }

    private Drill typeNextFact(Family family, Instant at) {
        if (ahead.toMeet().isEmpty() || !ahead.toMeet().get(0).family().equals(family)) {
            return goOn(at);
        }
        Help help = new Help(ahead.picture(), Optional.empty(), Optional.empty());
        return with(ahead.afterMeeting())
                .with(Asking.fresh(ahead.toMeet().get(0), Purpose.INTRODUCE, Reason.MEETING, help));
    }

    /** The planned minutes are over and nothing is owed: a one-minute timing is offered if there is to be one. */
    private Drill atLast(Instant at) {
        List<Question> timing =
                OneMinuteTiming.questions(progress, at, sitting().seed());
        return timing.isEmpty()
                ? finished(at)
                : with(ahead.timing(timing)).with(new OneMinute(timing.get(0).operation()));
    }

    private Drill finished(Instant at) {
        return with(new Finished(Summary.of(before, progress, at)));
    }

    private Drill with(Phase next) {
        return new Drill(before, progress, scheduler, surface, ahead, noticed, next);
    }

    private Drill with(Progress next) {
        return new Drill(before, next, scheduler, surface, ahead, noticed, phase);
    }

    private Drill with(Upcoming next) {
        return new Drill(before, progress, scheduler, surface, next, noticed, phase);
    }

    private Drill with(AttentionSignals next) {
        return new Drill(before, progress, scheduler, surface, ahead, next, phase);
    }

    static Duration atLeastZero(Duration duration) {
        return duration.isNegative() ? Duration.ZERO : duration;
    }
}
