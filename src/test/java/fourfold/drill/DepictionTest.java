// SPDX-License-Identifier: Apache-2.0
package fourfold.drill;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import fourfold.facts.Families;
import fourfold.facts.Family;
import fourfold.facts.Question;
import fourfold.log.Answer;
import fourfold.log.Moment;
import fourfold.log.Purpose;
import fourfold.log.Surface;
import fourfold.progress.Progress;
import fourfold.progress.Steering;
import java.time.Duration;
import java.time.Instant;
import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.junit.jupiter.api.Test;

/** Guards against a child who meets a fact in one picture only. */
class DepictionTest {
    private static final Instant START = Instant.parse("2026-03-02T08:00:00Z");

    static Answer answer(Question question, Purpose purpose, String typed, int position, Instant at) {
        return new Answer(
                new Answer.Place(new UUID(1, 1), new UUID(2, at.getEpochSecond()), position),
                new Moment(at, 60),
                purpose,
                question,
                new Answer.Typing(
                        typed,
                        new Answer.Times(
                                typed.isEmpty() ? Optional.empty() : Optional.of(Duration.ofSeconds(1)),
                                Optional.of(Duration.ofSeconds(2))),
                        0),
                Surface.TERMINAL);
    }

    @Test
    void introductionAndErrorsOnLaterDaysShowAllThreeInTurn() {
        for (Family family : Families.all()) {
            Progress progress = Progress.blank(Steering.NONE);
            Set<Depiction> seen = EnumSet.of(Depiction.of(progress, family));
            int position = 1;
            for (Question question : family.questions()) {
                String right = Integer.toString(question.expected());
                progress = progress.after(answer(question, Purpose.INTRODUCE, right, position++, START));
            }
            Depiction before = Depiction.of(progress, family);
            seen.add(before);
            for (int day = 1; day <= 4; day++) {
                Question question =
                        family.questions().get(day % family.questions().size());
                Instant at = START.plus(Duration.ofDays(day));
                progress = progress.after(answer(question, Purpose.PRACTISE, "", position++, at));
                assertNotEquals(before, Depiction.of(progress, family), family + " on day " + day);
                before = Depiction.of(progress, family);
                seen.add(before);
            }
            assertEquals(EnumSet.allOf(Depiction.class), seen, family.toString());
        }
    }

    @Test
    void familiesThatAreNewOnOneDayBeginWithDifferentPictures() {
        assertNotEquals(Depiction.of(Family.of(6, 7), 0), Depiction.of(Family.of(7, 7), 0));
        assertEquals(
                EnumSet.allOf(Depiction.class),
                Families.inTable(7).stream()
                        .map(f -> Depiction.of(f, 0))
                        .collect(java.util.stream.Collectors.toCollection(() -> EnumSet.noneOf(Depiction.class))));
    }
}
