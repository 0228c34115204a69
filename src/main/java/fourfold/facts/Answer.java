package fourfold.facts;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.UUID;

/**
 * One answer as it was given. Whether it is right is worked out, never kept.
 *
 * @param child whose answer it is
 * @param drill the drill it was given in
 * @param position its place in the drill, from 1
 * @param askedAt when the prompt had been shown; kept to the millisecond
 * @param zoneOffsetMinutes minutes by which local time was ahead of UTC then, −1080 to 1080
 * @param purpose why it was asked
 * @param prompt what was asked
 * @param typed the digits as they stood at the end, at most {@value #LONGEST_TYPED}; empty for no answer
 * @param firstKey from the prompt's paint to the first digit; empty if there was none, or if the drill was paused
 * @param whole from the prompt's paint to Enter, or to the calm limit; empty if the drill was paused meanwhile
 * @param erasures how often the child took a digit back
 * @param surface where it was typed
 */
public record Answer(
        UUID child,
        UUID drill,
        int position,
        Instant askedAt,
        int zoneOffsetMinutes,
        Purpose purpose,
        Prompt prompt,
        String typed,
        Optional<Duration> firstKey,
        Optional<Duration> whole,
        int erasures,
        Surface surface) {
    /** The most digits an answer can hold; no right answer needs more than three. */
    public static final int LONGEST_TYPED = 4;

    /** The highest position in a drill. */
    public static final int LAST_POSITION = 10_000;

    public Answer {
        // Plain conditions: a log of years is read through here, and a message is only put together when it is needed.
        if (position < 1 || position > LAST_POSITION) {
            throw new IllegalArgumentException("position is from 1 to " + LAST_POSITION + ", not " + position);
        }
        if (zoneOffsetMinutes < -1080 || zoneOffsetMinutes > 1080) {
            throw new IllegalArgumentException("a zone is at most 1080 minutes from UTC, not " + zoneOffsetMinutes);
        }
        if (typed.length() > LONGEST_TYPED || !isDigits(typed)) {
            throw new IllegalArgumentException(
                    "an answer is at most " + LONGEST_TYPED + " digits, not \"" + typed + "\"");
        }
        if ((prompt instanceof NumberToCopy) != (purpose == Purpose.COPY)) {
            throw new IllegalArgumentException("a number to copy has the purpose copy, and nothing else has");
        }
        if (erasures < 0 || erasures > 100_000) {
            throw new IllegalArgumentException("erasures are from 0 to 100000, not " + erasures);
        }
        if (firstKey.isPresent() && firstKey.get().isNegative()) {
            throw new IllegalArgumentException("first key is never before the prompt");
        }
        if (purpose == Purpose.PAPER && (firstKey.isPresent() || whole.isPresent())) {
            throw new IllegalArgumentException("an answer given on paper has no times");
        }
        if (whole.isPresent() && whole.get().isNegative()) {
            throw new IllegalArgumentException("whole time is never negative");
        }
    }

    private static boolean isDigits(String text) {
        for (int i = 0; i < text.length(); i++) {
            if (text.charAt(i) < '0' || text.charAt(i) > '9') {
                return false;
            }
        }
        return true;
    }

    /**
     * A name for the answer that no other answer has on any computer: made from the drill's and the position, so the
     * same answer kept twice has the same name (a name-based UUID, RFC 9562 version 3).
     */
    public UUID id() {
        return UUID.nameUUIDFromBytes((drill + "/" + position).getBytes(StandardCharsets.UTF_8));
    }

    /** Whether what was typed is the right number; leading noughts are forgiven. */
    public boolean isCorrect() {
        int number = 0;
        for (int i = 0; i < typed.length(); i++) {
            number = 10 * number + typed.charAt(i) - '0';
        }
        return !typed.isEmpty() && number == prompt.expected();
    }

    /** Whether nothing was typed. */
    public boolean isMissing() {
        return typed.isEmpty();
    }

    /** The question, in whichever form it was asked, if it was one and not a number to copy. */
    public Optional<Question> question() {
        if (prompt instanceof Question question) {
            return Optional.of(question);
        }
        return prompt instanceof MissingFactor hidden ? Optional.of(hidden.quotient()) : Optional.empty();
    }

    /** The day on which it was given where the child was, counted from 1 January 1970. */
    public long localDay() {
        return Math.floorDiv(askedAt.getEpochSecond() + zoneOffsetMinutes * 60L, 86_400L);
    }
}
