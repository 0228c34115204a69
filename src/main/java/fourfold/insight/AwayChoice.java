// SPDX-License-Identifier: Apache-2.0
package fourfold.insight;

import fourfold.facts.Families;
import fourfold.facts.Family;
import fourfold.facts.Operation;
import fourfold.facts.Question;
import fourfold.facts.Trace;
import fourfold.progress.FactMastery;
import fourfold.progress.Hint;
import fourfold.progress.Mastery;
import fourfold.progress.Progress;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * A family that most needs a few minutes away from the screen, and a way to it.
 *
 * @param family the family
 * @param weakest the question of it that is weakest
 * @param hint a way to its product, or to the division if that is what is weak, from what the child knows
 */
public record AwayChoice(Family family, Question weakest, Optional<Hint> hint) {
    /** The most families that are named. */
    public static final int MOST = 4;

    /** The families met and not yet fluent, or fading, that need it most: lowest level first, then fewest right. */
    public static List<AwayChoice> of(Progress progress, Grid grid) {
        return grid.cells().stream()
                .filter(c -> c.level() != Mastery.NEW && !c.held() && c.asked() > 0)
                .filter(c -> !c.level().atLeast(Mastery.FLUENT) || c.fading())
                .sorted(Comparator.comparing(Grid.Cell::level)
                        .thenComparingDouble(c -> (double) c.right() / c.asked())
                        .thenComparing(Grid.Cell::family))
                .limit(MOST)
                .map(c -> of(progress, c.family()))
                .toList();
    }

    private static AwayChoice of(Progress progress, Family family) {
        Trace weakest = family.traces().stream()
                .min(Comparator.comparing((Trace t) -> progress.mastery(t).level())
                        .thenComparingDouble(t -> share(progress.mastery(t))))
                .orElseThrow();
        Question question = weakest.questions().get(0);
        Question product = Question.product(family.low(), family.high());
        Optional<Hint> hint = Hint.to(product, progress);
        boolean division = question.operation() == Operation.DIVIDE
                && progress.mastery(Trace.product(family)).level().atLeast(Mastery.ACCURATE);
        return new AwayChoice(family, question, division || hint.isEmpty() ? inverse(question, division, hint) : hint);
    }

    private static Optional<Hint> inverse(Question question, boolean division, Optional<Hint> otherwise) {
        return division ? Hint.to(question, family -> Families.all().contains(family)) : otherwise;
    }

    private static double share(FactMastery mastery) {
        return mastery.asked() == 0 ? 0 : (double) mastery.right() / mastery.asked();
    }
}
