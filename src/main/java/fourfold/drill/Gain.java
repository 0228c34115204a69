// SPDX-License-Identifier: Apache-2.0
package fourfold.drill;

import fourfold.facts.Families;
import fourfold.facts.Family;
import fourfold.facts.Question;
import fourfold.facts.Trace;
import fourfold.log.Answer;
import fourfold.progress.Mastery;
import fourfold.progress.Progress;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * The one gain of a drill that is most worth telling: a table finished, the hardest family that became fluent, one recalled
 * after a week or more, one that rose a level, one that went quicker, one that was met. The order is our own choice.
 *
 * @param kind what happened
 * @param family to which family
 * @param number the table that was finished, or the days it was recalled after; otherwise 0
 */
public record Gain(Kind kind, Family family, long number) {
    /** Kinds of gains, the most telling first. */
    public enum Kind {
        /** Every family of a table is fluent. */
        TABLE,
        /** A family is right and quick now. */
        FLUENT,
        /** A family was still known after a week or more. */
        RECALLED,
        /** A family rose a level. */
        FIRMER,
        /** A family was answered clearly quicker. */
        QUICKER,
        /** Families were met for the first time. */
        MET
    }

    /** A family that was recalled after fewer days is nothing special. */
    private static final long A_WEEK = 7;

    /** By how hard families are: those with 1 and 10 are rules; of the others the larger product is harder to most. */
    public static final Comparator<Family> HARDNESS = Comparator.<Family>comparingInt(
                    f -> f.low() == 1 || f.high() == 10 ? 0 : 1)
            .thenComparingInt(Family::product);

    /** The most telling one; empty if there is none. */
    static Optional<Gain> of(Progress before, Progress after, Summary.Changes changes, List<Answer> fromMemory) {
        return Stream.of(
                        table(before, after),
                        hardest(fluent(before, after, changes)).map(f -> new Gain(Kind.FLUENT, f, 0)),
                        recalled(before, changes, fromMemory),
                        hardest(changes.firmer()).map(f -> new Gain(Kind.FIRMER, f, 0)),
                        hardest(changes.quicker()).map(f -> new Gain(Kind.QUICKER, f, 0)),
                        met(changes).map(f -> new Gain(Kind.MET, f, 0)))
                .flatMap(Optional::stream)
                .findFirst();
    }

    private static Optional<Family> hardest(List<Family> families) {
        return families.stream().max(HARDNESS);
    }

    /** The hardest that was met and not missed, if there is one: what a child got right is what it likes to tell. */
    private static Optional<Family> met(Summary.Changes changes) {
        List<Family> known =
                changes.met().stream().filter(f -> !changes.again().contains(f)).toList();
        return hardest(known).or(() -> hardest(changes.met()));
    }

    private static Optional<Gain> table(Progress before, Progress after) {
        for (int n = Families.LARGEST_FACTOR; n >= 1; n--) {
            if (isFluent(after, n) && !isFluent(before, n)) {
                return Optional.of(new Gain(Kind.TABLE, Family.of(n, n), n));
            }
        }
        return Optional.empty();
    }

    private static boolean isFluent(Progress progress, int table) {
        return Families.inTable(table).stream().allMatch(f -> progress.level(f).atLeast(Mastery.FLUENT));
    }

    private static List<Family> fluent(Progress before, Progress after, Summary.Changes changes) {
        return changes.firmer().stream()
                .filter(f -> after.level(f).atLeast(Mastery.FLUENT)
                        && !before.level(f).atLeast(Mastery.FLUENT))
                .toList();
    }

    /** The family that was left longest among those asked after a week or more and not missed. */
    private static Optional<Gain> recalled(Progress before, Summary.Changes changes, List<Answer> fromMemory) {
        List<Gain> recalled = new ArrayList<>();
        for (Answer answer : fromMemory) {
            Question question = answer.question().orElseThrow();
            Family family = question.family();
            long days = answer.localDay() - lastDay(before, family);
            if (days >= A_WEEK && before.isMet(family) && !changes.again().contains(family)) {
                recalled.add(new Gain(Kind.RECALLED, family, days));
            }
        }
        return recalled.stream().max(Comparator.comparingLong(Gain::number).thenComparing(Gain::family, HARDNESS));
    }

    private static long lastDay(Progress before, Family family) {
        long last = Long.MIN_VALUE / 2;
        for (Trace trace : family.traces()) {
            last = Math.max(last, before.mastery(trace).lastDayOr(last));
        }
        return last;
    }
}
