// SPDX-License-Identifier: Apache-2.0
package fourfold.memory;

import fourfold.log.Answer;
import fourfold.log.Purpose;
import fourfold.log.Surface;
import java.time.Duration;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

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

    /**
     * What is taken for reading a question on paper and going on to it, and for writing each digit: 800 ms each. Our own
     * choice: nobody copies numbers on paper here, so a hand that writes slowly is not known from others.
     */
    static final double USUAL_READING = 800;

    static final double USUAL_WRITTEN_DIGIT = 800;

    private static final int USUAL_ANSWER = 42;
    private static final int DIGITS = 3;
    private static final MotorTime UNKNOWN = new MotorTime(blankCells());

    private final CopyTimes[] cells;

    /** Worked out when first asked for, since copies come several in a row; whoever comes twice finds the same. */
    private @Nullable Estimates estimates;

    private MotorTime(CopyTimes[] cells) {
        this.cells = cells;
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
        long first = firstMillis(answer);
        if (first < 0 || answer.whole().isEmpty()) {
            return this;
        }
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
        long first = firstMillis(answer);
        if (answer.isMissing() || first < 0 || answer.whole().isEmpty()) {
            return Double.NaN;
        }
        long whole = answer.whole().get().toMillis();
        if (first < ANTICIPATION.toMillis() || whole > ANSWER_WALK_AWAY.toMillis()) {
            return Double.NaN;
        }
        int cell = cell(answer.prompt().expected(), answer.surface());
        Estimates hands = estimates();
        return Math.max(0, Math.max(first - hands.firstKeys[cell], whole - hands.wholes[cell]));
    }

    /**
     * Milliseconds to the first key. Plain lines come whole and have none of their own: there it is the line's time, in
     * copies as in answers, so what a screen reader takes to speak is the hands' and not the child's thinking. On a timed
     * page of paper it is the answer's share of the page's time: coarse, for all answers of a page have the same one.
     *
     * @return −1 if it is not known
     */
    static long firstMillis(Answer answer) {
        // Plain conditions: a log of years is read through here.
        if (answer.firstKey().isPresent()) {
            return answer.firstKey().get().toMillis();
        }
        boolean whole = answer.surface() == Surface.PLAIN || answer.surface() == Surface.PAPER;
        return whole && answer.whole().isPresent() ? answer.whole().get().toMillis() : -1;
    }

    /** The time from a number's paint to its first digit that is taken for the hands' own; at plain lines and on paper, all of it. */
    public Duration firstKey(int expected, Surface surface) {
        return Duration.ofMillis(Math.round(estimates().firstKeys[cell(expected, surface)]));
    }

    /** The same for a number of two digits, as most answers are, in milliseconds. */
    double firstKeyMillis(Surface surface) {
        return estimates().firstKeys[cell(USUAL_ANSWER, surface)];
    }

    /** The time from a number's paint to Enter that is taken for the hands' own. */
    public Duration whole(int expected, Surface surface) {
        return Duration.ofMillis(Math.round(estimates().wholes[cell(expected, surface)]));
    }

    /** Whether five copies of that many digits have been seen on that surface. */
    public boolean isKnown(int expected, Surface surface) {
        return cells[cell(expected, surface)].isKnown();
    }

    /** Whether five copies of one digit and five of two have been seen on that surface. */
    public boolean isKnown(Surface surface) {
        return isKnown(9, surface) && isKnown(99, surface);
    }

    private Estimates estimates() {
        Estimates known = estimates;
        if (known == null) {
            known = new Estimates(cells);
            estimates = known;
        }
        return known;
    }

    /** What each cell's copies come to, milliseconds. Immutable. */
    private static final class Estimates {
        private final double[] firstKeys;
        private final double[] wholes;

        Estimates(CopyTimes[] cells) {
            double[] knownFirst = new double[cells.length];
            double[] knownWhole = new double[cells.length];
            for (int cell = 0; cell < cells.length; cell++) {
                if (cells[cell].isKnown()) {
                    knownFirst[cell] = cells[cell].firstKey();
                    knownWhole[cell] = cells[cell].whole();
                }
            }
            this.firstKeys = new double[cells.length];
            this.wholes = new double[cells.length];
            for (int cell = 0; cell < cells.length; cell++) {
                int nearest = nearestKnown(cells, cell);
                double first = USUAL_FIRST_KEY;
                boolean written = cell / DIGITS == row(Surface.PAPER);
                double whole = written
                        ? USUAL_READING + USUAL_WRITTEN_DIGIT * (cell % DIGITS + 1)
                        : USUAL_FIRST_KEY + USUAL_NEXT_KEY * (cell % DIGITS + 1);
                if (nearest >= 0) {
                    first = knownFirst[nearest];
                    whole = knownWhole[nearest] + USUAL_NEXT_KEY * (cell - nearest);
                }
                boolean byLine = written || cell / DIGITS == row(Surface.PLAIN);
                firstKeys[cell] = byLine
                        ? Math.max(LEAST_FIRST_KEY, Math.min(MOST_WHOLE, whole))
                        : Math.max(LEAST_FIRST_KEY, Math.min(MOST_FIRST_KEY, first));
                wholes[cell] = Math.max(firstKeys[cell], Math.min(MOST_WHOLE, whole));
            }
        }
    }

    /** The cell itself, or the known one of the same surface with the closest digit count; −1 if there is none. */
    private static int nearestKnown(CopyTimes[] cells, int cell) {
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
        return row(surface) * DIGITS + digits - 1;
    }

    private static int row(Surface surface) {
        return switch (surface) {
            case TERMINAL -> 0;
            case WINDOW -> 1;
            case PLAIN -> 2;
            case PAPER -> 3;
            case ALOUD -> 4;
        };
    }

    private static CopyTimes[] blankCells() {
        CopyTimes[] blank = new CopyTimes[Surface.values().length * DIGITS];
        java.util.Arrays.fill(blank, CopyTimes.NONE);
        return blank;
    }
}
