// SPDX-License-Identifier: Apache-2.0
package fourfold.progress;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.facts.Families;
import fourfold.facts.Family;
import fourfold.facts.Trace;
import fourfold.log.ActionRecord;
import fourfold.log.Answer;
import fourfold.log.DrillSession;
import fourfold.log.Moment;
import fourfold.log.ParentAction;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.NoSuchElementException;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.UUID;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Guards against a child who stands elsewhere by the whole log than by its answers one after the other. */
class ProgressTest {
    private static final Instant LATER = History.START.plus(Duration.ofDays(30));

    private static History random(long seed) {
        SplittableRandom dice = new SplittableRandom(seed);
        History history = new History();
        for (int i = 0; i < 15; i++) {
            Trace trace = Families.traces().get(dice.nextInt(Trace.COUNT));
            for (int day = dice.nextInt(10); day < 20; day += dice.nextInt(6)) {
                history.asked(trace, day + String.valueOf("rrrswmv".charAt(dice.nextInt(7))));
            }
        }
        return history;
    }

    @Property(tries = 30)
    void theWholeLogOneAnswerAfterTheOtherAndTheLevelsAloneComeToTheSame(@ForAll long seed) {
        List<Answer> answers = random(seed).answers();
        Progress whole = Progress.of(List.of(), answers);
        Progress single = Progress.blank(Steering.NONE);
        Progress.Fold levels = Progress.Fold.ofLevels(Steering.NONE);
        for (Answer answer : answers) {
            single = single.after(answer);
            levels.accept(answer);
        }
        Progress alone = levels.progress();
        for (Trace trace : Families.traces()) {
            assertEquals(whole.mastery(trace).level(), single.mastery(trace).level());
            assertEquals(whole.mastery(trace).level(), alone.mastery(trace).level());
            assertEquals(
                    whole.memory().forecast(trace, LATER).activation(),
                    single.memory().forecast(trace, LATER).activation(),
                    0);
        }
        assertEquals(answers.size(), whole.answers());
        assertEquals(answers.size(), single.answers());
        assertEquals(answers.size(), alone.answers());
        assertEquals(Optional.of(answers.get(answers.size() - 1)), whole.lastAnswer());
        assertEquals(whole.lastAnswer(), single.lastAnswer());
        assertThrows(NoSuchElementException.class, alone::memory);
    }

    @Test
    void answersFromBeforeAFamilyWasBegunAgainDoNotCountAndThoseFromThenOnDo() {
        Family family = Family.of(6, 7);
        History history = new History().asked(family, "0r 0r 0r 1r 1r").asked(Family.of(3, 3), "0r 0r 0r 1r 1r");
        Instant since = History.START.plus(Duration.ofDays(1));
        ActionRecord reset = new ActionRecord(new UUID(3, 1), new UUID(1, 1), since, 0, new ParentAction.Reset(family));
        Progress progress = Progress.of(List.of(reset), history.answers());
        assertEquals(2, progress.mastery(Trace.product(family)).asked());
        assertEquals(Mastery.ACQUIRING, progress.level(family));
        assertEquals(2, progress.memory().presentations(Trace.product(family)));
        assertEquals(Mastery.FLUENT, progress.level(Family.of(3, 3)));
        Progress single = Progress.blank(Steering.of(List.of(reset)));
        for (Answer answer : history.answers()) {
            single = single.after(answer);
        }
        assertEquals(2, single.mastery(Trace.product(family)).asked());
        assertEquals(2, single.memory().presentations(Trace.product(family)));
    }

    @Test
    void theNextNewFamilyIsTheFirstOfTheOrderThatWasNotMetAndOneInFocusComesBeforeIt() {
        List<Family> order = Families.introducedBy(Families.USUAL_ORDER);
        assertEquals(order, new History().progress().introductionOrder());
        History history = new History().asked(order.get(0), "0v").asked(order.get(1), "0v");
        assertEquals(Optional.of(order.get(2)), history.progress().nextNew());
        Family wanted = Family.of(8, 9);
        assertEquals(
                Optional.of(wanted),
                history.progress(new ParentAction.Focus(wanted)).nextNew());
        history.asked(wanted, "0v");
        assertEquals(
                Optional.of(order.get(2)),
                history.progress(new ParentAction.Focus(wanted)).nextNew());
        Families.all().forEach(family -> history.asked(family, "1v"));
        assertEquals(Optional.empty(), history.progress().nextNew());
    }

    @Test
    void familiesAreCountedThatHaveReachedALevelOrMore() {
        Progress progress = new History()
                .asked(Family.of(6, 7), "0r 0r 0r 1r 1r")
                .asked(Family.of(6, 8), "0s 0s 0s 1s")
                .asked(Family.of(6, 9), "0w")
                .progress();
        assertEquals(55, progress.families(Mastery.NEW));
        assertEquals(3, progress.families(Mastery.ACQUIRING));
        assertEquals(2, progress.families(Mastery.ACCURATE));
        assertEquals(1, progress.families(Mastery.FLUENT));
        assertEquals(0, progress.families(Mastery.LASTING));
    }

    /** At 23:30 UTC it is the next day where clocks are an hour ahead, and the same day where they are behind. */
    @ParameterizedTest
    @CsvSource({"60, 1", "30, 1", "29, 0", "0, 0", "-210, 0"})
    void theDayIsThatOfTheDrillThatIsGoingOn(int minutesAhead, int day) {
        Instant evening = Instant.parse("2026-03-02T23:30:00Z");
        DrillSession session =
                new DrillSession(new UUID(2, 2), new UUID(1, 1), evening, minutesAhead, Duration.ofMinutes(8), 1);
        long today = evening.getEpochSecond() / 86_400;
        Progress before = new History().asked(Family.of(6, 7), "0r").progress();
        assertEquals(today + day, before.beginning(session).localDay(evening));
        assertEquals(today, before.localDay(evening));
        assertEquals(today, Progress.blank(Steering.NONE).localDay(evening));
    }

    @Test
    void withoutADrillTheDayIsThatOfTheLastAnswersZone() {
        Answer here = new History().asked(Family.of(6, 7), "0r").answers().get(0);
        Answer ahead = new Answer(
                new Answer.Place(here.child(), here.drill(), 1),
                new Moment(here.askedAt(), 60),
                here.purpose(),
                here.prompt(),
                new Answer.Typing(here.typed(), new Answer.Times(here.firstKey(), here.whole()), 0),
                here.surface());
        Instant evening = Instant.parse("2026-03-02T23:30:00Z");
        long today = evening.getEpochSecond() / 86_400;
        assertEquals(today + 1, Progress.of(List.of(), List.of(ahead)).localDay(evening));
        assertTrue(Progress.of(List.of(), List.of(here)).localDay(evening) == today);
    }
}
