package fourfold.drill;

import fourfold.drill.Phase.Asking;
import fourfold.drill.Phase.Finished;
import fourfold.drill.Phase.Meeting;
import fourfold.drill.Phase.Paused;
import fourfold.drill.Phase.Ready;
import fourfold.drill.Phase.Reason;
import fourfold.drill.Phase.Right;
import fourfold.facts.Answer;
import fourfold.facts.Family;
import fourfold.facts.NumberToCopy;
import fourfold.facts.Prompt;
import fourfold.facts.Purpose;
import fourfold.facts.Question;
import fourfold.facts.Sitting;
import fourfold.facts.Surface;
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
 */
public final class Drill {
    /** How long a right answer stands before the next question (our own choice). */
    public static final Duration RIGHT_STANDS = Duration.ofMillis(600);

    /** Enter with nothing typed means "show me" only this long after the question (our own choice). */
    static final Duration SHOW_ME_AFTER = Duration.ofMillis(1500);

    /** After so many slips in typing what is in view the drill goes on all the same. */
    private static final int MOST_TRIES = 3;

    private final Progress before;
    private final Progress progress;
    private final Scheduler scheduler;
    private final Surface surface;
    private final List<NumberToCopy> toCopy;
    private final List<Question> toMeet;
    private final int missingInARow;
    private final Phase phase;

    private Drill(
            Progress before,
            Progress progress,
            Scheduler scheduler,
            Surface surface,
            List<NumberToCopy> toCopy,
            List<Question> toMeet,
            int missingInARow,
            Phase phase) {
        this.before = before;
        this.progress = progress;
        this.scheduler = scheduler;
        this.surface = surface;
        this.toCopy = toCopy;
        this.toMeet = toMeet;
        this.missingInARow = missingInARow;
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
    public static Drill ready(Progress progress, Sitting sitting, Scheduler scheduler, Surface surface) {
        return new Drill(
                progress,
                progress.beginning(sitting),
                scheduler,
                surface,
                WarmUp.numbers(WarmUp.handsKnown(progress.motor(), surface), sitting.seed()),
                List.of(),
                0,
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
    public Sitting sitting() {
        return progress.drill().orElseThrow().sitting();
    }

    /** Whether the drill is over. */
    public boolean isFinished() {
        return phase instanceof Finished;
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
        if (event instanceof Event.Pause && !isFinished()) {
            return Step.to(with(new Paused(phase, event.at(), false)));
        }
        if (phase instanceof Meeting meeting) {
            return event instanceof Event.Enter ? Step.to(typeNextFact(meeting.family(), event.at())) : Step.to(this);
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

    private Step onReady(Event event) {
        if (event instanceof Event.Pause) {
            return Step.to(finished(event.at()));
        }
        if (!(event instanceof Event.Enter)) {
            return Step.to(this);
        }
        // Waiting for the child to begin is no practice.
        Duration waited = atLeastZero(Duration.between(sitting().startedAt(), event.at()));
        Drill begun = withProgress(progress.pausedFor(waited), missingInARow);
        return Step.to(begun.goOn(event.at()), new Effect.Begin(sitting()));
    }

    private Step onPaused(Paused paused, Event event) {
        if (event instanceof Event.Pause) {
            return Step.to(leavePause(paused, event.at()).finished(event.at()));
        }
        if (!(event instanceof Event.Enter)) {
            return Step.to(this);
        }
        Drill resumed = leavePause(paused, event.at());
        Phase phaseAgain = paused.resumed();
        if (phaseAgain instanceof Asking asking) {
            phaseAgain = asking.afterPause();
        } else if (phaseAgain instanceof Right right) {
            phaseAgain = new Right(right.answer(), event.at().plus(RIGHT_STANDS));
        }
        return Step.to(resumed.with(phaseAgain));
    }

    private Drill leavePause(Paused paused, Instant at) {
        return withProgress(progress.pausedFor(atLeastZero(Duration.between(paused.since(), at))), 0);
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
            return asking.typed().isEmpty() && !mayAskToBeShown(asking, enter.at())
                    ? Step.to(this)
                    : answered(asking, enter.at(), false);
        }
        boolean waitedEnough = asking.lastKeyAt()
                .filter(key -> Duration.between(key, event.at())
                                .compareTo(progress.steering().settings().calm())
                        >= 0)
                .isPresent();
        return event instanceof Event.Tick && waitedEnough ? answered(asking, event.at(), true) : Step.to(this);
    }

    /** Enter with nothing typed asks to be shown the answer, unless it is the tail of the key before. */
    private static boolean mayAskToBeShown(Asking asking, Instant at) {
        return !asking.isInView()
                && asking.shownAt()
                        .filter(s -> Duration.between(s, at).compareTo(SHOW_ME_AFTER) >= 0)
                        .isPresent();
    }

    private Step answered(Asking asking, Instant at, boolean waitedFor) {
        Answer answer = Answering.answer(asking, at, progress.drill().orElseThrow(), surface);
        // Digits that nobody ended with Enter are an absence as well: a book may lie on the keys.
        int missing = waitedFor ? missingInARow + 1 : 0;
        Drill after = withProgress(progress.after(answer), missing);
        return Step.to(after.follow(asking, answer, at), new Effect.Keep(answer));
    }

    private Drill follow(Asking asking, Answer answer, Instant at) {
        if (missingInARow >= 2) {
            return with(new Paused(afterAnswer(asking, answer, at).phase, at, true));
        }
        return afterAnswer(asking, answer, at);
    }

    private Drill afterAnswer(Asking asking, Answer answer, Instant at) {
        if (answer.isCorrect()) {
            return with(new Right(answer, at.plus(RIGHT_STANDS)));
        }
        if (asking.isInView()) {
            boolean again = asking.tries() + 1 < MOST_TRIES;
            return again ? with(asking.onceMore()) : goOn(at);
        }
        Reason reason = answer.isMissing() ? Reason.SHOWN : Reason.PUTTING_RIGHT;
        return with(Asking.fresh(asking.prompt(), Purpose.INTRODUCE, reason));
    }

    /** To the next thing: another number to copy, another fact of a new family, or the scheduler's next turn. */
    private Drill goOn(Instant at) {
        if (!toCopy.isEmpty()) {
            Prompt next = toCopy.get(0);
            return new Drill(
                    before,
                    progress,
                    scheduler,
                    surface,
                    toCopy.subList(1, toCopy.size()),
                    toMeet,
                    missingInARow,
                    Asking.fresh(next, Purpose.COPY, Reason.WARMING_UP));
        }
        if (!toMeet.isEmpty()) {
            return typeNextFact(toMeet.get(0).family(), at);
        }
        Optional<Turn> turn = scheduler.next(progress, at, sitting().seed());
        if (turn.isEmpty()) {
            return finished(at);
        }
        Question question = turn.get().question();
        if (turn.get().purpose() == Purpose.INTRODUCE) {
            return meeting(question.family());
        }
        return with(Asking.fresh(question, turn.get().purpose(), Reason.RECALL));
    }

    private Drill meeting(Family family) {
        return new Drill(
                before, progress, scheduler, surface, toCopy, family.questions(), missingInARow, new Meeting(family));
    }

    private Drill typeNextFact(Family family, Instant at) {
        if (toMeet.isEmpty() || !toMeet.get(0).family().equals(family)) {
            return goOn(at);
        }
        return new Drill(
                before,
                progress,
                scheduler,
                surface,
                toCopy,
                toMeet.subList(1, toMeet.size()),
                missingInARow,
                Asking.fresh(toMeet.get(0), Purpose.INTRODUCE, Reason.MEETING));
    }

    private Drill finished(Instant at) {
        return with(new Finished(Summary.of(before, progress, at)));
    }

    private Drill with(Phase next) {
        return new Drill(before, progress, scheduler, surface, toCopy, toMeet, missingInARow, next);
    }

    private Drill withProgress(Progress next, int missing) {
        return new Drill(before, next, scheduler, surface, toCopy, toMeet, missing, phase);
    }

    static Duration atLeastZero(Duration duration) {
        return duration.isNegative() ? Duration.ZERO : duration;
    }
}
