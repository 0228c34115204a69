package fourfold.simulation;

import fourfold.memory.Parameters;
import fourfold.scheduling.Scheduler;

/** A way to choose questions, as the benchmark compares them. */
public sealed interface Policy {
    /** A short name, used in tables and on the command line. */
    String name();

    /** No drills at all: the floor. */
    record NoPractice(String name) implements Policy {}

    /** A scheduler that sees answers and times only, through a memory with these constants. */
    record Fair(String name, Scheduler scheduler, Parameters constants) implements Policy {
        /** With the usual constants. */
        public Fair(String name, Scheduler scheduler) {
            this(name, scheduler, Parameters.usual());
        }
    }

    /** A scheduler that sees the true memory: a ceiling. */
    record Oracle(String name, Foresight foresight) implements Policy {}
}
