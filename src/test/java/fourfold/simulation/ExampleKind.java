// SPDX-License-Identifier: Apache-2.0
package fourfold.simulation;

/** The smallest kind: what was practised n times is half gone after n days. A pattern for kinds from elsewhere. */
final class ExampleKind implements SimulatedLearnerKind {
    private static final class Halving implements TraceMemory {
        private int times;
        private double last;

        @Override
        public double strength(double at) {
            double kept = times == 0 ? 0 : Math.pow(2, (last - at) / (times * 86_400.0));
            return Math.log((kept + 0.003) / (1.003 - kept));
        }

        @Override
        public void practised(double at, How how) {
            times++;
            last = at;
        }

        @Override
        public TraceMemory copy() {
            Halving copy = new Halving();
            copy.times = times;
            copy.last = last;
            return copy;
        }
    }

    @Override
    public String name() {
        return "example";
    }

    @Override
    public SimulatedLearner create(long seed) {
        return SimulatedChild.with(seed, (trace, dice) -> new Halving());
    }
}
