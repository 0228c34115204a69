// SPDX-License-Identifier: Apache-2.0
package fourfold.memory;

import fourfold.log.Answer;
import fourfold.log.Purpose;
import fourfold.log.Surface;
import java.time.Duration;
import java.util.Optional;
import java.util.stream.Stream;

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

    private static final int USUAL_ANSWER = 42;
    private static final MotorTime UNKNOWN = new MotorTime(
            Stream.of(Surface.values()).map(HandsOnASurface::unknown).toArray(HandsOnASurface[]::new));

    private final HandsOnASurface[] hands;

    private MotorTime(HandsOnASurface[] hands) {
        this.hands = hands;
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
        HandsOnASurface[] more = hands.clone();
        int place = row(answer.surface());
        more[place] = more[place].with(
                digits(answer.prompt().expected()), answer.askedAt().toEpochMilli(), (int) first, (int) whole);
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
        HandsOnASurface known = on(answer.surface());
        int digits = digits(answer.prompt().expected());
        return Math.max(0, Math.max(first - known.firstKey(digits), whole - known.whole(digits)));
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
        return Duration.ofMillis(Math.round(on(surface).firstKey(digits(expected))));
    }

    /** The same for a number of two digits, as most answers are, in milliseconds. */
    double firstKeyMillis(Surface surface) {
        return on(surface).firstKey(digits(USUAL_ANSWER));
    }

    /** The time from a number's paint to Enter that is taken for the hands' own. */
    public Duration whole(int expected, Surface surface) {
        return Duration.ofMillis(Math.round(on(surface).whole(digits(expected))));
    }

    /** Whether five copies of that many digits have been seen on that surface. */
    public boolean isKnown(int expected, Surface surface) {
        return on(surface).isKnown(digits(expected));
    }

    /** Whether five copies of one digit and five of two have been seen on that surface. */
    public boolean isKnown(Surface surface) {
        return isKnown(9, surface) && isKnown(99, surface);
    }

    private HandsOnASurface on(Surface surface) {
        return hands[row(surface)];
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

    private static int digits(int number) {
        return number < 10 ? 1 : number < 100 ? 2 : 3;
    }
}
