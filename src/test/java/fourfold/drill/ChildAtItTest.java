// SPDX-License-Identifier: Apache-2.0
package fourfold.drill;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.drill.Phase.Asking;
import fourfold.drill.Phase.HandsOff;
import fourfold.drill.Phase.Reason;
import fourfold.facts.Families;
import fourfold.facts.Family;
import fourfold.facts.MissingFactor;
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
import fourfold.progress.Rates;
import fourfold.progress.Steering;
import fourfold.scheduling.Turn;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.junit.jupiter.api.Test;

/** Guards against a drill that is deaf to how the child is at it: mashing, racing, a minute that is no minute. */
class ChildAtItTest {
    private static final Instant START = Instant.parse("2026-03-02T08:00:00Z");

    private final List<Answer> kept = new ArrayList<>();
    private Instant now = START;
    private Drill drill = begun(Progress.blank(Steering.NONE), List.of(Question.product(7, 8)), true);

    /** A drill whose scheduler asks these questions over and over, or only once. */
    private Drill begun(Progress progress, List<Question> questions, boolean forEver) {
        DrillSession session = new DrillSession(new UUID(2, 2), new UUID(1, 1), now, 60, Duration.ofMinutes(5), 7);
        Drill ready = Drill.ready(
                progress,
                session,
                (p, at, seed) -> {
                    int turns = p.drill().orElseThrow().turns();
                    return !forEver && turns >= questions.size()
                            ? Optional.empty()
                            : Optional.of(new Turn(questions.get(turns % questions.size()), Purpose.PRACTISE));
                },
                Surface.TERMINAL);
        drill = ready;
        on(new Event.Enter(now));
        while (drill.phase() instanceof Asking asking && asking.purpose() == Purpose.COPY) {
            give(Integer.toString(asking.prompt().expected()), 600);
        }
        kept.clear();
        return drill;
    }

    private static Progress with(String setting, String value, List<Answer> answers) {
        ActionRecord act =
                new ActionRecord(new UUID(9, 9), new UUID(1, 1), START, 60, new ParentAction.Choose(setting, value));
        return Progress.of(List.of(act), answers);
    }

    private void on(Event event) {
        Step step = drill.on(event);
        for (Effect effect : step.effects()) {
            if (effect instanceof Effect.Keep keep) {
                kept.add(keep.answer());
            }
        }
        drill = step.next();
    }

    /** Types an answer whose first key comes after so many milliseconds, and lets a right one stand. */
    private void give(String digits, long millis) {
        on(new Event.Painted(now));
        now = now.plusMillis(millis);
        for (char c : digits.toCharArray()) {
            on(new Event.Digit(c - '0', now));
        }
        now = now.plusMillis(100);
        on(new Event.Enter(now));
        if (drill.phase() instanceof Phase.Right right) {
            now = right.until();
            on(new Event.Tick(now));
        }
    }

    private void strays(int count, long apart) {
        for (int i = 0; i < count; i++) {
            now = now.plusMillis(apart);
            on(new Event.Stray(now));
        }
    }

    @Test
    void aChildWhoMashesKeysIsAskedAndOnlyQuietHandsGoOn() {
        on(new Event.Painted(now));
        strays(10, 60);
        assertInstanceOf(HandsOff.class, drill.phase());
        now = now.plusMillis(200);
        on(new Event.Enter(now));
        assertInstanceOf(HandsOff.class, drill.phase(), "an Enter out of the mashing is no answer to the question");
        now = now.plus(HandsOff.REST);
        on(new Event.Enter(now));
        assertTrue(assertInstanceOf(Asking.class, drill.phase()).interrupted(), "and the question is no longer timed");
        assertEquals(List.of(), kept);
    }

    @Test
    void slowStrayKeysAreNoMashing() {
        on(new Event.Painted(now));
        strays(40, 500);
        assertInstanceOf(Asking.class, drill.phase());
    }

    @Test
    void threeAnswersThatNobodyCanHaveReadAreAskedAbout() {
        for (int i = 0; i < 3; i++) {
            assertInstanceOf(Asking.class, drill.phase());
            give("1", 50);
        }
        assertInstanceOf(HandsOff.class, drill.phase());
        on(new Event.Pause(now));
        assertTrue(drill.isFinished(), "a child who does not want to go on may stop there");
    }

    @Test
    void racingWithErrorsIsSlowedByOneSentence() {
        give("54", 500);
        give("56", 900);
        assertEquals(
                Reason.RECALL, assertInstanceOf(Asking.class, drill.phase()).reason());
        give("54", 500);
        give("56", 900);
        assertEquals(
                Reason.NO_HURRY, assertInstanceOf(Asking.class, drill.phase()).reason());
        give("56", 900);
        assertEquals(
                Reason.RECALL, assertInstanceOf(Asking.class, drill.phase()).reason(), "it is said once");
    }

    @Test
    void errorsThatWereThoughtOverAreNoRacing() {
        for (int i = 0; i < 4; i++) {
            give("54", 1500);
            give("56", 900);
            assertEquals(
                    Reason.RECALL, assertInstanceOf(Asking.class, drill.phase()).reason());
        }
    }

    @Test
    void everyThirdDivisionOrSoHidesAFactorWhereTheParentWantsIt() {
        Question division = Question.quotient(Family.of(7, 8), 7);
        Progress progress = with("missing", "yes", List.of());
        drill = begun(progress, List.of(division, Question.product(3, 4)), true);
        for (int i = 0; i < 60; i++) {
            give(
                    Integer.toString(assertInstanceOf(Asking.class, drill.phase())
                            .prompt()
                            .expected()),
                    1500);
        }
        List<Answer> divisions = kept.stream()
                .filter(a -> a.question().orElseThrow().equals(division))
                .toList();
        long hidden = divisions.stream()
                .filter(a -> a.prompt() instanceof MissingFactor)
                .count();
        assertEquals(30, divisions.size());
        assertTrue(hidden >= 5 && hidden <= 15, "hidden: " + hidden);
        assertTrue(divisions.stream().allMatch(Answer::isCorrect));
        assertTrue(kept.stream().noneMatch(a -> a.prompt() instanceof MissingFactor m && m.known() == 3));
    }

    @Test
    void withoutThatChoiceNoFactorIsHidden() {
        drill = begun(drill.progress(), List.of(Question.quotient(Family.of(7, 8), 7)), true);
        for (int i = 0; i < 30; i++) {
            give("8", 1500);
        }
        assertTrue(kept.stream().noneMatch(a -> a.prompt() instanceof MissingFactor));
    }

    /** Two days of right answers to the tables of 2 and 5: 19 accurate products. */
    private static List<Answer> accurate() {
        List<Answer> answers = new ArrayList<>();
        for (int day = 5; day >= 1; day--) {
            int position = 1;
            for (Family family : Families.all()) {
                if (family.contains(2) || family.contains(5)) {
                    for (Question question : family.questions()) {
                        Instant at = START.minus(Duration.ofDays(day)).plusSeconds(10L * position);
                        answers.add(new Answer(
                                new Answer.Place(new UUID(1, 1), new UUID(3, day), position++),
                                new Moment(at, 60),
                                Purpose.PRACTISE,
                                question,
                                new Answer.Typing(
                                        Integer.toString(question.expected()),
                                        new Answer.Times(
                                                Optional.of(Duration.ofSeconds(1)), Optional.of(Duration.ofSeconds(2))),
                                        0),
                                Surface.TERMINAL));
                    }
                }
            }
        }
        return answers;
    }

    @Test
    void aMinuteIsOfferedOnAccurateFactsAndCountsDigits() {
        Progress progress = with("timing", "minute", accurate());
        drill = begun(progress, List.of(Question.product(2, 5)), false);
        give("10", 1500);
        Operation operation =
                assertInstanceOf(Phase.OneMinute.class, drill.phase()).operation();
        on(new Event.Enter(now));
        kept.clear();
        while (drill.phase() instanceof Asking asking) {
            assertEquals(Purpose.TIMED, asking.purpose());
            assertTrue(
                    accurateIn(progress, asking.question().orElseThrow()),
                    asking.prompt().toString());
            // Every tenth answer wrong; each takes 2.4 seconds in all.
            int off = kept.size() % 10 == 9 ? 1 : 0;
            give(Integer.toString(asking.prompt().expected() + off), 2300);
        }
        // 25 answers of 2.4 s fill the minute; two of them were wrong.
        assertEquals(25, kept.size());
        Summary summary = assertInstanceOf(Phase.Finished.class, drill.phase()).summary();
        Summary.Timed timed = summary.timing().orElseThrow();
        assertEquals(operation, timed.operation());
        assertEquals(23, timed.rates().factsPerMinute(), 1e-9);
        int digits = kept.stream()
                .mapToInt(a -> Rates.digitsCorrect(a.typed(), a.prompt().expected()))
                .sum();
        assertEquals(digits, timed.rates().digitsPerMinute(), 1e-9);
        assertEquals(1, summary.answers().asked(), "the drill's own answers are counted apart from the minute");
    }

    private static boolean accurateIn(Progress progress, Question question) {
        return progress.mastery(question.traceIndex()).level().atLeast(fourfold.progress.Mastery.ACCURATE);
    }

    @Test
    void theMinuteMayBeLeftOutAndIsNeverOfferedUnasked() {
        drill = begun(with("timing", "minute", accurate()), List.of(Question.product(2, 5)), false);
        give("10", 1500);
        on(new Event.Pause(now));
        assertTrue(drill.isFinished());
        drill = begun(Progress.of(List.of(), accurate()), List.of(Question.product(2, 5)), false);
        give("10", 1500);
        assertTrue(drill.isFinished(), "timing is off by default");
        drill = begun(with("timing", "minute", List.of()), List.of(Question.product(2, 5)), false);
        give("10", 1500);
        assertTrue(drill.isFinished(), "and never taken while nothing is accurate");
        assertFalse(kept.stream().anyMatch(a -> a.purpose() == Purpose.TIMED));
    }

    @Test
    void withoutPicturesAFamilyIsMetWithItsFactsAlone() {
        Progress progress = with("pictures", "no", List.of());
        drill = begun(progress, List.of(Question.product(7, 8)), true);
        give("54", 1500);
        assertEquals(
                Optional.empty(),
                assertInstanceOf(Asking.class, drill.phase()).help().depiction());
    }
}
