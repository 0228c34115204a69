package fourfold.simulation;

import java.util.SplittableRandom;

/** Children who learn by the multiscale context model. */
public final class MultiscaleKind implements SimulatedLearnerKind {
    /** The kind; it holds nothing. */
    public MultiscaleKind() {}

    @Override
    public String name() {
        return "multiscale";
    }

    @Override
    public SimulatedLearner create(long seed) {
        SplittableRandom dice = new SplittableRandom(seed * 31 + 2);
        MultiscaleMemory.Numbers numbers =
                new MultiscaleMemory.Numbers(0.2, dice.nextDouble(0.4, 0.55), 1.1, 0.45, 0.15);
        return new SimulatedChild(seed, (trace, birth) -> new MultiscaleMemory(numbers));
    }
}
