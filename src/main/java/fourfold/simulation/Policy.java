package fourfold.simulation;

import fourfold.scheduling.Scheduler;
import java.util.function.Supplier;

/** A way to choose questions, as the benchmark compares them. */
public sealed interface Policy {
    /** A short name, used in tables and on the command line. */
    String name();

    /** No drills at all: the floor. */
    record NoPractice(String name) implements Policy {}

    /** A scheduler that sees answers and times only; each child gets a fresh one. */
    record Fair(String name, Supplier<Scheduler> scheduler) implements Policy {}

    /** A scheduler that sees the true memory: a ceiling. */
    record Oracle(String name, Foresight foresight) implements Policy {}
}
