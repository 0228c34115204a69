package fourfold.outlook;

import fourfold.facts.Families;
import fourfold.log.Answer;
import fourfold.log.DrillSession;
import fourfold.progress.Mastery;
import fourfold.progress.Progress;
import fourfold.scheduling.LastingGain;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.UUID;

/**
 * Plays the rest of a child's way through many times: learners fitted to the child's answers ({@link FittedLearner})
 * practise on, through the real drill and under the program's own policy, until all 55 families are fluent. On which days
 * they practise is drawn from how often the child did lately.
 */
public final class Outlook {
    /** Fewer answers than this say too little; our own choice. */
    public static final int FEWEST_ANSWERS = 300;

    /** How many weeks ahead are played. */
    public static final int WEEKS = 80;

    private final Progress progress;
    private final Instant start;
    private final int minutes;
    private final double daysAWeek;
    private final long seed;
    private final List<Long> days = new ArrayList<>();

    /**
     * An outlook in which nothing was played yet.
     *
     * @param progress what the child has reached
     * @param start now
     * @param daysAWeek days with a drill in a week, above 0, at most 7
     * @param seed decides all free choices
     */
    public Outlook(Progress progress, Instant start, double daysAWeek, long seed) {
        this.progress = progress;
        this.start = start;
        this.minutes = progress.steering().settings().minutes();
        this.daysAWeek = Math.max(0.25, Math.min(7, daysAWeek));
        this.seed = seed;
    }

    /** Whether the child's answers are enough to guess from. */
    public static boolean isPossible(Progress progress) {
        return progress.answers() >= FEWEST_ANSWERS;
    }

    /** Plays the way once more. */
    public void playOnce() {
        days.add(run(days.size()));
    }

    /**
     * Plays the way once, and remembers nothing of it.
     *
     * @param number which of the runs, from 0; the same number gives the same run
     * @return after how many days all families are fluent; {@link Long#MAX_VALUE} if they are not
     */
    public long run(int number) {
        return daysUntilFluent(seed + 7919L * number);
    }

    /** What the runs so far come to. */
    public Projection projection() {
        return projection(days);
    }

    /** What some runs come to, each as {@link #run} gave it. */
    public Projection projection(List<Long> runs) {
        long[] sorted = runs.stream().mapToLong(Long::longValue).sorted().toArray();
        return new Projection(at(sorted, 0.1), at(sorted, 0.5), at(sorted, 0.9), sorted.length, daysAWeek);
    }

    /** The day by which that share of the runs was there: the smallest one for which it holds. */
    private Optional<LocalDate> at(long[] sorted, double share) {
        if (sorted.length == 0) {
            return Optional.empty();
        }
        long day = smallest(sorted, share);
        return day == Long.MAX_VALUE
                ? Optional.empty()
                : Optional.of(LocalDate.ofEpochDay(progress.localDay(start) + day));
    }

    /** The smallest number that at least that share does not exceed: definition 1 of Hyndman and Fan 1996. */
    static long smallest(long[] sorted, double share) {
        return sorted[Math.max(0, (int) Math.ceil(share * sorted.length - 1e-9) - 1)];
    }

    private long daysUntilFluent(long runSeed) {
        SplittableRandom random = new SplittableRandom(runSeed);
        FittedLearner learner = new FittedLearner(progress, random.nextLong());
        Progress[] after = {progress};
        PlayedDrill play = new PlayedDrill(learner, new LastingGain(), answer -> remembered(learner, after, answer));
        Progress now = progress;
        for (int day = 0; day < WEEKS * 7; day++) {
            if (now.families(Mastery.FLUENT) == Families.COUNT) {
                return day;
            }
            if (random.nextDouble() < daysAWeek / 7) {
                Instant begin = start.plus(Duration.ofDays(day)).plusSeconds(random.nextInt(3600));
                after[0] = now;
                now = play.play(now, session(runSeed, day, begin));
            }
        }
        return Long.MAX_VALUE;
    }

    /** The learner remembers what the drill has kept: the drill's own fold and this one are the same. */
    private static void remembered(FittedLearner learner, Progress[] after, Answer answer) {
        after[0] = after[0].after(answer);
        learner.remember(after[0].memory());
    }

    private DrillSession session(long runSeed, int day, Instant begin) {
        int zone = progress.lastAnswer().map(Answer::zoneOffsetMinutes).orElse(0);
        UUID child = progress.lastAnswer().map(Answer::child).orElse(new UUID(0, 0));
        return new DrillSession(
                new UUID(runSeed, day), child, begin, zone, Duration.ofMinutes(minutes), runSeed * 1000 + day);
    }
}
