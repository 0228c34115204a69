// SPDX-License-Identifier: Apache-2.0
package fourfold.insight;

import fourfold.facts.Family;
import fourfold.facts.Operation;
import fourfold.facts.Trace;
import fourfold.progress.Mastery;
import fourfold.progress.Progress;
import java.time.Instant;
import java.util.Locale;
import java.util.Optional;

/**
 * What is going on with a family, and what would help: one thing, the first that holds. The rules are our own choice, to
 * be checked by eye.
 *
 * @param about what is going on
 * @param wrong the wrong number that keeps coming, for {@link About#CONFUSED}
 */
public record Advice(About about, Optional<TraceRecord.Wrong> wrong) {
    /** What is going on. */
    public enum About {
        /** Not met yet. */
        NEW,
        /** One wrong number keeps coming: another fact gets in the way. */
        CONFUSED,
        /** Right and quick though it was never taught here. */
        TRIAL,
        /** The product is there, a division is not. */
        DIVISION_BEHIND,
        /** Still mostly being learned. */
        ACQUIRING,
        /** Right, and still worked out. */
        SLOW,
        /** It was there and may be fading. */
        FADING,
        /** Right and quick. */
        FLUENT,
        /** Right, quick, and it has lasted. */
        LASTING;

        /** Its name in texts and files. */
        public String key() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    /** A wrong number keeps coming if it came so often. */
    private static final int OFTEN = 2;

    /** Lately: within this many days. */
    private static final int LATELY = 45;

    /** The advice for a family now. */
    public static Advice of(Progress progress, FamilyRecord record, Family family, Instant now) {
        long today = progress.localDay(now);
        Mastery level = progress.level(family);
        if (level == Mastery.NEW) {
            return plain(About.NEW);
        }
        Optional<TraceRecord.Wrong> confused = family.traces().stream()
                .filter(t -> !progress.mastery(t).level().atLeast(Mastery.FLUENT))
                .flatMap(t -> record.trace(t).wrong().stream())
                .filter(w -> w.times() >= OFTEN && today - w.lastDay() <= LATELY)
                .filter(w -> w.answer().fits().isPresent())
                .findFirst();
        if (confused.isPresent()) {
            return new Advice(About.CONFUSED, confused);
        }
        if (progress.isKnownByTrial(family)) {
            return plain(About.TRIAL);
        }
        Mastery product = progress.mastery(Trace.product(family)).level();
        boolean behind = product.atLeast(Mastery.ACCURATE)
                && family.traces().stream()
                        .filter(t -> t.operation() == Operation.DIVIDE)
                        .anyMatch(t -> !progress.mastery(t).level().atLeast(Mastery.ACCURATE));
        if (behind) {
            return plain(About.DIVISION_BEHIND);
        }
        if (!level.atLeast(Mastery.ACCURATE)) {
            return plain(About.ACQUIRING);
        }
        if (Fading.of(progress, family, now)) {
            return plain(About.FADING);
        }
        return plain(level == Mastery.ACCURATE ? About.SLOW : level == Mastery.FLUENT ? About.FLUENT : About.LASTING);
    }

    private static Advice plain(About about) {
        return new Advice(about, Optional.empty());
    }
}
