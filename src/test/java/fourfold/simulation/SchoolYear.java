// SPDX-License-Identifier: Apache-2.0
package fourfold.simulation;

import fourfold.log.Answer;
import fourfold.log.DrillSession;
import fourfold.outlook.PlayedDrill;
import fourfold.progress.Progress;
import fourfold.progress.Settings;
import fourfold.progress.Steering;
import fourfold.scheduling.Scheduler;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import java.util.function.Consumer;

/** One child's year through the real drill, in simulated time, by its calendar. */
public final class SchoolYear {
    /** Monday, 1 September 2025, midnight UTC. Only differences of time matter. */
    public static final Instant START = Instant.parse("2025-09-01T00:00:00Z");

    /** When a week is over: on the next Monday at three, before that day's drill. */
    private static final Duration AFTERNOON = Duration.ofHours(15);

    /** When a drill after the last one would have been: after a long weekend. Our own choice. */
    private static final Duration NEXT = Duration.ofDays(3);

    private final SimulatedLearner child;
    private final PlayedDrill play;
    private final Calendar calendar;
    private final List<Lesson> lessons;
    private final long seed;
    private Progress progress;
    private Instant now = START;
    private double practisedSeconds;
    private int drills;
    private int taught;

    /** Somebody who is told how the year goes; nothing is done by default. */
    public interface Watcher {
        /**
         * A drill was held.
         *
         * @param drill its number from 0
         * @param next when the next one begins
         */
        default void drilled(int drill, Instant next) {}

        /**
         * A week is over.
         *
         * @param week its number from 1
         * @param end the moment, before a drill of the next week
         */
        default void weekEnded(int week, Instant end) {}
    }

    /**
     * A year of four days a week that has not begun.
     *
     * @param child who practises
     * @param scheduler chooses the questions
     * @param seed the child's seed; decides the calendar and the drills' free choices
     * @param kept takes every answer as it is kept
     */
    public SchoolYear(SimulatedLearner child, Scheduler scheduler, long seed, Consumer<Answer> kept) {
        this(child, scheduler, Progress.blank(Steering.NONE), HomeCalendar.fourDays(seed), seed, kept);
    }

    /**
     * A year that has not begun.
     *
     * @param blank what the program knows at first
     * @param calendar the child's days
     */
    public SchoolYear(
            SimulatedLearner child,
            Scheduler scheduler,
            Progress blank,
            Calendar calendar,
            long seed,
            Consumer<Answer> kept) {
        this.progress = blank;
        this.child = child;
        this.seed = seed;
        this.play = new PlayedDrill(child, scheduler, kept);
        this.calendar = calendar;
        this.lessons = calendar.lessons();
    }

    /** Runs the first so many weeks, or the year if it is shorter. */
    public void run(int weeks) {
        run(weeks, true, new Watcher() {});
    }

    /** As above, with somebody watching; a child that does not practise has the lessons alone. */
    void run(int weeks, boolean practises, Watcher watcher) {
        List<Instant> starts = practises ? calendar.drills() : List.of();
        for (int week = 1; week <= Math.min(weeks, calendar.weeks()); week++) {
            Instant end = START.plus(Duration.ofDays(7L * week)).plus(AFTERNOON);
            while (drills < starts.size() && starts.get(drills).isBefore(end)) {
                Instant start = starts.get(drills);
                teachBefore(start);
                drill(drills, start);
                drills++;
                watcher.drilled(drills - 1, drills < starts.size() ? starts.get(drills) : start.plus(NEXT));
            }
            teachBefore(end);
            watcher.weekEnded(week, end);
        }
    }

    private void teachBefore(Instant at) {
        while (taught < lessons.size() && lessons.get(taught).at().isBefore(at)) {
            lessons.get(taught).teach(child);
            taught++;
        }
    }

    /** Where the child stands in the program. */
    public Progress progress() {
        return progress;
    }

    /** How many drills there were. */
    public int drills() {
        return drills;
    }

    /** Minutes spent in drills so far, pauses counted. */
    public double minutes() {
        return practisedSeconds / 60;
    }

    /** When the last drill ended. */
    public Instant now() {
        return now;
    }

    private void drill(int number, Instant start) {
        DrillSession session = new DrillSession(
                new UUID(seed, number),
                new UUID(seed, -1),
                start,
                0,
                Duration.ofMinutes(Settings.USUAL.minutes()),
                seed * 1000 + number);
        progress = play.play(progress, session);
        now = play.now();
        practisedSeconds += Duration.between(start, now).toMillis() / 1000.0;
    }
}
