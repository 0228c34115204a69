// SPDX-License-Identifier: Apache-2.0
package fourfold.progress;

import fourfold.facts.Families;
import fourfold.facts.Family;
import fourfold.facts.Trace;
import fourfold.log.Answer;
import java.time.Duration;
import java.util.Arrays;
import java.util.Optional;

/** The mastery of every trace, and of the families that they belong to. Immutable. */
final class MasteryTable {
    /** Nothing was met yet. */
    static final MasteryTable UNMET = unmet();

    /** The traces of each family, its product first. */
    private static final int[][] TRACES = Families.all().stream()
            .map(f -> f.traces().stream().mapToInt(Trace::index).toArray())
            .toArray(int[][]::new);

    private static final long NEVER = Long.MAX_VALUE;

    private final FactMastery[] byTrace;
    /** The local day on which each family first came, by its index. */
    private final long[] since;

    private MasteryTable(FactMastery[] byTrace, long[] since) {
        this.byTrace = byTrace;
        this.since = since;
    }

    private static MasteryTable unmet() {
        FactMastery[] byTrace = new FactMastery[Trace.COUNT];
        Arrays.fill(byTrace, FactMastery.UNMET);
        return new MasteryTable(byTrace, never());
    }

    private static long[] never() {
        long[] since = new long[Families.COUNT];
        Arrays.fill(since, NEVER);
        return since;
    }

    private static void begin(long[] since, Answer answer, Family family) {
        int f = family.index();
        since[f] = since[f] == NEVER ? answer.localDay() : since[f];
    }

    /** A table in the making: takes answers in order of time. */
    static final class Fold {
        private final FactMastery.Fold[] byTrace = new FactMastery.Fold[Trace.COUNT];
        private final long[] since = never();

        Fold() {
            Arrays.setAll(byTrace, i -> new FactMastery.Fold());
        }

        /** Takes one more answer to a question of a family; see {@link FactMastery.Fold#take}. */
        void take(Answer answer, Family family, double thinkingMillis, long limitMillis) {
            byTrace[answer.traceIndex()].take(answer, thinkingMillis, limitMillis);
            begin(since, answer, family);
        }

        /** As {@link MasteryTable#isMet}. */
        boolean isMet(Family family) {
            return MasteryTable.isMet(family, byTrace);
        }

        /** What it came to; the fold must not be used any more afterwards. */
        MasteryTable table() {
            return new MasteryTable(
                    Arrays.stream(byTrace).map(FactMastery.Fold::mastery).toArray(FactMastery[]::new), since.clone());
        }
    }

    /** The mastery of the trace with that index. */
    FactMastery of(int trace) {
        return byTrace[trace];
    }

    /** With one more answer to a question; see {@link FactMastery#after}. */
    MasteryTable after(Answer answer, Optional<Duration> thinkingTime, Duration limit) {
        int trace = answer.traceIndex();
        FactMastery[] next = byTrace.clone();
        next[trace] = next[trace].after(answer, thinkingTime, limit);
        long[] days = since.clone();
        begin(days, answer, answer.question().orElseThrow().family());
        return new MasteryTable(next, days);
    }

    /** The local day on which the family first came, counted from 1 January 1970; beyond all days if it never did. */
    long since(Family family) {
        return since[family.index()];
    }

    /** Whether any of the family's traces was met; a product that was only tried, and not known, has met nothing. */
    boolean isMet(Family family) {
        return isMet(family, byTrace);
    }

    private static boolean isMet(Family family, Meeting[] byTrace) {
        int[] traces = TRACES[family.index()];
        if (byTrace[traces[0]].isMet() && !byTrace[traces[0]].isOnlyTried()) {
            return true;
        }
        for (int i = 1; i < traces.length; i++) {
            if (byTrace[traces[i]].isMet()) {
                return true;
            }
        }
        return false;
    }

    /** The family's level: that of its weakest trace; new only if none of its traces was met. */
    Mastery level(Family family) {
        if (!isMet(family)) {
            return Mastery.NEW;
        }
        Mastery weakest = Mastery.LASTING;
        for (int trace : TRACES[family.index()]) {
            weakest = weakest.weaker(byTrace[trace].level());
        }
        return weakest == Mastery.NEW ? Mastery.ACQUIRING : weakest;
    }

    /** How many families have reached {@code level}. */
    long families(Mastery level) {
        return Families.all().stream().filter(f -> level(f).atLeast(level)).count();
    }
}
