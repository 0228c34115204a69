package fourfold.simulation;

import fourfold.facts.Family;
import fourfold.facts.Operation;
import fourfold.facts.Trace;

/**
 * How much harder a fact is than 3 × 7, on the scale of strengths. The directions are known: larger products are harder
 * (Campbell and Graham 1985, Canadian Journal of Psychology 39, 338–366), squares and fives easier (De Brauwer, Verguts
 * and Fias 2006, Journal of Experimental Child Psychology 94, 43–56), ones follow a rule (Cooney, Swanson and Ladd 1988,
 * Cognition and Instruction 5, 323–345), two different factors from 6 to 9 are the hard zone, divisions are slower. The
 * sizes are set by hand.
 */
final class Difficulty {
    private Difficulty() {}

    static double of(Trace trace) {
        Family family = trace.family();
        double shift = 0.015 * (Math.min(family.product(), 72) - 21);
        shift += trace.operation() == Operation.DIVIDE ? 0.2 : 0;
        if (family.contains(1) || family.contains(10)) {
            return shift - (family.contains(1) ? 1.2 : 1.6);
        }
        shift -= family.isSquare() ? 0.4 : 0;
        shift -= family.contains(5) ? 0.4 : 0;
        shift -= family.contains(2) ? 0.2 : 0;
        return shift + (family.low() >= 6 && !family.isSquare() ? 0.3 : 0);
    }

    /** Median seconds to work the answer out: counting on in steps, 3 to 12 s by the number of steps. */
    static double workingOut(Trace trace) {
        Family family = trace.family();
        if (family.contains(1) || family.contains(10)) {
            return 3;
        }
        double each = family.contains(2) || family.contains(5) ? 0.5 : 1.2;
        int steps = family.contains(5) && !family.contains(2)
                ? family.partnerOf(5)
                : family.low() == 2 ? family.high() : family.low();
        return Math.min(12, 4 + each * steps);
    }
}
