package fourfold.drill;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.facts.Operation;
import fourfold.facts.Question;
import fourfold.facts.Trace;
import fourfold.log.ActionRecord;
import fourfold.log.Answer;
import fourfold.log.ParentAction;
import fourfold.log.Purpose;
import fourfold.progress.Mastery;
import fourfold.progress.Progress;
import fourfold.scheduling.LastingGain;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.Test;

/** Guards against a division that comes before its product is accurate where the parent wants divisions later. */
class DivisionsLaterTest {
    private static final Instant START = Instant.parse("2026-03-02T08:00:00Z");

    @Test
    void aDivisionWaitsUntilItsProductIsAccurateAndThenComes() {
        List<ActionRecord> acts = List.of(new ActionRecord(
                new UUID(9, 9), new UUID(1, 1), START, 0, new ParentAction.Choose("divisions", "later")));
        Player player = new Player(new LastingGain(), Progress.of(acts, List.of()), START);
        Progress progress = player.progress();
        int divisions = 0;
        List<Answer> first = new ArrayList<>();
        for (int day = 0; day < 6; day++) {
            List<Answer> drill = player.drill(5, day, (prompt, purpose, position) -> {
                boolean guesses = purpose == Purpose.PROBE;
                return new Player.Reply(Integer.toString(prompt.expected() + (guesses ? 1 : 0)), 1500);
            });
            first = day == 0 ? drill : first;
            for (Answer answer : drill) {
                boolean division = answer.question()
                        .filter(q -> q.operation() == Operation.DIVIDE)
                        .isPresent();
                if (division) {
                    Question question = answer.question().orElseThrow();
                    Mastery product =
                            progress.mastery(Trace.product(question.family())).level();
                    assertTrue(product.atLeast(Mastery.ACCURATE), question + " came while its product was " + product);
                    divisions++;
                }
                progress = progress.after(answer);
            }
            player.rest(Duration.ofDays(1));
        }
        // Two families are taught, and a child that knows nothing untaught has no more to practise.
        assertTrue(first.size() > 15, "the first day has products enough: " + first.size());
        assertEquals(
                List.of(),
                first.stream()
                        .filter(a -> a.question()
                                .filter(q -> q.operation() == Operation.DIVIDE)
                                .isPresent())
                        .toList());
        assertTrue(divisions > 20, "divisions: " + divisions);
    }
}
