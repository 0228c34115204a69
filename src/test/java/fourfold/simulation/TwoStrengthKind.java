package fourfold.simulation;

import java.util.SplittableRandom;

/** Children with a short and a long strength, the long one gaining most from what is hard to retrieve. */
public final class TwoStrengthKind implements SimulatedLearnerKind {
    /** The kind; it holds nothing. */
    public TwoStrengthKind() {}

    @Override
    public String name() {
        return "two-strength";
    }

    @Override
    public SimulatedLearner create(long seed) {
        SplittableRandom dice = new SplittableRandom(seed * 31 + 3);
        TwoStrengthMemory.Numbers numbers =
                new TwoStrengthMemory.Numbers(dice.nextDouble(1.1, 1.5), 0.7, 0.1, 1200, 3.5, 250);
        return new SimulatedChild(seed, (trace, birth) -> new TwoStrengthMemory(numbers));
    }
}
