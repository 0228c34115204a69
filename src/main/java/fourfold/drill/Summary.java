package fourfold.drill;

import fourfold.facts.Answer;
import fourfold.facts.Families;
import fourfold.facts.Family;
import fourfold.progress.DrillSoFar;
import fourfold.progress.Progress;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;

/**
 * What a drill came to, compared only with the child's own past.
 *
 * @param practised time practised, pauses left out
 * @param asked questions asked from memory
 * @param right how many of them were right
 * @param families how many families they came from
 * @param met families met for the first time
 * @param firmer families whose level rose
 */
public record Summary(Duration practised, int asked, int right, int families, List<Family> met, List<Family> firmer) {
    public Summary {
        met = List.copyOf(met);
        firmer = List.copyOf(firmer);
    }

    /** The summary of the drill in {@code after}, which began from {@code before}. */
    static Summary of(Progress before, Progress after, Instant at) {
        DrillSoFar drill = after.drill().orElseThrow();
        List<Answer> fromMemory =
                drill.answers().stream().filter(a -> a.purpose().isFromMemory()).toList();
        List<Family> met = new ArrayList<>();
        List<Family> firmer = new ArrayList<>();
        for (Family family : Families.all()) {
            if (!before.isMet(family)) {
                if (after.isMet(family)) {
                    met.add(family);
                }
            } else if (after.level(family).compareTo(before.level(family)) > 0) {
                firmer.add(family);
            }
        }
        return new Summary(
                drill.practised(at),
                fromMemory.size(),
                (int) fromMemory.stream().filter(Answer::isCorrect).count(),
                (int) fromMemory.stream()
                        .flatMap(a -> a.question().stream())
                        .map(q -> q.family())
                        .distinct()
                        .count(),
                met,
                firmer);
    }
}
