package fourfold.words;

import fourfold.log.Answer;
import fourfold.progress.Progress;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Optional;

/** What is said when the computer's clock can't be right, or probably is not. Practice goes on all the same. */
public final class ClockAdvice {
    /** A zone further west, or a clock put right by some hours, is no reason to speak. */
    private static final Duration EARLY = Duration.ofHours(26);

    /** Longer than families stay away (our own choice). */
    private static final Duration LONG_AWAY = Duration.ofDays(2 * 365);

    private ClockAdvice() {}

    /** One line if the last answer lies ahead of now, or years behind it. */
    public static Optional<String> of(Words words, Progress progress, Instant now) {
        return progress.lastAnswer().flatMap(last -> of(words, last, now));
    }

    private static Optional<String> of(Words words, Answer last, Instant now) {
        Duration since = Duration.between(last.askedAt(), now);
        if (since.compareTo(EARLY.negated()) >= 0 && since.compareTo(LONG_AWAY) <= 0) {
            return Optional.empty();
        }
        LocalDate day = LocalDate.ofEpochDay(last.localDay());
        LocalDate today = LocalDate.ofEpochDay(Math.floorDiv(now.getEpochSecond(), 86_400L));
        return Optional.of(words.say("clock.odd", today, day));
    }
}
