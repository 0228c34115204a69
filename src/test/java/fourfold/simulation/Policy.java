// SPDX-License-Identifier: Apache-2.0
package fourfold.simulation;

import fourfold.memory.Parameters;
import fourfold.progress.Progress;
import fourfold.progress.Steering;
import fourfold.scheduling.Scheduler;
import fourfold.simulation.policy20261127.FrozenScheduler;
import java.time.Instant;
import java.util.OptionalDouble;
import java.util.function.Function;

/** A way to choose questions, as the benchmark compares them. */
public sealed interface Policy {
    /** A short name, used in tables and on the command line. */
    String name();

    /** Its scheduler for one child, from that child's first drill on. */
    Scheduler schedulerFor(SimulatedLearner child);

    /** What the program knows when the child begins. */
    default Progress blank() {
        // No memory: a policy that looks through one of its own needs no other.
        return Progress.Fold.ofLevels(Steering.NONE).progress();
    }

    /** Whether there are drills at all. */
    default boolean practises() {
        return true;
    }

    /**
     * The chance it sees that an answer asked then is right within the child's limit; empty if it foresees nothing.
     *
     * @param its the scheduler it made for the child
     * @param reached what the program has folded
     */
    default OptionalDouble forecast(Scheduler its, Progress reached, int trace, Instant at) {
        return OptionalDouble.empty();
    }

    /** No drills at all, lessons alone: the floor. */
    record NoPractice(String name) implements Policy {
        @Override
        public Scheduler schedulerFor(SimulatedLearner child) {
            return (progress, at, seed) -> java.util.Optional.empty();
        }

        @Override
        public boolean practises() {
            return false;
        }
    }

    /** The program's own, as it is today: sees answers and times only, through a memory with these constants. */
    record Ours(String name, Scheduler scheduler, Parameters constants) implements Policy {
        @Override
        public Scheduler schedulerFor(SimulatedLearner child) {
            return scheduler;
        }

        @Override
        public Progress blank() {
            return Progress.blank(Steering.NONE, constants);
        }

        @Override
        public OptionalDouble forecast(Scheduler its, Progress reached, int trace, Instant at) {
            return OptionalDouble.of(reached.memory().chanceQuick(trace, at.toEpochMilli()));
        }
    }

    /**
     * One that no change of the program can change: an earlier policy of the program, a simple one, or a ceiling.
     *
     * @param foresees whether its forecasts are scored
     * @param maker makes its scheduler for a child; only a ceiling looks at the child
     */
    record Frozen(String name, boolean foresees, Function<SimulatedLearner, FrozenScheduler> maker) implements Policy {
        @Override
        public Scheduler schedulerFor(SimulatedLearner child) {
            return maker.apply(child);
        }

        @Override
        public OptionalDouble forecast(Scheduler its, Progress reached, int trace, Instant at) {
            return foresees && its instanceof FrozenScheduler frozen
                    ? OptionalDouble.of(frozen.chanceQuick(trace, at))
                    : OptionalDouble.empty();
        }
    }
}
