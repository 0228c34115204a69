// SPDX-License-Identifier: Apache-2.0
package fourfold.outlook;

import fourfold.facts.Family;
import fourfold.log.Answer;
import fourfold.log.DrillSession;
import fourfold.progress.Mastery;
import fourfold.progress.Progress;
import fourfold.scheduling.LastingGain;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.UUID;
import java.util.stream.LongStream;

/**
 * Plays the rest of a child's way through many times: learners fitted to the child's answers ({@link FittedLearner})
 * practise on, through the real drill and under the program's own policy. The same values give the same runs.
 *
 * @param progress what the child has reached on the morning of the first day
 * @param from the first day that is played, a local day since 1 January 1970
 * @param until the last one
 * @param days on which days they practise
 * @param goal the families that are to be fluent, all at once
 * @param seed decides all free choices
 */
public record Outlook(Progress progress, long from, long until, PracticeDays days, Set<Family> goal, long seed) {
    /** Fewer answers than this say too little; our own choice. */
    public static final int FEWEST_ANSWERS = 300;

    /** How often the way is played through; the 10th percentile is then the second of them. Our own choice. */
    public static final int RUNS = 20;

    /** Drills are played in the afternoon; only the days between them matter. */
    private static final Duration AFTERNOON = Duration.ofHours(15);

    public Outlook {
        goal = Set.copyOf(goal);
    }

    /**
     * What one run came to.
     *
     * @param reached the local day on whose evening the goal was reached first; the day before {@code from} if it is reached
     *     already; {@link Long#MAX_VALUE} if it is not reached by {@code until}
     * @param fluent how many families of the goal are fluent at its end
     */
    public record Run(long reached, int fluent) {
        /** Whether the goal was reached in time. */
        public boolean isReached() {
            return reached != Long.MAX_VALUE;
        }
    }

    /** Whether the child's answers are enough to guess from. */
    public static boolean isPossible(Progress progress) {
        return progress.answers() >= FEWEST_ANSWERS;
    }

    /**
     * Plays the way once, to the goal.
     *
     * @param number which of the runs, from 0; the same number gives the same run
     */
    public Run run(int number) {
        return played(number, true);
    }

    /** Plays the way once, to the last day, whether the goal was reached before or not. */
    public Run toTheEnd(int number) {
        return played(number, false);
    }

    private Run played(int number, boolean stops) {
        long runSeed = new SplittableRandom(seed + 7919L * number).nextLong();
        SplittableRandom random = new SplittableRandom(runSeed);
        FittedLearner learner = new FittedLearner(progress, random.nextLong());
        PlayedDrill play = new PlayedDrill(learner, new LastingGain(), answer -> {});
        Progress now = progress;
        int fluent = fluent(now);
        long reached = fluent == goal.size() ? from - 1 : Long.MAX_VALUE;
        for (long day = from; day <= until && !(stops && reached != Long.MAX_VALUE); day++) {
            if (random.nextDouble() < days.chance(day)) {
                now = play.play(now, session(runSeed, day, random.nextInt(3600)));
                fluent = fluent(now);
                reached = reached == Long.MAX_VALUE && fluent == goal.size() ? day : reached;
            }
        }
        return new Run(reached, fluent);
    }

    private int fluent(Progress now) {
        return (int)
                goal.stream().filter(f -> now.level(f).atLeast(Mastery.FLUENT)).count();
    }

    private DrillSession session(long runSeed, long day, int second) {
        int zone = progress.lastAnswer().map(Answer::zoneOffsetMinutes).orElse(0);
        UUID child = progress.lastAnswer().map(Answer::child).orElse(new UUID(0, 0));
        Instant begin = Instant.EPOCH
                .plus(Duration.ofDays(day))
                .plus(AFTERNOON)
                .minus(Duration.ofMinutes(zone))
                .plusSeconds(second);
        int minutes = progress.steering().settings().minutes();
        return new DrillSession(
                new UUID(runSeed, day), child, begin, zone, Duration.ofMinutes(minutes), runSeed * 1000 + day);
    }

    /**
     * What some runs come to, each as {@link #run} gave it.
     *
     * @param wanted how many runs there are to be, no fewer than were played; those not played count as failed
     */
    public Projection projection(List<Run> runs, int wanted) {
        long[] sorted = LongStream.concat(
                        runs.stream().mapToLong(Run::reached), LongStream.generate(() -> Long.MAX_VALUE))
                .limit(wanted)
                .sorted()
                .toArray();
        Projection.Outcome outcome =
                Arrays.stream(sorted).filter(d -> d != Long.MAX_VALUE).count() * 2 < wanted
                        ? Projection.Outcome.OUT_OF_REACH
                        : at(sorted, 0.9).isPresent() ? Projection.Outcome.WITHIN_REACH : Projection.Outcome.NOT_SURE;
        return new Projection(
                outcome, at(sorted, 0.1), at(sorted, 0.5), at(sorted, 0.9), LocalDate.ofEpochDay(until), days.aWeek());
    }

    /** The day by which that share of the runs was there: the smallest one for which it holds. */
    private static Optional<LocalDate> at(long[] sorted, double share) {
        long day = smallest(sorted, share);
        return day == Long.MAX_VALUE ? Optional.empty() : Optional.of(LocalDate.ofEpochDay(day));
    }

    /** The smallest number that at least that share does not exceed: definition 1 of Hyndman and Fan 1996. */
    static long smallest(long[] sorted, double share) {
        return sorted[Math.max(0, (int) Math.ceil(share * sorted.length - 1e-9) - 1)];
    }
}
