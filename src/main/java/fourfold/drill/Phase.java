// SPDX-License-Identifier: Apache-2.0
package fourfold.drill;

import fourfold.facts.Family;
import fourfold.facts.MissingFactor;
import fourfold.facts.Operation;
import fourfold.facts.Prompt;
import fourfold.facts.Question;
import fourfold.log.Answer;
import fourfold.log.Purpose;
import fourfold.progress.Hint;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/** What the child sees. */
public sealed interface Phase {
    /** The drill is ready; Enter begins it. */
    record Ready() implements Phase {}

    /**
     * A new family with its picture, which grows at each Enter until it is whole, in three steps at most; then Enter
     * covers it, and its facts are recalled.
     *
     * @param family the family
     * @param depiction its picture; empty where the parent wants none
     * @param hint a way to the product from facts the child knows
     * @param grown how many of the picture's groups are shown, 1 to the smaller factor
     * @param facts the family's facts as they are shown: a division whose sign has not come yet as a missing factor
     */
    record Meeting(Family family, Optional<Depiction> depiction, Optional<Hint> hint, int grown, List<Prompt> facts)
            implements Phase {
        /** The most steps in which a picture grows (our own choice). */
        private static final int STEPS = 3;

        public Meeting {
            facts = List.copyOf(facts);
        }

        /** How much of a family's picture is shown at first, and comes with each step. */
        static int step(Family family) {
            return (family.low() + STEPS - 1) / STEPS;
        }

        Meeting grow() {
            return new Meeting(family, depiction, hint, Math.min(family.low(), grown + step(family)), facts);
        }

        /** Whether the whole picture is shown. */
        public boolean isWhole() {
            return grown >= family.low() || depiction.isEmpty();
        }
    }

    /**
     * Something to type.
     *
     * @param prompt what is asked
     * @param purpose why, for the log
     * @param reason why, for the screen
     * @param help what is shown beside it
     * @param tries slips so far in typing what is in view
     * @param entry what was typed so far
     */
    record Asking(Prompt prompt, Purpose purpose, Reason reason, Help help, int tries, Entry entry) implements Phase {
        /** A prompt that is about to be shown. */
        static Asking fresh(Prompt prompt, Purpose purpose, Reason reason) {
            return fresh(prompt, purpose, reason, Help.NONE);
        }

        /** A prompt that is about to be shown with its answer in view and help beside it. */
        static Asking fresh(Prompt prompt, Purpose purpose, Reason reason, Help help) {
            return new Asking(prompt, purpose, reason, help, 0, Entry.EMPTY);
        }

        /** Whether the child sees what to type. */
        public boolean isInView() {
            return !purpose.isFromMemory() && reason != Reason.COVERED;
        }

        /** When the prompt was painted; empty until then. */
        public Optional<Instant> shownAt() {
            return entry.seen().shownAt();
        }

        /** When the last key came, or else the paint; empty until then. */
        public Optional<Instant> lastKeyAt() {
            return entry.seen().lastKeyAt();
        }

        /** The digits typed so far. */
        public String typed() {
            return entry.typed();
        }

        /** From the paint to the first digit, if it is known. */
        public Optional<Duration> firstKey() {
            return entry.firstKey();
        }

        /** How often a digit was taken back. */
        public int erasures() {
            return entry.erasures();
        }

        /** Whether a pause came between. */
        public boolean interrupted() {
            return entry.interrupted();
        }

        Asking shown(Instant at) {
            return with(entry.shown(at));
        }

        Asking typed(String digits, Instant at) {
            return with(entry.typed(digits, at));
        }

        Asking line(String digits) {
            return with(entry.line(digits));
        }

        Asking erased(Instant at) {
            return with(entry.erased(at));
        }

        /** The same prompt after a pause, with what was typed: to be painted again, and no longer timed. */
        Asking afterPause() {
            return with(entry.afterPause());
        }

        /** The same prompt once more after a slip in typing what is in view. */
        Asking onceMore() {
            return new Asking(prompt, purpose, reason, help, tries + 1, Entry.EMPTY);
        }

        /** The same prompt with nothing typed, no longer timed. */
        Asking wiped() {
            return with(entry.wiped());
        }

        /** The same when the question that led here has been counted. */
        Asking counted() {
            return new Asking(prompt, purpose, reason, help.counted(), tries, entry);
        }

        private Asking with(Entry other) {
            return new Asking(prompt, purpose, reason, help, tries, other);
        }
    }

    /** Why something is being typed. */
    enum Reason {
        /** A number to copy. */
        WARMING_UP,
        /** A fact of a family that is being introduced, its answer in view. */
        MEETING,
        /** A fact of a family that is being introduced, recalled when it has just been covered. */
        COVERED,
        /** A question from memory. */
        RECALL,
        /** A question from memory, after some that were raced through with errors. */
        NO_HURRY,
        /** A question of a one-minute timing. */
        TIMED,
        /** The right fact after an error, in view, typed once. */
        PUTTING_RIGHT,
        /** The right fact after no answer, in view, typed once. */
        SHOWN
    }

    /** A short moment in which a right answer stays on the screen. */
    record Right(Answer answer, Instant until) implements Phase {}

    /** Nothing moves; Enter goes on with {@code resumed}. */
    record Paused(Phase resumed, Instant since, boolean byItself) implements Phase {}

    /** Too many keys came at once. When the hands have come to rest, Enter goes on with {@code resumed}. */
    record HandsOff(Phase resumed, Instant since, Instant lastKeyAt) implements Phase {
        /** How long no key may come before Enter goes on (our own choice). */
        static final Duration REST = Duration.ofMillis(1200);

        /** Whether no key has come for long enough. */
        boolean isAtRest(Instant at) {
            return Duration.between(lastKeyAt, at).compareTo(REST) >= 0;
        }

        /** The same after one more key. */
        HandsOff pressed(Instant at) {
            return new HandsOff(resumed, since, at);
        }

        /** What goes on: what many keys at once have typed is nothing that a child meant. */
        Phase wiped() {
            return resumed instanceof Asking asking ? asking.wiped() : resumed;
        }
    }

    /** A one-minute timing is offered; Enter begins it, pause leaves it out. */
    record OneMinute(Operation operation) implements Phase {}

    /** The drill is over. */
    record Finished(Summary summary) implements Phase {}

    /** The same after a break: what is asked is painted again and no longer timed, a right answer stands once more. */
    default Phase goingOn(Instant at) {
        if (this instanceof Asking asking) {
            return asking.afterPause();
        }
        return this instanceof Right right ? new Right(right.answer(), at.plus(Drill.RIGHT_STANDS)) : this;
    }

    /** Whether nothing is asked and nothing goes on until a key says so: before the drill, or in a break. */
    default boolean isAtRest() {
        return this instanceof Ready || this instanceof Paused || this instanceof HandsOff;
    }

    /** Whether a child sees the same as in another phase; when a key last came is no part of that. */
    default boolean looksLike(Phase other) {
        return equals(other)
                || (this instanceof Asking asking
                        && other instanceof Asking then
                        && asking.prompt().equals(then.prompt())
                        && asking.reason() == then.reason()
                        && asking.typed().equals(then.typed()));
    }

    /** The question on the screen in whichever form, if there is one. */
    default Optional<Question> question() {
        return this instanceof Asking asking ? questionOf(asking.prompt()) : Optional.empty();
    }

    /** The question behind a prompt, if it is no number to copy. */
    static Optional<Question> questionOf(Prompt prompt) {
        if (prompt instanceof Question question) {
            return Optional.of(question);
        }
        return prompt instanceof MissingFactor hidden ? Optional.of(hidden.quotient()) : Optional.empty();
    }
}
