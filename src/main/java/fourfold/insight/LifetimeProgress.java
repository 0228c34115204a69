package fourfold.insight;

import fourfold.facts.Families;
import fourfold.facts.Family;
import fourfold.log.Answer;
import java.util.List;
import java.util.function.Consumer;

/**
 * How far the child's own stairs are filled: by right answers from memory, ever. It counts what was done and nothing
 * takes it away: no error, no pause of weeks, no family begun again, no other setting. At how many answers
 * a stone is laid is our own choice.
 */
public final class LifetimeProgress implements Consumer<Answer> {
    /** How many stones a family can have. */
    public static final int MOST = 4;

    /** With how many right answers each of them is laid. */
    private static final int[] LAID_AT = {1, 5, 15, 40};

    private final int[] right = new int[Families.COUNT];

    @Override
    public void accept(Answer answer) {
        if (answer.purpose().isFromMemory() && answer.isCorrect()) {
            right[answer.question().orElseThrow().family().index()]++;
        }
    }

    /** The stones of a family: none, then one more at 1, 5, 15 and 40 right answers. */
    public int stones(Family family) {
        return stones(right[family.index()]);
    }

    private static int stones(int answers) {
        int stones = 0;
        while (stones < MOST && answers >= LAID_AT[stones]) {
            stones++;
        }
        return stones;
    }

    /** The same as it was before these answers, which are counted in it. */
    public LifetimeProgress before(List<Answer> newest) {
        LifetimeProgress those = new LifetimeProgress();
        newest.forEach(those);
        LifetimeProgress before = new LifetimeProgress();
        for (int i = 0; i < right.length; i++) {
            before.right[i] = Math.max(0, right[i] - those.right[i]);
        }
        return before;
    }

    /** All stones laid so far, of {@value #MOST} for each family. */
    public int laid() {
        return Families.all().stream().mapToInt(this::stones).sum();
    }

    /** How many families have a stone. */
    public int begun() {
        return (int) Families.all().stream().filter(f -> stones(f) > 0).count();
    }
}
