// SPDX-License-Identifier: Apache-2.0
package fourfold.insight;

import fourfold.facts.Family;
import fourfold.facts.Question;
import fourfold.facts.Trace;
import fourfold.progress.FactMastery;
import fourfold.progress.Hint;
import fourfold.progress.Mastery;
import fourfold.progress.Progress;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * All that a parent is told of one family; the screen, plain lines and JSON say these numbers and no others. Every count is
 * of the answers that count towards the level: all, or those since the family was begun again.
 *
 * @param family the family
 * @param cell as the grid shows it
 * @param highest the level it ever reached: its stones
 * @param begunAgain the local day on which the parent began it again; empty if that never was
 * @param traces one for each of its traces
 * @param weeks median thinking time of the right answers of each week that had any, oldest first
 * @param wrong the newest wrong numbers, at most {@value FamilyReport#WRONG}
 * @param mended typing slips that were corrected before Enter
 * @param advice what would help
 * @param hint a way to the product from what the child knows, where the advice needs one
 */
public record FamilyReport(
        Family family,
        Grid.Cell cell,
        Mastery highest,
        Optional<Long> begunAgain,
        List<OfTrace> traces,
        List<TraceRecord.Week> weeks,
        List<TraceRecord.Wrong> wrong,
        int mended,
        Advice advice,
        Optional<Hint> hint) {
    /** How many wrong numbers are told. */
    public static final int WRONG = 3;

    /** For how many days from now it is told how likely a quick right answer is. */
    public static final List<Integer> DAYS_AHEAD = List.of(0, 7, 30);

    public FamilyReport {
        traces = List.copyOf(traces);
        weeks = List.copyOf(weeks);
        wrong = List.copyOf(wrong);
    }

    /**
     * One trace.
     *
     * @param trace the trace
     * @param level its level
     * @param highest the level it ever reached
     * @param record its answers
     * @param median thinking time of the right answers among the last ten; empty if there are none
     * @param lastDay the local day of the last answer, days since 1 January 1970
     * @param dueDay the local day on which it should be asked next
     * @param chances in per cent that a right answer would come quickly, after each of {@link #DAYS_AHEAD}; empty if the trace
     *     was never met
     */
    public record OfTrace(
            Trace trace,
            Mastery level,
            Mastery highest,
            TraceRecord record,
            Optional<Duration> median,
            Optional<Long> lastDay,
            Optional<Long> dueDay,
            List<Integer> chances) {
        public OfTrace {
            chances = List.copyOf(chances);
        }
    }

    /**
     * A family now.
     *
     * @param progress with the child's memory
     * @param stones what was ever reached
     * @param log all of the family's answers
     */
    public static FamilyReport of(
            Progress progress, LifetimeProgress stones, FamilyRecord log, Family family, Instant now) {
        Optional<Instant> since = progress.steering().begunAgain(family);
        FamilyRecord record = log.since(since);
        Advice advice = Advice.of(progress, record, family, now);
        boolean helps = advice.about() == Advice.About.ACQUIRING || advice.about() == Advice.About.SLOW;
        return new FamilyReport(
                family,
                Grid.cell(progress, family, now),
                stones.highest(family),
                since.map(progress::localDay),
                family.traces().stream()
                        .map(t -> trace(progress, stones, record, t, now))
                        .toList(),
                record.weeks(),
                record.wrong(WRONG),
                family.traces().stream().mapToInt(t -> record.trace(t).mended()).sum(),
                advice,
                helps ? Hint.to(Question.product(family.low(), family.high()), progress) : Optional.empty());
    }

    private static OfTrace trace(
            Progress progress, LifetimeProgress stones, FamilyRecord record, Trace trace, Instant now) {
        FactMastery mastery = progress.mastery(trace);
        return new OfTrace(
                trace,
                mastery.level(),
                stones.highest(trace),
                record.trace(trace),
                mastery.medianThinking(),
                mastery.lastDay(),
                mastery.dueDay(),
                mastery.isMet() ? chances(progress, trace, now) : List.of());
    }

    private static List<Integer> chances(Progress progress, Trace trace, Instant now) {
        return DAYS_AHEAD.stream()
                .map(days -> now.plus(Duration.ofDays(days)).toEpochMilli())
                .map(then -> (int) Math.round(100 * progress.memory().chanceQuick(trace.index(), then)))
                .toList();
    }
}
