package fourfold.drill;

import fourfold.facts.Answer;
import fourfold.facts.Family;
import fourfold.facts.Prompt;
import fourfold.facts.Purpose;
import fourfold.facts.Question;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;

/** What the child sees. */
public sealed interface Phase {
    /** The drill is ready; Enter begins it. */
    record Ready() implements Phase {}

    /** A new family with its picture; Enter goes on to typing its facts. */
    record Meeting(Family family) implements Phase {}

    /** Something to type. */
    record Asking(
            Prompt prompt,
            Purpose purpose,
            Reason reason,
            Optional<Instant> shownAt,
            Optional<Instant> lastKeyAt,
            String typed,
            Optional<Duration> firstKey,
            int erasures,
            boolean interrupted,
            int tries)
            implements Phase {
        /** A prompt that is about to be shown. */
        static Asking fresh(Prompt prompt, Purpose purpose, Reason reason) {
            return new Asking(
                    prompt, purpose, reason, Optional.empty(), Optional.empty(), "", Optional.empty(), 0, false, 0);
        }

        /** Whether the child sees what to type. */
        public boolean isInView() {
            return !purpose.isFromMemory();
        }

        Asking shown(Instant at) {
            return new Asking(
                    prompt,
                    purpose,
                    reason,
                    Optional.of(at),
                    Optional.of(at),
                    typed,
                    firstKey,
                    erasures,
                    interrupted,
                    tries);
        }

        Asking typed(String digits, Instant at) {
            Optional<Duration> first = firstKey.isPresent() || interrupted
                    ? firstKey
                    : shownAt.map(shown -> Drill.atLeastZero(Duration.between(shown, at)));
            return new Asking(
                    prompt, purpose, reason, shownAt, Optional.of(at), digits, first, erasures, interrupted, tries);
        }

        /** A whole line at once: when its first digit was typed is not known. */
        Asking line(String digits) {
            return new Asking(
                    prompt, purpose, reason, shownAt, lastKeyAt, digits, Optional.empty(), 0, interrupted, tries);
        }

        Asking erased(Instant at) {
            String left = typed.isEmpty() ? typed : typed.substring(0, typed.length() - 1);
            int more = typed.isEmpty() ? 0 : 1;
            return new Asking(
                    prompt,
                    purpose,
                    reason,
                    shownAt,
                    Optional.of(at),
                    left,
                    firstKey,
                    erasures + more,
                    interrupted,
                    tries);
        }

        /** The same prompt after a pause, with what was typed: to be painted again, and no longer timed. */
        Asking afterPause() {
            return new Asking(
                    prompt,
                    purpose,
                    reason,
                    Optional.empty(),
                    Optional.empty(),
                    typed,
                    Optional.empty(),
                    erasures,
                    true,
                    tries);
        }

        /** The same prompt once more after a slip in typing what is in view. */
        Asking onceMore() {
            return new Asking(
                    prompt,
                    purpose,
                    reason,
                    Optional.empty(),
                    Optional.empty(),
                    "",
                    Optional.empty(),
                    0,
                    false,
                    tries + 1);
        }
    }

    /** Why something is being typed. */
    enum Reason {
        /** A number to copy. */
        WARMING_UP,
        /** A fact of a family that is being introduced, its answer in view. */
        MEETING,
        /** A question from memory. */
        RECALL,
        /** The right fact after an error, in view, typed once. */
        PUTTING_RIGHT,
        /** The right fact after no answer, in view, typed once. */
        SHOWN
    }

    /** A short moment in which a right answer stands on the screen. */
    record Right(Answer answer, Instant until) implements Phase {}

    /** Nothing moves; Enter goes on with {@code resumed}. */
    record Paused(Phase resumed, Instant since, boolean byItself) implements Phase {}

    /** The drill is over. */
    record Finished(Summary summary) implements Phase {}

    /** The question on the screen, if there is one. */
    default Optional<Question> question() {
        return this instanceof Asking asking && asking.prompt() instanceof Question q
                ? Optional.of(q)
                : Optional.empty();
    }
}
