// SPDX-License-Identifier: Apache-2.0
package fourfold.simulation.policy20261127;

import fourfold.log.Answer;
import fourfold.log.Purpose;
import fourfold.log.Surface;
import java.time.Duration;
import java.util.Optional;

/**
 * How fast one child's hands are: the running median time of copying a shown number, for each digit count and each
 * surface. What is left of a response time after it is the thinking time. Immutable.
 *
 * <p>Robust: medians of the last 20 copies, none older than eight weeks before the newest once five newer ones exist, and
 * never from fewer than five. Before that, the nearest digit count of the same surface is used, and before that a
 * default. All limits here are our own choice unless they name a source, and each has a test at its edge; no published
 * norm for children's digit keys was found.
 */
public final class MotorTime {
    /**
     * A first key sooner than this came before the prompt was read: 150 ms, our own choice. Genuine responses take at least
     * 100 ms (Luce 1986, Response Times, Oxford University Press; from memory), and two numbers must be read here.
     */
    public static final Duration ANTICIPATION = Duration.ofMillis(150);

    /** A copy that takes longer than this was interrupted by something: 10 s, our own choice. */
    public static final Duration COPY_WALK_AWAY = Duration.ofSeconds(10);

    /** An answer that takes longer than this says nothing about thinking: 60 s, our own choice. */
    public static final Duration ANSWER_WALK_AWAY = Duration.ofSeconds(60);

    /** The bounds within which a believed median first key is kept, milliseconds. Our own choice. */
    static final double LEAST_FIRST_KEY = 200;

    static final double MOST_FIRST_KEY = 3_000;

    /** The most a believed median whole time can be, milliseconds. Our own choice. */
    static final double MOST_WHOLE = 6_000;

    /** What is taken for the first key before five copies: 800 ms. Our own choice. */
    static final double USUAL_FIRST_KEY = 800;

    /** What is taken for Enter after the first key, and for each further digit: 300 ms. Our own choice. */
    static final double USUAL_NEXT_KEY = 300;

    private static final int USUAL_ANSWER = 42;
    private static final int DIGITS = 3;
    private static final MotorTime UNKNOWN = new MotorTime(blankCells());

    private final CopyTimes[] cells;
    private final double[] firstKeys;
    private final double[] wholes;

    private MotorTime(CopyTimes[] cells) {
        this.cells = cells;
        this.firstKeys = new double[cells.length];
        this.wholes = new double[cells.length];
        for (int cell = 0; cell < cells.length; cell++) {
            estimate(cell);
        }
    }

    /** Of a child who has copied nothing yet. */
    public static MotorTime unknown() {
        return UNKNOWN;
    }

    /** With one more answer; only a number copied rightly, at a believable speed, changes anything. */
    public MotorTime after(Answer answer) {
        if (answer.purpose() != Purpose.COPY || !answer.isCorrect() || answer.erasures() > 0) {
            return this;
        }
        if (answer.firstKey().isEmpty() || answer.whole().isEmpty()) {
            return this;
        }
        long first = answer.firstKey().get().toMillis();
        long whole = answer.whole().get().toMillis();
        if (first < ANTICIPATION.toMillis() || whole < first || whole > COPY_WALK_AWAY.toMillis()) {
            return this;
        }
        CopyTimes[] more = cells.clone();
        int cell = cell(answer.prompt().expected(), answer.surface());
        more[cell] = more[cell].with(answer.askedAt().toEpochMilli(), (int) first, (int) whole);
        return new MotorTime(more);
    }

    /**
     * The part of the response time that was not the hands': the larger of first key and whole time over the motor time,
     * never below zero. Both are looked at because a child may type the first digit at once and think before the second.
     *
     * @return empty if the answer is missing or has no times, came before the prompt could be read, or took so long that
     *     the child had walked away
     */
    public Optional<Duration> thinking(Answer answer) {
        double millis = thinkingMillis(answer);
        return Double.isNaN(millis) ? Optional.empty() : Optional.of(Duration.ofMillis(Math.round(millis)));
    }

    /** As {@link #thinking}, in milliseconds; not a number where that is empty. */
    public double thinkingMillis(Answer answer) {
        if (answer.isMissing() || answer.firstKey().isEmpty() || answer.whole().isEmpty()) {
            return Double.NaN;
        }
        long first = answer.firstKey().get().toMillis();
        long whole = answer.whole().get().toMillis();
        if (first < ANTICIPATION.toMillis() || whole > ANSWER_WALK_AWAY.toMillis()) {
            return Double.NaN;
        }
        int cell = cell(answer.prompt().expected(), answer.surface());
        return Math.max(0, Math.max(first - firstKeys[cell], whole - wholes[cell]));
    }

    /** The same for a number of two digits, as most answers are, in milliseconds. */
    double firstKeyMillis(Surface surface) {
        return firstKeys[cell(USUAL_ANSWER, surface)];
    }

    private void estimate(int cell) {
        int nearest = nearestKnown(cell);
        double first = USUAL_FIRST_KEY;
        double whole = USUAL_FIRST_KEY + USUAL_NEXT_KEY * (cell % DIGITS + 1);
        if (nearest >= 0) {
            first = cells[nearest].firstKey();
            whole = cells[nearest].whole() + USUAL_NEXT_KEY * (cell - nearest);
        }
        firstKeys[cell] = Math.max(LEAST_FIRST_KEY, Math.min(MOST_FIRST_KEY, first));
        wholes[cell] = Math.max(firstKeys[cell], Math.min(MOST_WHOLE, whole));
    }

    /** The cell itself, or the known one of the same surface with the closest digit count; −1 if there is none. */
    private int nearestKnown(int cell) {
        int start = cell - cell % DIGITS;
        int nearest = -1;
        for (int other = start; other < start + DIGITS; other++) {
            if (cells[other].isKnown() && (nearest < 0 || Math.abs(other - cell) < Math.abs(nearest - cell))) {
                nearest = other;
            }
        }
        return nearest;
    }

    private static int cell(int expected, Surface surface) {
        int digits = expected < 10 ? 1 : expected < 100 ? 2 : 3;
        int row = switch (surface) {
            case TERMINAL -> 0;
            case WINDOW -> 1;
            case PLAIN -> 2;
            case PAPER -> 3;
            case ALOUD -> 4;
        };
        return row * DIGITS + digits - 1;
    }

    private static CopyTimes[] blankCells() {
        CopyTimes[] blank = new CopyTimes[Surface.values().length * DIGITS];
        java.util.Arrays.fill(blank, CopyTimes.NONE);
        return blank;
    }
}
