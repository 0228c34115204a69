package fourfold.simulation;

import fourfold.drill.Drill;
import fourfold.drill.Effect;
import fourfold.drill.Event;
import fourfold.drill.Phase;
import fourfold.drill.Phase.Asking;
import fourfold.drill.Step;
import fourfold.facts.Answer;
import fourfold.facts.Fact;
import fourfold.facts.Question;
import fourfold.facts.Sitting;
import fourfold.facts.Surface;
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
    public static final int SLOTS = Calendar.WEEKS * 4;

    private static final Duration MEETING = Duration.ofSeconds(4);
    private static final Duration ONE_MORE = Duration.ofMillis(700);
    private static final Duration NOTICING = Duration.ofSeconds(2);
    private static final int MOST_STEPS = 20_000;

    private final SimulatedLearner child;
    private final Scheduler scheduler;
    private final Consumer<Answer> kept;
    private final Calendar calendar;
    private final long seed;
    private Progress progress = Progress.blank(Steering.NONE);
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
        this.child = child;
        this.scheduler = scheduler;
        this.seed = seed;
        this.kept = kept;
        this.calendar = new Calendar(seed);
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
            Instant start = calendar.start(slot);
            for (Fact fact : calendar.lessonBefore(slot)) {
                child.shown(fact, start.minusSeconds(7200));
            }
            if (practises && !calendar.isMissed(slot)) {
                drill(slot, start);
            }
            after.accept(slot, calendar.start(calendar.following(slot)));
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

    private void drill(int slot, Instant start) {
        now = start;
        Sitting sitting = new Sitting(
                new UUID(seed, slot),
                new UUID(seed, -1),
                start,
                0,
                Duration.ofMinutes(Settings.USUAL.minutes()),
                seed * 1000 + slot);
        Drill drill = apply(Drill.ready(progress, sitting, scheduler, Surface.TERMINAL), new Event.Enter(now));
        for (int steps = 0; !drill.isFinished(); steps++) {
            if (steps > MOST_STEPS) {
                throw new IllegalStateException("the drill of slot " + slot + " does not end: " + drill.phase());
            }
            drill = turn(drill);
        }
        drills++;
        practisedSeconds += Duration.between(start, now).toMillis() / 1000.0;
        progress = drill.progress();
    }

    private Drill turn(Drill drill) {
        if (drill.phase() instanceof Asking asking) {
            return answer(drill, asking);
        }
        if (drill.phase() instanceof Phase.Right right) {
            now = right.until();
            return apply(drill, new Event.Tick(now));
        }
        boolean lookedAll = drill.phase() instanceof Phase.Meeting meeting && meeting.isWhole();
        boolean looks = drill.phase() instanceof Phase.Meeting && !lookedAll;
        now = now.plus(
                looks ? ONE_MORE : lookedAll ? MEETING : drill.phase() instanceof Phase.HandsOff ? MEETING : NOTICING);
        return apply(drill, new Event.Enter(now));
    }

    private Drill answer(Drill drill, Asking asking) {
        Drill shown = apply(drill, new Event.Painted(now));
        Reply reply = replyTo(asking);
        if (reply.typed().isEmpty()) {
            now = now.plus(Settings.USUAL.calm());
            return apply(shown, new Event.Tick(now));
        }
        Instant begin = now;
        Duration between =
                reply.whole().minus(reply.firstKey()).dividedBy(reply.typed().length());
        Drill typing = shown;
        for (int i = 0; i < reply.typed().length(); i++) {
            Instant key = begin.plus(reply.firstKey()).plus(between.multipliedBy(i));
            typing = apply(typing, new Event.Digit(reply.typed().charAt(i) - '0', key));
        }
        now = begin.plus(reply.whole());
        return apply(typing, new Event.Enter(now));
    }

    private Reply replyTo(Asking asking) {
        if (asking.question().isPresent()) {
            Question question = asking.question().get();
            if (!asking.isInView()) {
                return child.reply(question, now);
            }
            child.shown(question.fact(), now.plus(NOTICING));
            Reply copied = child.copy(Integer.toString(question.expected()), now);
            return new Reply(
                    copied.typed(),
                    copied.firstKey().plus(NOTICING),
                    copied.whole().plus(NOTICING));
        }
        return child.copy(Integer.toString(asking.prompt().expected()), now);
    }

    private Drill apply(Drill drill, Event event) {
        Step step = drill.on(event);
        for (Effect effect : step.effects()) {
            if (effect instanceof Effect.Keep keep) {
                kept.accept(keep.answer());
            }
        }
        return step.next();
    }
}
