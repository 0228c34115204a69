// SPDX-License-Identifier: Apache-2.0
package fourfold.simulation;

import fourfold.facts.Family;
import fourfold.facts.Operation;
import fourfold.facts.Trace;

/**
 * How much harder and how much slower a fact is than 3 × 7. The directions are known: larger products are harder and
 * slower (Campbell and Graham 1985, Canadian Journal of Psychology 39, 338–366), squares and fives easier and quicker (De
 * Brauwer, Verguts and Fias 2006, Journal of Experimental Child Psychology 94, 43–56), ones follow a rule (Cooney, Swanson
 * and Ladd 1988, Cognition and Instruction 5, 323–345), two different factors from 6 to 9 are the hard zone, divisions
 * are slower (Campbell 1997, Journal of Experimental Psychology: Learning, Memory and Cognition 23). The sizes in ln time
 * lie about the measured +.04 for ten more and −.08 for a five (whole times, hands included, in children's
 * verification); the rest is set by hand.
 */
final class Difficulty {
    private Difficulty() {}

    /** On the scale of strengths. */
    static double of(Trace trace) {
        Family family = trace.family();
        double shift = 0.012 * (Math.min(family.product(), 72) - 21);
        shift += trace.operation() == Operation.DIVIDE ? 0.2 : 0;
        if (family.contains(1) || family.contains(10)) {
            return shift - (family.contains(1) ? 1.2 : 1.6);
        }
        shift -= family.isSquare() ? 0.4 : 0;
        shift -= family.contains(5) ? 0.4 : 0;
        shift -= family.contains(2) ? 0.2 : 0;
        return shift + (family.low() >= 6 && !family.isSquare() ? 0.3 : 0);
    }

    /** In ln seconds of thinking, the strength being the same. */
    static double slowness(Trace trace) {
        Family family = trace.family();
        double slower = 0.0045 * (Math.min(family.product(), 81) - 21);
        slower += trace.operation() == Operation.DIVIDE ? 0.12 : 0;
        slower -= family.isSquare() ? 0.3 : 0;
        slower -= family.contains(5) ? 0.15 : 0;
        return slower - (family.contains(1) || family.contains(10) ? 0.2 : 0);
    }

    /** Median seconds to work the answer out: counting on in steps, 3 to 12 s by the number of steps. */
    static double workingOut(Trace trace) {
        Family family = trace.family();
        double longer = trace.operation() == Operation.DIVIDE ? 1.15 : 1;
        if (family.contains(1) || family.contains(10)) {
            return 3 * longer;
        }
        double each = family.contains(2) || family.contains(5) ? 0.5 : 1.2;
        int steps = family.contains(5) && !family.contains(2)
                ? family.partnerOf(5)
                : family.low() == 2 ? family.high() : family.low();
        return longer * Math.min(12, 4 + each * steps);
    }
}
