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

    private final FactMastery[] byTrace;

    private MasteryTable(FactMastery[] byTrace) {
        this.byTrace = byTrace;
    }

    private static MasteryTable unmet() {
        FactMastery[] byTrace = new FactMastery[Trace.COUNT];
        Arrays.fill(byTrace, FactMastery.UNMET);
        return new MasteryTable(byTrace);
    }

    /** What one fold for each trace came to; they must not be used any more afterwards. */
    static MasteryTable of(FactMastery.Fold[] folds) {
        return new MasteryTable(
                Arrays.stream(folds).map(FactMastery.Fold::mastery).toArray(FactMastery[]::new));
    }

    /** The mastery of the trace with that index. */
    FactMastery of(int trace) {
        return byTrace[trace];
    }

    /** With one more answer to a question; see {@link FactMastery#after}. */
    MasteryTable after(Answer answer, Optional<Duration> thinkingTime, Duration limit) {
        int trace = answer.question().orElseThrow().traceIndex();
        FactMastery[] next = byTrace.clone();
        next[trace] = next[trace].after(answer, thinkingTime, limit);
        return new MasteryTable(next);
    }

    /** Whether any of the family's traces was met. */
    boolean isMet(Family family) {
        for (Trace trace : family.traces()) {
            if (byTrace[trace.index()].isMet()) {
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
        for (Trace trace : family.traces()) {
            weakest = weakest.weaker(byTrace[trace.index()].level());
        }
        return weakest == Mastery.NEW ? Mastery.ACQUIRING : weakest;
    }

    /** How many families have reached {@code level}. */
    long families(Mastery level) {
        return Families.all().stream().filter(f -> level(f).atLeast(level)).count();
    }
}
