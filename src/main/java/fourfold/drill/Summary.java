// SPDX-License-Identifier: Apache-2.0
package fourfold.drill;

import fourfold.facts.Families;
import fourfold.facts.Family;
import fourfold.facts.Operation;
import fourfold.log.Answer;
import fourfold.progress.Dates;
import fourfold.progress.DrillSoFar;
import fourfold.progress.Progress;
import fourfold.progress.Rates;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What a drill came to, compared only with the child's own past.
 *
 * @param practised time practised, pauses left out
 * @param answers what was answered from memory
 * @param changes what became of which families
 * @param gain the one gain most worth telling, if there is one
 * @param day what sort of day it was
 * @param timing the rates of a one-minute timing, if one was taken
 * @param enough whether it ended before its time because nothing useful was left to ask
 */
public record Summary(
        Duration practised,
        Answered answers,
        Changes changes,
        Optional<Gain> gain,
        Day day,
        Optional<Timed> timing,
        boolean enough) {
    /** A drill shorter than this share of what was planned, with few questions, was a short one (our own choice). */
    private static final double SHORT_SHARE = 0.5;

    private static final int FEW = 15;

    /** With fewer right answers it was a hard day (our own choice). */
    private static final double HARD_SHARE = 0.75;

    /** What sort of day it was. */
    public enum Day {
        /** Nothing was asked, for the parent has set everything aside. */
        SET_ASIDE,
        /** Nothing was asked, for no table has reached its date in the calendar. */
        BEFORE_ITS_DATE,
        /** Nothing was asked from memory. */
        EMPTY,
        /** Much shorter than planned. */
        SHORT,
        /** Many questions were missed. */
        HARD,
        /** Any other. */
        GOOD;

        /** Whether nothing was asked because the parent wants nothing asked today. */
        public boolean isAtRest() {
            return this == SET_ASIDE || this == BEFORE_ITS_DATE;
        }

        /** The key of the sentence that says so. */
        public String why() {
            return this == SET_ASIDE ? "summary.setaside" : "summary.beforedate";
        }
    }

    /** A timing's operation and rates. */
    public record Timed(Operation operation, Rates rates) {}

    /**
     * Questions from memory, those of a timing left out.
     *
     * @param asked how many were asked
     * @param right how many of them were right
     */
    public record Answered(int asked, int right) {}

    /**
     * What became of which families.
     *
     * @param met met for the first time
     * @param firmer their level rose
     * @param quicker answered clearly quicker than in the child's own last weeks
     * @param again missed most in this drill; they come again early in the next
     * @param next the family that is to be met next, if there is one
     */
    public record Changes(
            List<Family> met, List<Family> firmer, List<Family> quicker, List<Family> again, Optional<Family> next) {
        public Changes {
            met = List.copyOf(met);
            firmer = List.copyOf(firmer);
            quicker = List.copyOf(quicker);
            again = List.copyOf(again);
        }
    }

    /**
     * The summary of the drill in {@code after}, which began from {@code before}.
     *
     * @param left whether somebody ended it, and not the drill itself
     */
    static Summary of(Progress before, Progress after, Instant at, boolean left) {
        DrillSoFar drill = after.drill().orElseThrow();
        List<Answer> answers = drill.answers();
        List<Answer> fromMemory = answers.stream()
                .filter(a -> a.purpose().isFromMemory() && a.purpose() != fourfold.log.Purpose.TIMED)
                .toList();
        List<Family> met = new ArrayList<>();
        List<Family> firmer = new ArrayList<>();
        for (Family family : Families.all()) {
            if (!before.isMet(family)) {
                if (after.isMet(family)) {
                    met.add(family);
                }
            } else if (after.level(family).compareTo(before.level(family)) > 0) {
                firmer.add(family);
            }
        }
        Answered answered = new Answered(fromMemory.size(), (int)
                fromMemory.stream().filter(Answer::isCorrect).count());
        Changes changes = new Changes(met, firmer, Gains.quicker(before, answers), promised(after), after.nextNew());
        return new Summary(
                drill.practised(at),
                answered,
                changes,
                Gain.of(before, after, changes, fromMemory),
                answered.asked() == 0
                        ? nothingAsked(after)
                        : day(answered, drill.practised(at), drill.session().planned()),
                OneMinuteTiming.answers(drill).map(Summary::timed),
                !left && !fromMemory.isEmpty() && !drill.isOver(at));
    }

    private static Day nothingAsked(Progress progress) {
        if (progress.isAllSetAside()) {
            return Day.SET_ASIDE;
        }
        return Dates.isBeforeAll(progress) ? Day.BEFORE_ITS_DATE : Day.EMPTY;
    }

    private static Day day(Answered answered, Duration practised, Duration planned) {
        if (practised.toMillis() < SHORT_SHARE * planned.toMillis() && answered.asked() < FEW) {
            return Day.SHORT;
        }
        return answered.right() < HARD_SHARE * answered.asked() ? Day.HARD : Day.GOOD;
    }

    /** What was missed most and comes again early in the next drill. */
    private static List<Family> promised(Progress after) {
        return after.recent().missed().stream().filter(after::isMet).toList();
    }

    private static Timed timed(List<Answer> answers) {
        Operation operation = answers.get(0).question().orElseThrow().operation();
        return new Timed(operation, Rates.of(answers, operation));
    }
}
