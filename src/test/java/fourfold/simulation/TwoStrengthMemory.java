// SPDX-License-Identifier: Apache-2.0
package fourfold.simulation;

/**
 * Storage strength and retrieval strength (Bjork and Bjork 1992, A new theory of disuse; the words are theirs, from
 * memory, and the form is ours, for they give no equations). Retrieval strength jumps to its top with every practice and
 * fades with a power of time; the more storage strength, the slower. Storage strength never fades and gains most from a
 * retrieval that is hard and succeeds.
 */
final class TwoStrengthMemory implements TraceMemory {
    private final Numbers numbers;
    private double storage;
    private double last;
    private boolean met;

    /**
     * One child's numbers.
     *
     * @param gain the most that storage gains at once
     * @param unrecalled which part of it is gained when the answer did not come from memory
     * @param fading the exponent with which retrieval strength fades where there is no storage strength
     * @param grace seconds until fading sets in
     * @param top log odds of recall right after practice, above the bottom
     * @param bottom log odds of recall when retrieval strength is gone
     */
    record Numbers(double gain, double unrecalled, double fading, double grace, double top, double bottom) {}

    TwoStrengthMemory(Numbers numbers) {
        this.numbers = numbers;
    }

    @Override
    public double strength(double at) {
        if (!met) {
            return NOTHING;
        }
        double age = Math.max(0, at - last);
        double exponent = numbers.fading / (1 + storage);
        double retrieval = Math.exp(-exponent * Math.log(1 + age / numbers.grace));
        return numbers.bottom + numbers.top * retrieval;
    }

    @Override
    public void practised(double at, How how) {
        double hard = 1 / (1 + Math.exp(strength(at)));
        storage += numbers.gain * hard * (how == How.RECALLED ? 1 : numbers.unrecalled);
        last = at;
        met = true;
    }

    @Override
    public TraceMemory copy() {
        TwoStrengthMemory copy = new TwoStrengthMemory(numbers);
        copy.storage = storage;
        copy.last = last;
        copy.met = met;
        return copy;
    }
}
