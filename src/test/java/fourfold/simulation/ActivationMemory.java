// SPDX-License-Identifier: Apache-2.0
package fourfold.simulation;

/**
 * Activation with decays that depend on the activation at practice (Pavlik and Anderson 2005, Cognitive Science 29,
 * 559–586), every trace with a rate of forgetting of its own, drawn once. Between drills time counts only in part.
 */
final class ActivationMemory implements TraceMemory {
    private static final double SHORT_PAUSE = 600;

    private final Numbers numbers;
    private final Clock clock;
    private final double rate;
    private Presentations met = new Presentations();

    /** The decay scale c, the part h of the time between drills that counts, the threshold and the noise. */
    record Numbers(double scale, double between, double threshold, double noise) {}

    /** The time one child's memory feels: all of it in a drill, a part of it between drills. */
    static final class Clock {
        private final double between;
        private double last;
        private double felt;

        Clock(double between) {
            this.between = between;
        }

        double felt(double at) {
            double gap = Math.max(0, at - last);
            return felt + Math.min(gap, SHORT_PAUSE) + between * Math.max(0, gap - SHORT_PAUSE);
        }

        void moveTo(double at) {
            felt = felt(at);
            last = Math.max(last, at);
        }

        void startAt(double at) {
            last = at;
        }
    }

    ActivationMemory(Numbers numbers, Clock clock, double rate) {
        this.numbers = numbers;
        this.clock = clock;
        this.rate = rate;
    }

    private double activation(double felt) {
        double sum = 0;
        for (int i = 0; i < met.size(); i++) {
            double age = Math.max(1, felt - met.time(i));
            sum += met.weight(i) * Math.exp(-met.decay(i) * Math.log(age));
        }
        return Math.log(sum);
    }

    @Override
    public double strength(double at) {
        return met.size() == 0 ? NOTHING : strengthFelt(clock.felt(at));
    }

    private double strengthFelt(double felt) {
        return Math.max(NOTHING, (activation(felt) - numbers.threshold) / numbers.noise);
    }

    @Override
    public void practised(double at, How how) {
        clock.moveTo(at);
        add(clock.felt(at), how);
    }

    private void add(double felt, How how) {
        double decay = rate + (met.size() == 0 ? 0 : numbers.scale * Math.exp(Math.min(1.2, activation(felt))));
        met.add(felt, decay, how == How.RECALLED ? 1 : 0.8);
    }

    @Override
    public TraceMemory copy() {
        // The clock is shared by all traces; a look ahead must not move it.
        Clock own = new Clock(clock.between);
        own.last = clock.last;
        own.felt = clock.felt;
        ActivationMemory copy = new ActivationMemory(numbers, own, rate);
        copy.met = met.copy();
        return copy;
    }
}
