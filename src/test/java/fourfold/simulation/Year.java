package fourfold.simulation;

import fourfold.facts.Families;
import fourfold.facts.Family;
import fourfold.facts.Operation;
import fourfold.facts.Question;
import fourfold.memory.Parameters;
import fourfold.scheduling.Scheduler;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;

/** Measures one child's year under one policy. */
final class Year {
    static final Duration LIMIT = Duration.ofSeconds(3);
    private static final double SURE = 0.9;
    private static final List<Integer> WEEKS = List.of(6, 12, 24, 36);
    private static final int[] TARGETS = {28, 50, Families.COUNT};
    private static final List<Integer> PAUSES = List.of(14, 60);
    private static final List<List<Question>> QUESTIONS =
            Families.all().stream().map(Family::questions).toList();

    private final Watched child;
    private final SchoolYear year;
    private final boolean practises;
    private final List<Integer> fluentAt = new ArrayList<>();
    private final Double[] minutesTo = new Double[TARGETS.length];
    private int drills;

    private Year(SimulatedLearner learner, Policy policy, long seed) {
        child = new Watched(learner);
        Parameters constants = policy instanceof Policy.Fair fair ? fair.constants() : Parameters.usual();
        year = new SchoolYear(child, scheduler(policy, learner), constants, seed, answer -> {});
        practises = !(policy instanceof Policy.NoPractice);
        Arrays.fill(minutesTo, Outcome.NEVER);
    }

    static boolean isFluent(double chance) {
        return chance >= SURE;
    }

    /** The outcome for the child of that kind and seed. */
    static Outcome of(SimulatedLearnerKind kind, Policy policy, long seed) {
        return new Year(kind.create(seed), policy, seed).outcome();
    }

    /** The policy's scheduler for that child. */
    static Scheduler scheduler(Policy policy, SimulatedLearner learner) {
        if (policy instanceof Policy.Fair fair) {
            return fair.scheduler();
        }
        if (policy instanceof Policy.Oracle oracle) {
            return new OracleScheduler(learner, oracle.foresight());
        }
        return (progress, at, seed) -> Optional.empty();
    }

    private Outcome outcome() {
        year.run(SchoolYear.SLOTS, practises, this::look);
        Instant end = practises ? year.now() : SchoolYear.START.plus(Duration.ofDays(7L * 36));
        List<Double> kept = PAUSES.stream()
                .map(days -> shareRight(end.plus(Duration.ofDays(days)), question -> true))
                .toList();
        Instant first = end.plus(Duration.ofDays(PAUSES.get(0)));
        return new Outcome(
                fluentAt,
                Arrays.asList(minutesTo),
                kept,
                shareRight(first, question -> question.operation() == Operation.DIVIDE),
                child.success(),
                drills == 0 ? 0 : (double) child.asked() / drills,
                child.onLasting());
    }

    private void look(int slot, Instant next) {
        drills = year.drills();
        int fluent = fluent(next);
        for (int i = 0; i < TARGETS.length; i++) {
            if (fluent >= TARGETS[i] && minutesTo[i] == Outcome.NEVER) {
                minutesTo[i] = year.minutes();
            }
        }
        if ((slot + 1) % 4 == 0 && WEEKS.contains((slot + 1) / 4)) {
            fluentAt.add(fluent);
        }
    }

    private int fluent(Instant at) {
        int count = 0;
        for (List<Question> family : QUESTIONS) {
            boolean all = true;
            for (Question question : family) {
                all = all && isFluent(child.chanceRightWithin(question, at, LIMIT));
            }
            count += all ? 1 : 0;
        }
        return count;
    }

    private double shareRight(Instant at, Predicate<Question> which) {
        return QUESTIONS.stream()
                .flatMap(List::stream)
                .filter(which)
                .mapToDouble(question -> child.chanceRightWithin(question, at, LIMIT))
                .average()
                .orElseThrow();
    }
}
