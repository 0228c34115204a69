package fourfold.scheduling;

import fourfold.progress.Progress;
import java.time.Instant;
import java.util.Optional;
import java.util.function.IntSupplier;
import java.util.function.IntToDoubleFunction;

/** Lets a ranking from outside choose within the rails and turns that all simple policies share. */
public final class PlainFrame {
    private PlainFrame() {}

    /**
     * The next turn.
     *
     * @param progress where the child stands, with a drill begun
     * @param at now
     * @param seed decides free choices
     * @param rules of which those about openings and re-asks matter
     * @param rank by the trace's index; the highest is asked first, negative infinity is not asked
     * @param waiting how many traces wait for their turn; new families join while there are few
     */
    public static Optional<Turn> next(
            Progress progress, Instant at, long seed, Rules rules, IntToDoubleFunction rank, IntSupplier waiting) {
        Situation here = new Situation(progress, progress.drill().orElseThrow(), at);
        Ranking ranking = new Ranking() {
            @Override
            public double of(int trace) {
                return rank.applyAsDouble(trace);
            }

            @Override
            public int waiting() {
                return waiting.getAsInt();
            }
        };
        return new PlainChoice(here, rules, ranking, seed).turn();
    }
}
