// SPDX-License-Identifier: Apache-2.0
package fourfold.drill;

import fourfold.drill.Phase.Asking;
import fourfold.drill.Phase.Meeting;
import fourfold.drill.Phase.OneMinute;
import fourfold.drill.Phase.Reason;
import fourfold.facts.Family;
import fourfold.facts.Prompt;
import fourfold.facts.Question;
import fourfold.log.Purpose;
import fourfold.log.Surface;
import fourfold.progress.DrillSoFar;
import fourfold.progress.Hint;
import fourfold.progress.Progress;
import fourfold.scheduling.Scheduler;
import fourfold.scheduling.Turn;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * What the child sees next: what is settled already, else the scheduler's next turn, else a one-minute timing.
 *
 * @param upcoming what is settled to come after it
 * @param attention what is known of the child's attention, with what the new phase says about it
 * @param phase the phase itself; empty if the drill is over
 */
record NextPhase(Upcoming upcoming, AttentionSignals attention, Optional<Phase> phase) {
    /**
     * The next phase of a drill that is going on.
     *
     * @param progress what the child has reached, with the drill that is going on
     * @param at now
     */
    static NextPhase of(
            Progress progress,
            Upcoming upcoming,
            AttentionSignals attention,
            Scheduler scheduler,
            Surface surface,
            Instant at) {
        Optional<NextPhase> settled = settled(upcoming, attention, progress, surface);
        if (settled.isPresent()) {
            return settled.get();
        }
        long seed = progress.drill().orElseThrow().session().seed();
        return scheduler
                .next(progress, at, seed)
                .map(turn -> ofTurn(turn, progress, upcoming, attention, surface))
                .orElseGet(() -> atLast(progress, upcoming, attention, at, seed));
    }

    private static Optional<NextPhase> settled(
            Upcoming upcoming, AttentionSignals attention, Progress progress, Surface surface) {
        if (!upcoming.toCopy().isEmpty()) {
            Asking copy = Asking.fresh(upcoming.toCopy().get(0), Purpose.COPY, Reason.WARMING_UP);
            return Optional.of(new NextPhase(upcoming.afterCopy(), attention, Optional.of(copy)));
        }
        if (!upcoming.toMeet().isEmpty()) {
            // What plain lines have said stays in view above.
            Reason reason = surface == Surface.PLAIN ? Reason.MEETING : Reason.COVERED;
            Help help = Help.with(upcoming.picture());
            Prompt shown = progress.signed(upcoming.toMeet().get(0));
            Asking fact = Asking.fresh(shown, Purpose.INTRODUCE, reason, help);
            return Optional.of(new NextPhase(upcoming.afterMeeting(), attention, Optional.of(fact)));
        }
        if (!upcoming.timed()) {
            return Optional.empty();
        }
        if (upcoming.toTime().isEmpty()
                || OneMinuteTiming.isOver(progress.drill().orElseThrow())) {
            return Optional.of(new NextPhase(upcoming, attention, Optional.empty()));
        }
        Asking timed = Asking.fresh(upcoming.toTime().get(0), Purpose.TIMED, Reason.TIMED);
        return Optional.of(new NextPhase(upcoming.afterTimed(), attention, Optional.of(timed)));
    }

    private static NextPhase ofTurn(
            Turn turn, Progress progress, Upcoming upcoming, AttentionSignals attention, Surface surface) {
        if (turn.purpose() == Purpose.INTRODUCE) {
            Family family = turn.question().family();
            Upcoming meeting = upcoming.meeting(family, progress);
            // Plain lines show the whole picture at once.
            int grown = surface == Surface.PLAIN ? family.low() : Meeting.step(family);
            Meeting shown = new Meeting(
                    family,
                    meeting.picture(),
                    Hint.to(turn.question(), progress),
                    grown,
                    HiddenFactors.signed(family, progress));
            return new NextPhase(meeting, attention, Optional.of(shown));
        }
        DrillSoFar soFar = progress.drill().orElseThrow();
        boolean slowDown = attention.shouldHearThereIsNoHurry(soFar);
        return new NextPhase(
                upcoming,
                slowDown ? attention.said(soFar.turns()) : attention,
                Optional.of(Asking.fresh(
                        HiddenFactors.form(turn.question(), progress),
                        turn.purpose(),
                        slowDown ? Reason.NO_HURRY : Reason.RECALL)));
    }

    /** The planned minutes are over and nothing is owed: a one-minute timing is offered if there is to be one. */
    private static NextPhase atLast(
            Progress progress, Upcoming upcoming, AttentionSignals attention, Instant at, long seed) {
        List<Question> timing = OneMinuteTiming.questions(progress, at, seed);
        return timing.isEmpty()
                ? new NextPhase(upcoming, attention, Optional.empty())
                : new NextPhase(
                        upcoming.timing(timing),
                        attention,
                        Optional.of(new OneMinute(timing.get(0).operation())));
    }
}
