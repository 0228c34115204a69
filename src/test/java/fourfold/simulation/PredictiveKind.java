package fourfold.simulation;

import java.util.SplittableRandom;

/** Children who learn by the predictive performance equation. */
public final class PredictiveKind implements SimulatedLearnerKind {
    /** The kind; it holds nothing. */
    public PredictiveKind() {}

    @Override
    public String name() {
        return "predictive";
    }

    @Override
    public SimulatedLearner create(long seed) {
        SplittableRandom dice = new SplittableRandom(seed * 31 + 1);
        PredictiveMemory.Numbers numbers =
                new PredictiveMemory.Numbers(0.25, dice.nextDouble(0.09, 0.11), 0.10, 0.28, 0.07);
        return new SimulatedChild(seed, (trace, birth) -> new PredictiveMemory(numbers));
    }
}
