// SPDX-License-Identifier: Apache-2.0
package fourfold.log;

import fourfold.facts.MissingFactor;
import fourfold.facts.NumberToCopy;
import fourfold.facts.Prompt;
import fourfold.facts.Question;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.util.Locale;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * One answer as it was given. Whether it is right is worked out, never kept.
 *
 * @param place whose answer it is, and its position in which drill
 * @param asked when the prompt had been shown
 * @param purpose why it was asked
 * @param prompt what was asked
 * @param typing what was typed, and how fast
 * @param surface where it was typed, written or said
 */
public record Answer(Place place, Moment asked, Purpose purpose, Prompt prompt, Typing typing, Surface surface) {
    /** The most digits an answer can hold; no right answer needs more than three. */
    public static final int LONGEST_TYPED = 4;

    private static final int MOST_ERASURES = 100_000;

    /** The highest position in a drill. */
    public static final int LAST_POSITION = 10_000;

    /**
     * The position of an answer.
     *
     * @param child whose answer it is
     * @param drill the drill it was given in
     * @param position its place in the drill, from 1
     */
    public record Place(UUID child, UUID drill, int position) {
        public Place {
            if (position < 1 || position > LAST_POSITION) {
                throw new InvalidValue(Reason.POSITION, LAST_POSITION, position);
            }
        }

        /**
         * A place in a drill.
         *
         * @param position from 1
         */
        public static Place in(DrillSession drill, int position) {
            return new Place(drill.child(), drill.id(), position);
        }
    }

    /**
     * How long an answer took, from the prompt's paint.
     *
     * @param firstKey to the first digit; empty if there was none, if the drill was paused, on paper and aloud
     * @param whole to Enter, or to the calm limit; on paper the answer's share of the page's time; empty if the drill was
     *     paused meanwhile, or if nobody looked at a clock
     * @param pace how quickly an answer came that was said aloud; empty for every other, or if nobody said
     */
    public record Times(Optional<Duration> firstKey, Optional<Duration> whole, Optional<Pace> pace) {
        /** Not timed. */
        public static final Times NONE = new Times(Optional.empty(), Optional.empty());

        /** Of an answer that was typed or written. */
        public Times(Optional<Duration> firstKey, Optional<Duration> whole) {
            this(firstKey, whole, Optional.empty());
        }

        /** Of an answer that was said aloud, and heard to come like this. */
        public static Times heard(Pace pace) {
            return new Times(Optional.empty(), Optional.empty(), Optional.of(pace));
        }

        public Times {
            if (firstKey.isPresent() && firstKey.get().isNegative()) {
                throw new InvalidValue(Reason.TIME_NEGATIVE);
            }
            if (whole.isPresent() && whole.get().isNegative()) {
                throw new InvalidValue(Reason.TIME_NEGATIVE);
            }
        }
    }

    /** How quickly an answer came that was said aloud, as the grown-up heard it. */
    public enum Pace {
        /** At once, as something known. */
        QUICK,
        /** After thinking. */
        SLOW;

        /** The word used in files. */
        public String word() {
            return name().toLowerCase(Locale.ROOT);
        }

        /**
         * The pace a file's word names.
         *
         * @throws InvalidValue if there is none
         */
        public static Pace ofWord(String word) {
            return Stream.of(values())
                    .filter(p -> p.word().equals(word))
                    .findFirst()
                    .orElseThrow(() -> new InvalidValue(
                            Reason.PACE, Stream.of(values()).map(Pace::word).collect(Collectors.joining(", ")), word));
        }
    }

    /**
     * What was typed, and how fast.
     *
     * @param digits as they were at the end, at most {@value #LONGEST_TYPED}; empty for no answer
     * @param times how long it took
     * @param erasures how often the child took a digit back
     */
    public record Typing(String digits, Times times, int erasures) {
        public Typing {
            // Plain conditions: a log of years is read through here, and a message is made only when it is needed.
            if (digits.length() > LONGEST_TYPED || !isDigits(digits)) {
                throw new InvalidValue(Reason.TYPED, LONGEST_TYPED, digits);
            }
            if (erasures < 0 || erasures > MOST_ERASURES) {
                throw new InvalidValue(Reason.ERASURES, MOST_ERASURES, erasures);
            }
        }
    }

    public Answer {
        if ((prompt instanceof NumberToCopy) != (purpose == Purpose.COPY)) {
            throw new InvalidValue(Reason.COPY_PURPOSE);
        }
        if (!purpose.isTyped() && typing.times().firstKey().isPresent()) {
            throw new InvalidValue(Reason.NO_FIRST_KEY);
        }
        if (purpose != Purpose.ALOUD && typing.times().pace().isPresent()) {
            throw new InvalidValue(Reason.PACE_NOT_HEARD);
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

    /** The same answer, asked at another time. */
    public Answer askedAt(Instant at) {
        return new Answer(place, new Moment(at, asked.zoneOffsetMinutes()), purpose, prompt, typing, surface);
    }

    /** The same answer with something else typed, or with other times. */
    public Answer with(Typing other) {
        return new Answer(place, asked, purpose, prompt, other, surface);
    }

    /** Whose answer it is. */
    public UUID child() {
        return place.child;
    }

    /** The drill it was given in. */
    public UUID drill() {
        return place.drill;
    }

    /** Its place in the drill, from 1. */
    public int position() {
        return place.position;
    }

    /** When the prompt had been shown. */
    public Instant askedAt() {
        return asked.at();
    }

    /** Minutes by which local time was ahead of UTC then. */
    public int zoneOffsetMinutes() {
        return asked.zoneOffsetMinutes();
    }

    /** The same answer at another place. */
    public Answer in(Place other) {
        return new Answer(other, asked, purpose, prompt, typing, surface);
    }

    /** The same answer where local time was so many minutes ahead of UTC. */
    public Answer inZone(int zoneOffsetMinutes) {
        return new Answer(place, new Moment(asked.at(), zoneOffsetMinutes), purpose, prompt, typing, surface);
    }

    /** The digits as they were at the end; empty for no answer. */
    public String typed() {
        return typing.digits;
    }

    /** From the prompt's paint to the first digit, if it was timed. */
    public Optional<Duration> firstKey() {
        return typing.times.firstKey;
    }

    /** From the prompt's paint to Enter, if it was timed. */
    public Optional<Duration> whole() {
        return typing.times.whole;
    }

    /** How quickly it came, if it was said aloud and somebody said so. */
    public Optional<Pace> pace() {
        return typing.times.pace;
    }

    /** How often the child took a digit back. */
    public int erasures() {
        return typing.erasures;
    }

    /**
     * A name for the answer that no other answer has on any computer: made from the drill's and the position, so the
     * same answer kept twice has the same name (a name-based UUID, RFC 9562 version 3).
     */
    public UUID id() {
        return UUID.nameUUIDFromBytes((drill() + "/" + position()).getBytes(StandardCharsets.UTF_8));
    }

    /** Whether what was typed is the right number; leading zeros are ignored. */
    public boolean isCorrect() {
        int number = 0;
        for (int i = 0; i < typed().length(); i++) {
            number = 10 * number + typed().charAt(i) - '0';
        }
        return !typed().isEmpty() && number == prompt.expected();
    }

    /** Whether nothing was typed. */
    public boolean isMissing() {
        return typed().isEmpty();
    }

    /** The question, in whichever form it was asked, if it was one and not a number to copy. */
    public Optional<Question> question() {
        if (prompt instanceof Question question) {
            return Optional.of(question);
        }
        return prompt instanceof MissingFactor hidden ? Optional.of(hidden.quotient()) : Optional.empty();
    }

    /** The index of the trace that was asked, in whichever form; −1 for a number to copy. No object is made. */
    public int traceIndex() {
        if (prompt instanceof Question question) {
            return question.traceIndex();
        }
        return prompt instanceof MissingFactor hidden ? hidden.quotient().traceIndex() : -1;
    }

    /** The day on which it was given where the child was, counted from 1 January 1970. */
    public long localDay() {
        return asked.localDay();
    }
}
