package fourfold.simulation;

import fourfold.log.Answer;
import fourfold.log.DrillSession;
import fourfold.memory.Parameters;
import fourfold.outlook.PlayedDrill;
import fourfold.progress.Progress;
import fourfold.progress.Settings;
import fourfold.progress.Steering;
import fourfold.scheduling.Scheduler;
import java.time.Duration;
import java.time.Instant;
import java.util.UUID;
import java.util.function.BiConsumer;
import java.util.function.Consumer;

/** One child's year through the real drill, in simulated time. */
public final class SchoolYear {
    /** Monday, 1 September 2025, midnight UTC. Only differences of time matter. */
    public static final Instant START = Instant.parse("2025-09-01T00:00:00Z");

    /** How many drills the year has, missed ones counted. */
    public static final int SLOTS = 36 * 4;

    private static final int[] WEEKDAYS = {0, 1, 3, 4};

    private final SimulatedLearner child;
    private final PlayedDrill play;
    private final Calendar calendar;
    private final long seed;
    private Progress progress;
    private Instant now = START;
    private double practisedSeconds;
    private int drills;

    /**
     * A year that has not begun.
     *
     * @param child who practises
     * @param scheduler chooses the questions
     * @param seed the child's seed; decides the calendar and the drills' free choices
     * @param kept takes every answer as it is kept
     */
    public SchoolYear(SimulatedLearner child, Scheduler scheduler, long seed, Consumer<Answer> kept) {
        this(child, scheduler, Parameters.usual(), seed, kept);
    }

    /** As above, with other constants of the memory that the scheduler looks at. */
    SchoolYear(SimulatedLearner child, Scheduler scheduler, Parameters constants, long seed, Consumer<Answer> kept) {
        this.progress = Progress.blank(Steering.NONE, constants);
        this.child = child;
        this.seed = seed;
        this.play = new PlayedDrill(child, scheduler, kept);
        this.calendar = HomeCalendar.fourDays(seed);
    }

    /**
     * Runs the first so many slots.
     *
     * @param slots 1 to {@link #SLOTS}
     * @param practises false for a child who has the lessons and no drills
     * @param after told after each slot: its number from 0, and when the next drill begins
     */
    public void run(int slots, boolean practises, BiConsumer<Integer, Instant> after) {
        for (int slot = 0; slot < slots; slot++) {
            Instant from = dayOf(slot);
            Instant to = dayOf(slot + 1);
            for (Lesson lesson : calendar.lessons()) {
                if (!lesson.at().isBefore(from) && lesson.at().isBefore(to)) {
                    lesson.teach(child);
                }
            }
            for (Instant start : calendar.drills()) {
                if (practises && !start.isBefore(from) && start.isBefore(to)) {
                    drill(slot, start);
                }
            }
            after.accept(
                    slot,
                    calendar.drills().stream()
                            .filter(start -> !start.isBefore(to))
                            .findFirst()
                            .orElse(to.plus(Duration.ofHours(15))));
        }
    }

    private static Instant dayOf(int slot) {
        return START.plus(Duration.ofDays(7L * (slot / WEEKDAYS.length) + WEEKDAYS[slot % WEEKDAYS.length]));
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

    private void drill(int slot, Instant start) {
        DrillSession session = new DrillSession(
                new UUID(seed, slot),
                new UUID(seed, -1),
                start,
                0,
                Duration.ofMinutes(Settings.USUAL.minutes()),
                seed * 1000 + slot);
        progress = play.play(progress, session);
        now = play.now();
        drills++;
        practisedSeconds += Duration.between(start, now).toMillis() / 1000.0;
    }
}
