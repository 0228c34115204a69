// SPDX-License-Identifier: Apache-2.0
package fourfold.scheduling;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.facts.Families;
import fourfold.facts.Family;
import fourfold.facts.Operation;
import fourfold.facts.Question;
import fourfold.log.ActionRecord;
import fourfold.log.Answer;
import fourfold.log.DrillSession;
import fourfold.log.Moment;
import fourfold.log.ParentAction;
import fourfold.log.Purpose;
import fourfold.log.Surface;
import fourfold.progress.Progress;
import fourfold.progress.Steering;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.IntSummaryStatistics;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.IntStream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

/** Guards against a missed fact that comes back when it is still in the ear, or when it has long gone again. */
class AskedAgainTest {
    static final Instant START = Instant.parse("2026-03-02T08:00:00Z");
    static final UUID CHILD = new UUID(1, 1);
    /** Others asked before a missed fact comes back, for a child who is usually right then and for one who is not. */
    private static final int USUAL = 8;

    private static final int SOON = 3;

    /** Four days with the tables of 2, 5, 3 and 4, all of it right; the other tables are closed. */
    static Progress.Fold practised() {
        List<ActionRecord> closed = IntStream.of(1, 6, 7, 8, 9, 10)
                .mapToObj(t -> new ActionRecord(new UUID(9, t), CHILD, START, 0, new ParentAction.CloseTable(t)))
                .toList();
        Progress.Fold fold = new Progress.Fold(Steering.of(closed));
        for (int day = 0; day < 4; day++) {
            Instant at = START.plus(Duration.ofDays(day));
            for (Family family : Families.introducedBy(List.of(2, 5, 3, 4))) {
                for (Question question : family.questions()) {
                    at = at.plusSeconds(5);
                    fold.accept(answer(question, Purpose.PRACTISE, at, true));
                }
            }
        }
        return fold;
    }

    /** The same, and then one fact that was missed again and again: second tries make the child. */
    private static Progress practised(int failedAgain) {
        Progress.Fold fold = practised();
        Question hard = Question.product(9, 9);
        Instant at = START.plus(Duration.ofDays(3)).plusSeconds(1000);
        fold.accept(answer(hard, Purpose.PRACTISE, at, false));
        for (int i = 0; i < failedAgain; i++) {
            at = at.plusSeconds(60);
            fold.accept(answer(hard, Purpose.AGAIN, at, false));
        }
        return fold.progress();
    }

    static Answer answer(Question question, Purpose purpose, Instant at, boolean right) {
        return new Answer(
                new Answer.Place(CHILD, new UUID(2, at.getEpochSecond() / 86_400), 1),
                new Moment(at, 0),
                purpose,
                question,
                new Answer.Typing(
                        Integer.toString(question.expected() + (right ? 0 : 1)),
                        new Answer.Times(Optional.of(Duration.ofMillis(1_500)), Optional.of(Duration.ofMillis(2_200))),
                        0),
                Surface.TERMINAL);
    }

    /** How many others come between a miss and the next time that trace is asked, in a drill with one miss. */
    private static int between(Progress before, int missedTurn, long seed) {
        Instant at = START.plus(Duration.ofDays(12));
        Progress progress =
                before.beginning(new DrillSession(new UUID(2, 999), CHILD, at, 0, Duration.ofMinutes(20), seed));
        LastingGain policy = new LastingGain();
        List<Question> asked = new ArrayList<>();
        int missed = -1;
        while (asked.size() < missedTurn + 40) {
            at = at.plusSeconds(6);
            Turn turn = policy.next(progress, at, seed).orElseThrow();
            boolean fromMemory = turn.purpose().isFromMemory();
            boolean miss = fromMemory
                    && missed < 0
                    && turn.purpose() != Purpose.PROBE
                    && asked.size() >= missedTurn
                    && turn.question().operation() == Operation.MULTIPLY;
            if (fromMemory) {
                if (missed >= 0
                        && turn.question().trace().equals(asked.get(missed).trace())) {
                    assertEquals(Purpose.AGAIN, turn.purpose());
                    return asked.size() - missed - 1;
                }
                missed = miss ? asked.size() : missed;
                asked.add(turn.question());
            }
            progress = progress.after(answer(turn.question(), turn.purpose(), at, !miss));
        }
        throw new AssertionError("never asked again: " + asked.get(missed));
    }

    /** How many others come between when the first product from that turn on is missed, for turns 2 to 19. */
    private static IntSummaryStatistics between(Progress progress) {
        return IntStream.range(2, 20).map(turn -> between(progress, turn, turn)).summaryStatistics();
    }

    /** Later only where the rails keep it back: its neighbours were just asked. */
    @Test
    void whoIsUsuallyRightAtASecondTryGetsItAfterEightOthers() {
        IntSummaryStatistics others = between(practised(5));
        assertEquals(USUAL, others.getMin());
        assertTrue(others.getAverage() < 1.5 * USUAL, others::toString);
    }

    @Test
    void whoUsuallyIsNotGetsItAfterThreeOthers() {
        IntSummaryStatistics others = between(practised(15));
        assertEquals(SOON, others.getMin());
        assertTrue(others.getMax() < USUAL, others::toString);
    }

    @Property(tries = 10)
    void theSeedBringsItNoSooner(
            @ForAll @IntRange(min = 2, max = 20) int turn, @ForAll boolean usuallyRight, @ForAll long seed) {
        int others = between(practised(usuallyRight ? 0 : 12), turn, seed);
        assertTrue(others >= (usuallyRight ? USUAL : SOON), others + " others");
    }

    /** Beginning at 0.8, and one twentieth of the way nearer to nought with each failure: 0.8 · 0.95⁹ > 0.5 > 0.8 · 0.95¹⁰. */
    @Test
    void tenFailuresAtASecondTryMakeOneWhoUsuallyIsNot() {
        assertTrue(practised(9).memory().chanceRightAgain() > 0.5);
        assertTrue(practised(10).memory().chanceRightAgain() < 0.5);
        assertTrue(between(practised(9), 2, 1) >= USUAL);
        assertTrue(between(practised(10), 2, 1) < USUAL);
    }
}
