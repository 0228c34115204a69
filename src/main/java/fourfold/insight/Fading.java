// SPDX-License-Identifier: Apache-2.0
package fourfold.insight;

import fourfold.facts.Family;
import fourfold.facts.Trace;
import fourfold.progress.FactMastery;
import fourfold.progress.Mastery;
import fourfold.progress.Progress;
import java.time.Duration;
import java.time.Instant;

/** Whether a family that was there may be fading: what the mark ~ means wherever it is shown. */
final class Fading {
    /** A fact is fading if its chance of a quick right answer by the next drill is below this; our own choice. */
    private static final double TARGET = 0.85;

    /** How far away the next drill may be: a day off lies between two drills of most weeks. */
    private static final Duration NEXT_DRILL = Duration.ofHours(40);

    private Fading() {}

    /**
     * Whether the family was accurate or better, and any of its traces is due again, or was fluent and is forecast to be
     * shaky by the next drill: what was never quick can't lose its quickness.
     *
     * @param progress with the child's memory
     */
    static boolean of(Progress progress, Family family, Instant now) {
        if (!progress.level(family).atLeast(Mastery.ACCURATE)) {
            return false;
        }
        long today = progress.localDay(now);
        long next = now.plus(NEXT_DRILL).toEpochMilli();
        for (Trace trace : family.traces()) {
            FactMastery mastery = progress.mastery(trace);
            boolean wasQuick = mastery.level().atLeast(Mastery.FLUENT);
            if (mastery.isDue(today) || (wasQuick && progress.memory().chanceQuick(trace.index(), next) < TARGET)) {
                return true;
            }
        }
        return false;
    }
}
