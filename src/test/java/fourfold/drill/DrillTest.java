// SPDX-License-Identifier: Apache-2.0
package fourfold.drill;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.drill.Phase.Asking;
import fourfold.drill.Phase.Finished;
import fourfold.drill.Phase.Meeting;
import fourfold.drill.Phase.Paused;
import fourfold.drill.Phase.Reason;
import fourfold.drill.Phase.Right;
import fourfold.facts.Question;
import fourfold.log.Answer;
import fourfold.log.DrillSession;
import fourfold.log.Purpose;
import fourfold.log.Surface;
import fourfold.progress.Progress;
import fourfold.progress.Steering;
import fourfold.scheduling.Turn;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.UUID;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Guards against a drill that judges, times or repeats wrongly, told as what a child does and what follows. */
class DrillTest {
    private static final Instant START = Instant.parse("2026-03-02T08:00:00Z");

    private final Deque<Turn> script = new ArrayDeque<>();
    private final List<Effect> effects = new ArrayList<>();
    private Instant now = START;
    private Drill drill = ready();

    private Drill ready() {
        DrillSession session = new DrillSession(new UUID(2, 2), new UUID(1, 1), START, 60, Duration.ofMinutes(5), 7);
        return Drill.ready(
                Progress.blank(Steering.NONE),
                session,
                (progress, at, seed) -> Optional.ofNullable(script.poll()),
                Surface.TERMINAL);
    }

    @BeforeEach
    void pastTheNumbersToCopy() {
        script.add(new Turn(Question.product(7, 8), Purpose.PRACTISE));
        script.add(new Turn(Question.product(3, 4), Purpose.PRACTISE));
        script.add(new Turn(Question.product(2, 9), Purpose.PRACTISE));
        on(new Event.Enter(now));
        while (drill.phase() instanceof Asking asking && asking.purpose() == Purpose.COPY) {
            shown();
            type(Integer.toString(asking.prompt().expected()), 500);
            enter(300);
            rest(600);
        }
        effects.clear();
    }

    @Test
    void aRightAnswerIsKeptWithItsTimesAndStandsForAMoment() {
        shown();
        type("56", 1200);
        enter(400);
        Answer answer = kept();
        assertTrue(answer.isCorrect());
        assertEquals(Optional.of(Duration.ofMillis(1200)), answer.firstKey());
        assertEquals(Optional.of(Duration.ofMillis(2400 + 400)), answer.whole());
        assertEquals("56", answer.typed());
        assertEquals(11, answer.position(), "ten numbers to copy came before");
        assertInstanceOf(Right.class, drill.phase());
        rest(299);
        assertInstanceOf(Right.class, drill.phase());
        rest(1);
        assertEquals(Question.product(3, 4), asking().prompt());
    }

    @Test
    void anErrorIsFollowedByTheRightFactInViewTypedOnce() {
        shown();
        type("54", 1000);
        enter(100);
        assertFalse(kept().isCorrect());
        assertEquals(Reason.PUTTING_RIGHT, asking().reason());
        assertTrue(asking().isInView());
        shown();
        type("56", 500);
        enter(100);
        Answer typedInView = kept();
        assertEquals(Purpose.INTRODUCE, typedInView.purpose());
        rest(600);
        assertEquals(Question.product(3, 4), asking().prompt());
    }

    @Test
    void aSlipWhileTypingWhatIsInViewMayBeMendedAndNeverTrapsTheChild() {
        shown();
        type("54", 1000);
        enter(100);
        for (int i = 0; i < 3; i++) {
            shown();
            type("5", 300);
            enter(100);
        }
        assertEquals(Question.product(3, 4), asking().prompt());
    }

    @Test
    void digitsCanBeTakenBackAndTheFirstKeyStaysTheFirst() {
        shown();
        type("54", 1000);
        on(new Event.Erase(later(200)));
        type("6", 300);
        enter(100);
        Answer answer = kept();
        assertTrue(answer.isCorrect());
        assertEquals(1, answer.erasures());
        assertEquals(Optional.of(Duration.ofSeconds(1)), answer.firstKey());
    }

    @Test
    void erasingNothingIsNoErasure() {
        shown();
        on(new Event.Erase(later(200)));
        type("56", 300);
        enter(100);
        assertEquals(0, kept().erasures());
    }

    @Test
    void twelveDigitsAreCutToFour() {
        shown();
        type("123456789012", 100);
        enter(100);
        assertEquals("1234", kept().typed());
    }

    @Test
    void keysBeforeThePromptIsOnTheScreenDoNothing() {
        type("56", 100);
        enter(100);
        assertTrue(effects.isEmpty());
        assertEquals("", asking().typed());
    }

    @Test
    void enterWithNothingTypedIsIgnoredAtFirstAndLaterShowsTheAnswer() {
        shown();
        enter(300);
        assertTrue(effects.isEmpty());
        enter(1500);
        assertTrue(kept().isMissing());
        assertEquals(Reason.SHOWN, asking().reason());
    }

    @Test
    void afterTheCalmLimitWithoutAKeyTheAnswerIsShownAndCountsWhenTheChildTypesIt() {
        shown();
        rest(19_999);
        assertEquals(Reason.RECALL, asking().reason());
        rest(1);
        assertEquals(Reason.SHOWN, asking().reason());
        assertTrue(effects.isEmpty(), "the child may have gone");
        shown();
        type("56", 2000);
        enter(100);
        List<Answer> kept =
                effects.stream().map(e -> ((Effect.Keep) e).answer()).toList();
        assertEquals(2, kept.size());
        assertTrue(kept.get(0).isMissing());
        assertTrue(kept.get(0).firstKey().isEmpty());
        assertEquals(Purpose.INTRODUCE, kept.get(1).purpose());
        assertEquals(kept.get(0).position() + 1, kept.get(1).position());
    }

    @Test
    void aChildWhoWalksAwayIsNotCountedAsNotKnowing() {
        shown();
        rest(20_000);
        shown();
        rest(20_000);
        assertTrue(assertInstanceOf(Paused.class, drill.phase()).byItself());
        assertTrue(effects.isEmpty());
        now = now.plusSeconds(900);
        enter(0);
        assertEquals(Reason.RECALL, asking().reason(), "the same question waits");
        shown();
        type("56", 1000);
        enter(100);
        assertTrue(kept().isCorrect());
        assertTrue(kept().whole().isEmpty(), "and its time says nothing");
    }

    @Test
    void digitsThatNobodyEndedWithEnterWaitInAPause() {
        shown();
        type("5", 1000);
        rest(20_000);
        assertTrue(assertInstanceOf(Paused.class, drill.phase()).byItself());
        assertTrue(effects.isEmpty());
        enter(100);
        assertEquals("5", asking().typed());
    }

    @Test
    void whatManyKeysAtOnceHaveTypedIsWiped() {
        shown();
        type("1234", 400);
        for (int i = 0; i < 12; i++) {
            on(new Event.Digit(7, later(30)));
        }
        assertInstanceOf(Phase.HandsOff.class, drill.phase());
        enter(1500);
        assertEquals("", asking().typed());
        assertTrue(effects.isEmpty());
    }

    @Test
    void aPauseHidesTheQuestionStopsTheClockAndVoidsTheTime() {
        shown();
        type("5", 1000);
        on(new Event.Pause(later(100)));
        assertInstanceOf(Paused.class, drill.phase());
        Duration before = drill.progress().drill().orElseThrow().practised(now);
        now = now.plusSeconds(600);
        enter(0);
        assertEquals(before, drill.progress().drill().orElseThrow().practised(now));
        assertEquals("5", asking().typed(), "what was typed stands there again");
        shown();
        type("6", 700);
        enter(100);
        Answer answer = kept();
        assertTrue(answer.isCorrect());
        assertTrue(answer.firstKey().isEmpty() && answer.whole().isEmpty(), "the child had time to think in the pause");
    }

    @Test
    void leavingEarlyKeepsWhatWasAnswered() {
        shown();
        type("56", 1000);
        enter(100);
        on(new Event.Pause(later(10)));
        on(new Event.Pause(later(10)));
        assertInstanceOf(Finished.class, drill.phase());
        assertEquals(1, effects.stream().filter(Effect.Keep.class::isInstance).count());
        assertEquals(1, ((Finished) drill.phase()).summary().answers().right());
    }

    @Test
    void aNewFamilyIsShownInThreeStepsCoveredAndRecalled() {
        script.clear();
        script.add(new Turn(Question.product(7, 8), Purpose.INTRODUCE));
        shown();
        type("56", 1000);
        enter(100);
        rest(600);
        assertEquals(
                "7x8", assertInstanceOf(Meeting.class, drill.phase()).family().toString());
        effects.clear();
        for (int rows : new int[] {3, 6, 7}) {
            assertEquals(rows, assertInstanceOf(Meeting.class, drill.phase()).grown(), "at the child's own key");
            enter(1000);
        }
        for (String typed : List.of("56", "56", "8", "7")) {
            assertEquals(Reason.COVERED, asking().reason());
            assertFalse(asking().isInView());
            shown();
            type(typed, 800);
            enter(100);
            rest(600);
        }
        assertEquals(4, effects.size());
        assertTrue(effects.stream().allMatch(e -> ((Effect.Keep) e).answer().purpose() == Purpose.INTRODUCE));
        assertTrue(drill.isFinished(), "the script has no further turn");
    }

    @Test
    void whatIsNotRecalledInALessonIsComparedAndTypedOnce() {
        script.clear();
        script.add(new Turn(Question.product(7, 7), Purpose.INTRODUCE));
        shown();
        type("56", 1000);
        enter(100);
        rest(600);
        while (drill.phase() instanceof Meeting) {
            enter(1000);
        }
        shown();
        type("42", 800);
        enter(100);
        assertEquals(Reason.PUTTING_RIGHT, asking().reason());
        assertEquals(42, asking().help().mixup().orElseThrow().typed());
        shown();
        type("49", 800);
        enter(100);
        rest(600);
        assertEquals("49 ÷ 7", asking().prompt().toString().replace(":", "÷"), "no fact is copied twice in a row");
    }

    @Test
    void theSameEventTwiceGivesTheSameStep() {
        shown();
        Event event = new Event.Digit(5, later(10));
        assertEquals(drill.on(event).next().phase(), drill.on(event).next().phase());
    }

    /** Whatever is pressed, in whatever order: no exception, positions without gaps, times never negative. */
    @Property(tries = 200)
    void noSequenceOfEventsBreaksTheDrill(@ForAll long seed) {
        SplittableRandom dice = new SplittableRandom(seed);
        Drill any = Drill.ready(
                Progress.blank(Steering.NONE),
                new DrillSession(new UUID(2, 3), new UUID(1, 1), START, 0, Duration.ofMinutes(5), seed),
                new fourfold.scheduling.LastingGain(),
                Surface.TERMINAL);
        Instant at = START;
        int position = 0;
        for (int i = 0; i < 400; i++) {
            at = at.plusMillis(dice.nextInt(0, 4000));
            Event event = switch (dice.nextInt(12)) {
                case 0 -> new Event.Pause(at);
                case 1, 2 -> new Event.Tick(at);
                case 3 -> new Event.Erase(at);
                case 4, 5, 6 -> new Event.Enter(at);
                case 7, 8 -> new Event.Painted(at);
                default -> new Event.Digit(dice.nextInt(10), at);
            };
            Step step = any.on(event);
            for (Effect effect : step.effects()) {
                if (effect instanceof Effect.Keep keep) {
                    assertEquals(++position, keep.answer().position());
                }
            }
            any = step.next();
        }
    }

    private void on(Event event) {
        Step step = drill.on(event);
        effects.addAll(step.effects());
        drill = step.next();
    }

    private Instant later(long millis) {
        now = now.plusMillis(millis);
        return now;
    }

    private void shown() {
        on(new Event.Painted(now));
    }

    private void type(String digits, long eachMillis) {
        for (int i = 0; i < digits.length(); i++) {
            on(new Event.Digit(digits.charAt(i) - '0', later(eachMillis)));
        }
    }

    private void enter(long millis) {
        on(new Event.Enter(later(millis)));
    }

    private void rest(long millis) {
        on(new Event.Tick(later(millis)));
    }

    private Asking asking() {
        return assertInstanceOf(Asking.class, drill.phase());
    }

    private Answer kept() {
        return effects.stream()
                .filter(Effect.Keep.class::isInstance)
                .map(e -> ((Effect.Keep) e).answer())
                .reduce((a, b) -> b)
                .orElseThrow();
    }
}
