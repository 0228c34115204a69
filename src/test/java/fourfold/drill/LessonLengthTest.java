// SPDX-License-Identifier: Apache-2.0
package fourfold.drill;

import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.drill.Phase.Asking;
import fourfold.drill.Phase.Reason;
import fourfold.facts.Families;
import fourfold.facts.Family;
import fourfold.facts.Question;
import fourfold.log.DrillSession;
import fourfold.log.Purpose;
import fourfold.log.Surface;
import fourfold.progress.History;
import fourfold.progress.Progress;
import fourfold.progress.Steering;
import fourfold.scheduling.Scheduler;
import fourfold.scheduling.Turn;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.UUID;
import org.junit.jupiter.api.Test;

/**
 * Guards against a lesson that is a chore, or over before a child has thought. The child looks two seconds at each picture
 * and at each covered fact, and then presses a key every one to two seconds. Both are our own guess at a beginner of eight:
 * no published norm was found. The keys alone come to 15 to 25 s, for the two facts of a square to 8 to 17 s.
 */
class LessonLengthTest {
    private static final Duration LOOK = Duration.ofSeconds(2);

    private final SplittableRandom random = new SplittableRandom(20_261_127);
    private Instant now = Instant.EPOCH;

    /** Whether the drill is in a lesson: the picture, what is copied from it, and what is recalled. */
    private static boolean isLesson(Phase phase) {
        return phase instanceof Phase.Meeting
                || (phase instanceof Asking asking
                        && (asking.reason() == Reason.MEETING || asking.reason() == Reason.COVERED));
    }

    private Drill on(Drill drill, Event event) {
        return drill.on(event).next();
    }

    private void key() {
        now = now.plusMillis(random.nextLong(1_000, 2_001));
    }

    /** One key, one painted question with its keys, or the moment in which "right" stands. */
    private Drill further(Drill drill) {
        if (drill.phase() instanceof Phase.Right right) {
            now = right.until();
            return on(drill, new Event.Tick(now));
        }
        now = now.plus(LOOK);
        if (!(drill.phase() instanceof Asking asking)) {
            key();
            return on(drill, new Event.Enter(now));
        }
        Drill next = on(drill, new Event.Painted(now));
        for (char digit : Integer.toString(asking.prompt().expected()).toCharArray()) {
            key();
            next = on(next, new Event.Digit(digit - '0', now));
        }
        key();
        return on(next, new Event.Enter(now));
    }

    /** The lesson of a family, from its picture to the last fact recalled. */
    private Duration lesson(Family family) {
        now = History.START;
        DrillSession session = new DrillSession(new UUID(2, 1), new UUID(1, 1), now, 0, Duration.ofMinutes(10), 1);
        Question product = Question.product(family.low(), family.high());
        Scheduler teacher = (progress, at, seed) ->
                progress.isMet(family) ? Optional.empty() : Optional.of(new Turn(product, Purpose.INTRODUCE));
        Drill drill = Drill.ready(Progress.blank(Steering.NONE), session, teacher, Surface.TERMINAL);
        while (!(drill.phase() instanceof Phase.Meeting)) {
            drill = further(drill);
        }
        Instant began = now;
        while (isLesson(drill.phase()) || drill.phase() instanceof Phase.Right) {
            drill = further(drill);
        }
        return Duration.between(began, now);
    }

    @Test
    void aLessonTakesTwentyToFortySecondsAtAChildsKeys() {
        for (Family family : Families.all()) {
            double seconds = lesson(family).toMillis() / 1000.0;
            assertTrue(seconds >= (family.isSquare() ? 10 : 20) && seconds <= 40, family + ": " + seconds + " s");
        }
    }
}
