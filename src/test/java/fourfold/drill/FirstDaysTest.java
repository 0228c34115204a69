// SPDX-License-Identifier: Apache-2.0
package fourfold.drill;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.facts.Families;
import fourfold.facts.Family;
import fourfold.facts.Operation;
import fourfold.facts.Question;
import fourfold.facts.Trace;
import fourfold.insight.Grid;
import fourfold.log.ActionRecord;
import fourfold.log.Answer;
import fourfold.log.ParentAction;
import fourfold.log.Purpose;
import fourfold.progress.Mastery;
import fourfold.progress.Progress;
import fourfold.progress.Steering;
import fourfold.scheduling.LastingGain;
import java.time.Duration;
import java.time.Instant;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Guards against first days that ask what nobody taught, teach what is known, or go round in a ring. */
class FirstDaysTest {
    private static final Instant START = Instant.parse("2026-03-02T08:00:00Z");
    private static final int MINUTES = 8;

    private final Player player = new Player(new LastingGain(), Progress.blank(Steering.NONE), START);

    private List<Answer> drill(int day, Player.Child child) {
        List<Answer> answers = player.drill(MINUTES, day, child);
        player.rest(Duration.ofHours(23));
        return answers;
    }

    private static Player.Reply right(fourfold.facts.Prompt prompt) {
        return new Player.Reply(Integer.toString(prompt.expected()), 1200);
    }

    private static Player.Reply wrong(fourfold.facts.Prompt prompt) {
        return new Player.Reply(Integer.toString(prompt.expected() + 1), 2500);
    }

    /** What was taught is known, what was not is missed. */
    private static Player.Reply knowsNothing(fourfold.facts.Prompt prompt, Purpose purpose) {
        return purpose == Purpose.PROBE ? wrong(prompt) : right(prompt);
    }

    private static Family family(Answer answer) {
        return answer.question().orElseThrow().family();
    }

    private static List<Answer> fromMemory(List<Answer> answers) {
        return answers.stream().filter(a -> a.purpose().isFromMemory()).toList();
    }

    @Test
    void whoKnowsAllIsAskedAHardFactWithinNinetySecondsAndPlacedInTwoDrills() {
        List<Answer> first = drill(1, (prompt, purpose, position) -> right(prompt));
        Optional<Answer> hard = fromMemory(first).stream()
                .filter(a -> family(a).low() >= 6 && family(a).high() <= 9)
                .findFirst();
        Duration after = Duration.between(START, hard.orElseThrow().askedAt());
        assertTrue(after.compareTo(Duration.ofSeconds(90)) <= 0, after.toString());
        List<Answer> second = drill(2, (prompt, purpose, position) -> right(prompt));
        Set<Trace> asked = new HashSet<>();
        fromMemory(first).forEach(a -> asked.add(a.question().orElseThrow().trace()));
        fromMemory(second).forEach(a -> asked.add(a.question().orElseThrow().trace()));
        for (Family family : Families.all()) {
            assertTrue(asked.contains(Trace.product(family)), "no product of " + family);
            assertTrue(
                    family.traces().stream().anyMatch(t -> t.operation() == Operation.DIVIDE && asked.contains(t)),
                    "no division of " + family);
        }
        assertTrue(first.stream().noneMatch(a -> a.purpose() == Purpose.INTRODUCE), "no lesson for what is known");
        assertTrue(second.stream().noneMatch(a -> a.purpose() == Purpose.INTRODUCE), "nor on the second day");
    }

    @Test
    void aFamilyKnownByTrialIsShownAsSuchUntilItsLevelIsEarned() {
        drill(1, (prompt, purpose, position) -> right(prompt));
        drill(2, (prompt, purpose, position) -> right(prompt));
        Grid grid = Grid.of(player.progress(), player.now());
        assertTrue(grid.cells().stream().filter(Grid.Cell::knownByTrial).count() >= 40, () -> grid.toString());
        for (int day = 3; day <= 12; day++) {
            drill(day, (prompt, purpose, position) -> right(prompt));
        }
        for (Grid.Cell cell : Grid.of(player.progress(), player.now()).cells()) {
            assertFalse(
                    cell.knownByTrial() && cell.level().atLeast(Mastery.ACCURATE),
                    () -> "earned and still marked: " + cell);
        }
        assertTrue(player.progress().families(Mastery.ACCURATE) > 0);
    }

    @Test
    void whoMissesAFactIsNotKnownByTrial() {
        Set<Family> missed = new HashSet<>();
        drill(1, (prompt, purpose, position) -> {
            boolean miss = purpose == Purpose.PROBE && position % 7 == 0;
            if (miss && prompt instanceof Question q) {
                missed.add(q.family());
            }
            return miss ? wrong(prompt) : right(prompt);
        });
        assertFalse(missed.isEmpty());
        for (Family family : missed) {
            assertFalse(player.progress().isKnownByTrial(family), family.toString());
        }
    }

    @Test
    void whoKnowsNothingIsInALessonWithinTwoMinutesThatBeginsWithAFamilyThatExplainsSomething() {
        List<Answer> first = drill(1, (prompt, purpose, position) -> knowsNothing(prompt, purpose));
        List<Answer> lessons = first.stream()
                .filter(a -> a.purpose() == Purpose.INTRODUCE)
                .filter(a -> !family(a).equals(triedBefore(first, a)))
                .toList();
        Answer lesson = lessons.get(0);
        assertEquals(new Family(2, 5), family(lesson));
        Duration after = Duration.between(START, lesson.askedAt());
        assertTrue(after.compareTo(Duration.ofMinutes(2)) <= 0, after.toString());
        assertTrue(
                lessons.stream().map(FirstDaysTest::family).distinct().count() <= 4,
                "as many as give something to ask between");
        assertTrue(
                fromMemory(first).size() >= 25,
                () -> "only " + fromMemory(first).size());
    }

    /** The family missed just before: its product is typed once in view, which is no lesson. */
    private static Family triedBefore(List<Answer> answers, Answer shown) {
        int place = answers.indexOf(shown);
        Answer before = answers.get(Math.max(0, place - 1));
        return before.purpose() == Purpose.PROBE && !before.isCorrect() ? family(before) : new Family(10, 10);
    }

    /** Asked untaught and missed: after two of them only what is all but sure. */
    @Test
    void twoMissesEndTheClimbOfTheDay() {
        List<Answer> first = drill(1, (prompt, purpose, position) -> knowsNothing(prompt, purpose));
        long untaught = first.stream().filter(a -> a.purpose() == Purpose.PROBE).count();
        assertTrue(untaught <= 3, () -> untaught + " questions that nobody taught");
    }

    /** A miss says that one more step up is too far; what it can know below is still asked. */
    @Test
    void aMissOnTheClimbStepsDown() {
        List<Answer> climb = fromMemory(drill(1, (prompt, purpose, position) -> {
                    boolean knows = !(prompt instanceof Question q)
                            || purpose != Purpose.PROBE
                            || q.family().product() <= 30
                            || q.family().contains(10);
                    return knows ? right(prompt) : wrong(prompt);
                }))
                .stream()
                .filter(a -> a.purpose() == Purpose.PROBE
                        && a.question().orElseThrow().operation() == Operation.MULTIPLY)
                .toList();
        int first = climb.indexOf(
                climb.stream().filter(a -> !a.isCorrect()).findFirst().orElseThrow());
        assertTrue(
                climb.get(first + 1).question().orElseThrow().expected()
                        < climb.get(first).question().orElseThrow().expected(),
                () -> climb.get(first).prompt() + " then "
                        + climb.get(first + 1).prompt());
        long misses = climb.stream().filter(a -> !a.isCorrect()).count();
        assertTrue(misses <= climb.size() / 4, () -> misses + " of " + climb.size() + " missed");
    }

    /** A parent who has chosen how many families a drill brings gets no more, on the first day either. */
    @ParameterizedTest
    @ValueSource(ints = {0, 1, 2})
    void whatTheParentChoseIsTheMostOnTheFirstDayToo(int most) {
        ParentAction chosenNumber = new ParentAction.Choose("new", Integer.toString(most));
        Steering steering = Steering.of(
                List.of(new ActionRecord(new UUID(5, 5), new UUID(1, 1), START.minusSeconds(60), 0, chosenNumber)));
        Player chosen = new Player(new LastingGain(), Progress.blank(steering), START);
        List<Answer> first = chosen.drill(MINUTES, 1, (prompt, purpose, position) -> knowsNothing(prompt, purpose));
        Set<Family> taught = new HashSet<>();
        first.stream()
                .filter(a -> a.purpose() == Purpose.INTRODUCE)
                .filter(a -> !family(a).equals(triedBefore(first, a)))
                .forEach(a -> taught.add(family(a)));
        assertTrue(taught.size() <= most, taught.toString());
    }

    /** After a break of weeks the first drill looks round gently: what is surest comes first, and nothing new. */
    @Test
    void aBreakOfWeeksEndsWithAGentleLookRound() {
        for (int day = 1; day <= 12; day++) {
            drill(day, (prompt, purpose, position) -> knowsNothing(prompt, purpose));
        }
        player.rest(Duration.ofDays(42));
        Progress before = player.progress();
        Instant back = player.now();
        List<Answer> asked = fromMemory(drill(60, (prompt, purpose, position) -> knowsNothing(prompt, purpose)));
        assertTrue(asked.stream().noneMatch(a -> a.purpose() == Purpose.PROBE), "nothing new");
        double first = asked.stream()
                .limit(10)
                .mapToDouble(a -> before.memory()
                        .forecast(a.question().orElseThrow().trace(), back)
                        .chanceRight())
                .average()
                .orElseThrow();
        double all = Families.traces().stream()
                .filter(t -> before.mastery(t).asked() > 0)
                .mapToDouble(t -> before.memory().forecast(t, back).chanceRight())
                .average()
                .orElseThrow();
        assertTrue(first > all, first + " at first, " + all + " on the whole");
    }
}
