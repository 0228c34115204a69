// SPDX-License-Identifier: Apache-2.0
package fourfold.drill;

import fourfold.drill.Phase.Asking;
import fourfold.log.Answer;
import fourfold.log.DrillSession;
import fourfold.log.Moment;
import fourfold.log.Surface;
import fourfold.progress.DrillSoFar;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Optional;

/**
 * How what is typed becomes an answer: what each key does, when the answer is at an end, its place in the drill, and
 * times only where they mean something.
 */
final class Answering {
    /** Enter with nothing typed means "show me" only this long after the question (our own choice). */
    private static final Duration SHOW_ME_AFTER = Duration.ofMillis(1500);

    private Answering() {}

    /** The prompt after an event that does not end the answer; the same where the event means nothing to it. */
    static Asking typing(Asking asking, Event event) {
        if (event instanceof Event.Painted painted) {
            return asking.shownAt().isPresent() ? asking : asking.shown(painted.at());
        }
        if (asking.shownAt().isEmpty()) {
            return asking;
        }
        if (event instanceof Event.Digit digit && asking.typed().length() < Answer.LONGEST_TYPED) {
            return asking.typed(asking.typed() + digit.digit(), digit.at());
        }
        return event instanceof Event.Erase erase ? asking.erased(erase.at()) : asking;
    }

    /** Whether the event ends the answer: a whole line, or Enter. */
    static boolean ends(Asking asking, Event event) {
        if (asking.shownAt().isEmpty()) {
            return false;
        }
        if (event instanceof Event.Enter enter) {
            return !asking.typed().isEmpty() || mayBeShown(asking, enter.at());
        }
        return event instanceof Event.Line;
    }

    /** Whether Enter with nothing typed asks to be shown the answer, and is not the tail of the key before. */
    private static boolean mayBeShown(Asking asking, Instant at) {
        return !asking.isInView()
                && asking.shownAt()
                        .filter(shown -> Duration.between(shown, at).compareTo(SHOW_ME_AFTER) >= 0)
                        .isPresent();
    }

    /**
     * Whether no key has come for as long as the calm limit.
     *
     * @param calm how long a question waits for a key
     */
    static boolean isUntouched(Asking asking, Instant at, Duration calm) {
        return asking.lastKeyAt()
                .filter(key -> Duration.between(key, at).compareTo(calm) >= 0)
                .isPresent();
    }

    static Answer answer(Asking asking, Instant at, DrillSoFar drill, Surface surface) {
        Instant shown = asking.shownAt().orElseThrow().truncatedTo(ChronoUnit.MILLIS);
        Optional<Duration> whole = asking.interrupted()
                ? Optional.empty()
                : asking.shownAt().map(s -> Drill.atLeastZero(Duration.between(s, at)));
        DrillSession session = drill.session();
        return new Answer(
                Answer.Place.in(session, drill.size() + 1),
                new Moment(shown, session.zoneOffsetMinutes()),
                asking.purpose(),
                asking.prompt(),
                new Answer.Typing(asking.typed(), new Answer.Times(asking.firstKey(), whole), asking.erasures()),
                surface);
    }
}
