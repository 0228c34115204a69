// SPDX-License-Identifier: Apache-2.0
package fourfold.simulation;

import java.util.ArrayList;
import java.util.List;

/**
 * Which policies are tried on which children. A task is one child under one policy; tasks do not touch each other, so
 * they may run in any order and side by side.
 *
 * @param kinds of children
 * @param policies to compare
 * @param seeds of the children, the same for every kind and policy
 */
public record Benchmark(List<SimulatedLearnerKind> kinds, List<Policy> policies, List<Long> seeds) {
    public Benchmark {
        kinds = List.copyOf(kinds);
        policies = List.copyOf(policies);
        seeds = List.copyOf(seeds);
        if (kinds.isEmpty() || policies.isEmpty() || seeds.isEmpty()) {
            throw new IllegalArgumentException("a benchmark needs a kind of children, a policy and a child");
        }
    }

    /** One child under one policy. */
    public record Task(SimulatedLearnerKind kind, Policy policy, long seed) {
        /** Runs the whole year; always gives the same result. */
        public Result run() {
            return new Result(kind.name(), policy.name(), seed, Year.of(kind, policy, seed));
        }
    }

    /** What came of a task. */
    public record Result(String kind, String policy, long seed, Outcome outcome) {}

    /** All tasks, child by child. */
    public List<Task> tasks() {
        List<Task> tasks = new ArrayList<>();
        for (long seed : seeds) {
            for (SimulatedLearnerKind kind : kinds) {
                for (Policy policy : policies) {
                    tasks.add(new Task(kind, policy, seed));
                }
            }
        }
        return List.copyOf(tasks);
    }
}
