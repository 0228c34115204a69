package fourfold.insight;

import fourfold.facts.Families;
import fourfold.facts.Family;
import fourfold.log.Answer;
import java.util.function.Consumer;

/**
 * How far the child's own stairs are filled: by right answers from memory, ever. It counts what was done and nothing
 * takes it away: no error, no pause of weeks, no family begun again, no other setting. How many answers fill a step is our
 * own choice.
 */
public final class LifetimeProgress implements Consumer<Answer> {
    /** How many shades a cell goes through, the empty one counted. */
    public static final int SHADES = 5;

    private static final int[] FILLS_AT = {1, 5, 15, 40};

    private final int[] right = new int[Families.COUNT];

    @Override
    public void accept(Answer answer) {
        if (answer.purpose().isFromMemory() && answer.isCorrect()) {
            right[answer.question().orElseThrow().family().index()]++;
        }
    }

    /** The shade of a family's cell: 0 for empty, then one more at 1, 5, 15 and 40 right answers. */
    public int shade(Family family) {
        int shade = 0;
        while (shade < FILLS_AT.length && right[family.index()] >= FILLS_AT[shade]) {
            shade++;
        }
        return shade;
    }

    /** How many cells are no longer empty. */
    public int begun() {
        return (int) Families.all().stream().filter(f -> shade(f) > 0).count();
    }
}
