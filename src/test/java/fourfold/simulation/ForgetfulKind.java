package fourfold.simulation;

import java.util.SplittableRandom;

/** Children with a weak short-term memory: what they were just shown is gone within a minute. */
public final class ForgetfulKind implements SimulatedLearnerKind {
    /** The kind; it holds nothing. */
    public ForgetfulKind() {}

    @Override
    public String name() {
        return "forgetful";
    }

    @Override
    public SimulatedLearner create(long seed) {
        SplittableRandom dice = new SplittableRandom(seed * 31 + 5);
        TwoStrengthMemory.Numbers numbers =
                new TwoStrengthMemory.Numbers(dice.nextDouble(0.9, 1.1), 0.35, 0.15, 45, 4, 200);
        return new SimulatedChild(seed, (trace, birth) -> new TwoStrengthMemory(numbers));
    }
}
