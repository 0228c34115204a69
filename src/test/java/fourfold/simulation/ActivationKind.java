package fourfold.simulation;

import java.util.SplittableRandom;

/** Children who learn by activation, every trace with a rate of forgetting of its own. */
public final class ActivationKind implements SimulatedLearnerKind {
    /** The kind; it holds nothing. */
    public ActivationKind() {}

    @Override
    public String name() {
        return "activation";
    }

    @Override
    public SimulatedLearner create(long seed) {
        SplittableRandom dice = new SplittableRandom(seed * 31 + 4);
        ActivationMemory.Numbers numbers = new ActivationMemory.Numbers(0.2, 0.03, -0.8, 0.3);
        ActivationMemory.Clock clock = new ActivationMemory.Clock(numbers.between());
        clock.startAt(-70 * 86_400.0);
        double rate = dice.nextDouble(0.12, 0.20);
        return new SimulatedChild(
                seed,
                (trace, birth) -> new ActivationMemory(
                        numbers, clock, Math.max(0.04, rate + 0.04 * Traits.within(birth.nextGaussian(), 2))));
    }
}
