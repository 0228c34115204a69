// SPDX-License-Identifier: Apache-2.0
package fourfold.outlook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.drill.Drill;
import fourfold.facts.Fact;
import fourfold.facts.Question;
import fourfold.log.Answer;
import fourfold.log.DrillSession;
import fourfold.log.Purpose;
import fourfold.progress.Progress;
import fourfold.progress.Settings;
import fourfold.progress.Steering;
import fourfold.scheduling.LastingGain;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.junit.jupiter.api.Test;

/** Guards the times of played drills: they are the real drill's own, not numbers of the simulation's. */
class PlayedDrillTest {
    private static final Instant START = Instant.parse("2026-09-01T15:00:00Z");
    private static final int CALM = 30;

    /** Right, wrong and silent by turns. */
    private static final class ByTurns implements Learner {
        private int asked;

        @Override
        public Reply reply(Question question, Instant askedAt) {
            Duration first = Duration.ofMillis(1_200);
            asked++;
            if (asked % 7 == 0) {
                return new Reply("", first, first);
            }
            int typed = question.expected() + (asked % 5 == 0 ? 1 : 0);
            return new Reply(Integer.toString(typed), first, first.plusMillis(900));
        }

        @Override
        public void shown(Fact fact, Instant at) {}
    }

    @Test
    void aRightAnswerStandsAsLongAsInTheDrillAndHelpComesWhenTheChildsSettingSays() {
        List<Answer> kept = new ArrayList<>();
        Settings calm = Settings.of(Map.of("calm", Integer.toString(CALM)));
        Steering steering = new Steering(
                Set.of(),
                Set.of(),
                Map.of(),
                List.of(),
                Set.of(),
                Steering.NONE.order(),
                calm,
                Steering.NONE.calendar());
        DrillSession session = new DrillSession(new UUID(2, 2), new UUID(1, 1), START, 0, Duration.ofMinutes(8), 5);
        new PlayedDrill(new ByTurns(), new LastingGain(), kept::add).play(Progress.blank(steering), session);
        int right = 0;
        int wrong = 0;
        int silent = 0;
        for (int i = 0; i + 1 < kept.size(); i++) {
            Answer here = kept.get(i);
            Answer next = kept.get(i + 1);
            boolean askedNext = next.purpose().isFromMemory() || next.purpose() == Purpose.COPY;
            Duration gap = Duration.between(here.askedAt(), next.askedAt());
            if (here.isMissing()) {
                assertEquals(Duration.ofSeconds(CALM), gap, () -> here + " then " + next);
                silent++;
            } else if (here.isCorrect() && askedNext) {
                assertEquals(here.whole().orElseThrow().plus(Drill.RIGHT_STANDS), gap, () -> here + " then " + next);
                right++;
            } else if (!here.isCorrect() && here.purpose().isFromMemory()) {
                assertEquals(here.whole().orElseThrow(), gap, () -> here + " then " + next);
                assertEquals(Purpose.INTRODUCE, next.purpose());
                wrong++;
            }
        }
        assertTrue(right > 20 && wrong > 3 && silent > 3, right + " right, " + wrong + " wrong, " + silent + " silent");
    }
}
