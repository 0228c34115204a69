// SPDX-License-Identifier: Apache-2.0
package fourfold.memory;

import java.time.Duration;

/**
 * Every constant of the memory model, each beside its name. Activations are natural logarithms; times are seconds of
 * thinking unless said otherwise. "Published" names where the form and the value come from (values from memory of the
 * papers); "our own choice" was set by judgement and by the benchmark's tuning children. Immutable: what is
 * to be other is a copy, and only this class sets a constant.
 */
public final class Parameters implements Cloneable {
    private static final Parameters USUAL = new Parameters().checked();

    /** Seconds of silence that still count in full, 1 to 3600; what is beyond lies between drills. Our own choice. */
    double pause = 120;

    /**
     * How much a second between drills counts, 0.001 to 1. Form published (Pavlik and Anderson 2005), value 0.025 as
     * there.
     */
    double betweenDrills = 0.025;

    /**
     * How much activation adds to a presentation's decay, 0 to 1. Published: 0.217 (Pavlik and Anderson 2005), 0.25
     * (van Rijn, van Maanen and van Woudenberg 2009).
     */
    double decayScale = 0.22;

    /** The most activation counts towards decay, −1 to 2. Our own choice, a guard against decays above 1.5. */
    double strongest = 1.2;

    /** The lowest rate of forgetting considered, 0.02 to 0.6. Our own choice around the published means. */
    double slowestRate = 0.06;

    /** Distance between the rates considered, 0.01 to 0.2. Our own choice. */
    double rateStep = 0.09;

    /** How many rates are considered side by side, 2 to 25. Our own choice: seven closer ones foretell no better. */
    int rates = 5;

    /** The rate expected of a child before any evidence, 0.05 to 0.6. Published: 0.177 (2005), 0.3 (2009). */
    double usualRate = 0.22;

    /**
     * What is added for ×1 and ×10, which children answer by rule, −0.3 to 0. Direction published (Cooney, Swanson and
     * Ladd 1988), size our own choice.
     */
    double ruleRate = -0.06;

    /**
     * What is added for squares, −0.3 to 0. Direction published (De Brauwer, Verguts and Fias 2006), size our own
     * choice.
     */
    double squareRate = -0.03;

    /** Standard deviation of a trace's rate around what related facts suggest, 0.01 to 0.5. Our own choice. */
    double rateSpread = 0.08;

    /** How many traces the usual rate counts as against the child's own mean, 0.5 to 50. Our own choice. */
    double priorStrength = 4;

    /** Weight of a trace of the same family when a rate is first guessed, 0 to 2. Our own choice. */
    double family = 1;

    /** Weight of a trace of the same table, 0 to 2. Our own choice. */
    double table = 0.25;

    /** Weight of a trace of the same size of product, 0 to 2. Our own choice. */
    double size = 0.1;

    /**
     * Share of the evidence on a rate that each new answer gives back to all rates alike, 0 to 0.2, for what a child
     * once forgot fast may fade slowly later. Our own choice.
     */
    double drift = 0.02;

    /** Τ, the activation recalled half the time, −3 to 1. Published: −0.704 (2005), −0.8 (2009). */
    double threshold = -0.8;

    /** S, the softness of that threshold, 0.05 to 1. Published: 0.255 (2005). */
    double noise = 0.3;

    /** Chance of a wrong answer though the fact was recalled, 0 to 0.2. Our own choice. */
    double slips = 0.01;

    /**
     * Ln seconds of thinking gained per unit of activation, 0.1 to 1.5. Published form F·e^(−m) has 1; one half is our
     * own choice.
     */
    double speedUp = 0.6;

    /** Standard deviation of ln thinking time, 0.1 to 1. Form published (van der Linden 2006), value our own. */
    double spread = 0.4;

    /** How far thinking times count as evidence, 0 (not at all) to 1 (in full). Our own choice. */
    double heedTimes = 1;

    /**
     * Thinking times below this count as this, seconds, 0.05 to 1: subtracting the hands' median leaves 0 too
     * often. Our own choice.
     */
    double leastThinking = 0.2;

    /** Ln seconds of thinking at activation 0 before any evidence, −2 to 2. Published: F = 1 s (2009). */
    double usualPace = 0;

    /**
     * How far traces differ in ln seconds of thinking from what their activation and kind of fact say, a standard
     * deviation, 0 to 1. Our own choice.
     */
    double tracesDifferInTime = 0.15;

    /** How far they differ in log odds of a right and quick answer, a standard deviation, 0 to 2. Our own choice. */
    double tracesDifferInOdds = 0.3;

    /**
     * Chance that a fact not recalled is worked out rightly, 0 to 0.95. Our own choice; that children fall back on
     * counting and adding is published (Lemaire and Siegler 1995).
     */
    double workedOut = 0.4;

    /** Median seconds of working out, 2 to 20. Our own choice. */
    final double workingOut = 7;

    /** Its logarithm: every answer of a log of years needs it. */
    final double logWorkingOut = Math.log(workingOut);

    /** Standard deviation of its logarithm, 0.1 to 1. Our own choice. */
    double workingSpread = 0.5;

    /**
     * How much of a product's strength helps its quotients, 0 to 1. Direction published (Campbell 1999), size our own
     * choice.
     */
    double fromProducts = 0.15;

    /**
     * Activation a fact is taken to have when it is answered right and fast before it was ever practised here, −1 to 3.
     * Our own choice.
     */
    double broughtAlong = 0.6;

    /** Seconds of the memory's clock since it was learned elsewhere, 60 to 10,000,000. Our own choice. */
    double broughtAge = 300_000;

    /**
     * Seconds to the first key within which an answer counts as recalled, 0.5 to 10; the hands' own time is taken off,
     * and half of it is left for thinking at least. Common criterion of 3 s (Van de Walle; Mercer and Miller 1992);
     * that the hands count is our own choice: more answers miss the limit, and each of them is informative.
     */
    double limit = 3;

    private Parameters() {}

    /** The constants the program uses. */
    public static Parameters usual() {
        return USUAL;
    }

    /** The same constants with another limit for a quick answer. */
    public Parameters withLimit(Duration quick) {
        Parameters other = copy();
        other.limit = quick.toMillis() / 1000.0;
        return other.checked();
    }

    /** The same constants with thinking times that count for nothing, to measure what they contribute. */
    public Parameters withoutTimes() {
        Parameters other = copy();
        other.heedTimes = 0;
        other.tracesDifferInTime = 0;
        return other.checked();
    }

    /** The same constants with one rate of forgetting for all traces, to measure what rates of their own contribute. */
    public Parameters withOneRate() {
        Parameters other = copy();
        other.setOneRate(usualRate);
        return other.checked();
    }

    /**
     * One decay for all, time between drills in full, nothing from products: the plain activation of Anderson and Schooler.
     *
     * @param decay the exponent d, 0.5 in Anderson and others since
     */
    public static Parameters oneDecay(double decay) {
        Parameters other = USUAL.copy();
        other.betweenDrills = 1;
        other.decayScale = 0;
        other.fromProducts = 0;
        other.setOneRate(decay);
        return other.checked();
    }

    /** A grid needs two rates; these are as good as one. */
    private void setOneRate(double only) {
        slowestRate = only;
        rateStep = 0.01;
        rates = 2;
        usualRate = only;
        ruleRate = 0;
        squareRate = 0;
        rateSpread = 0.01;
        family = 0;
        table = 0;
        size = 0;
    }

    private Parameters copy() {
        try {
            return (Parameters) super.clone();
        } catch (CloneNotSupportedException e) {
            throw new AssertionError(e);
        }
    }

    private Parameters checked() {
        within("pause", pause, 1, 3600);
        within("between drills", betweenDrills, 0.001, 1);
        within("decay scale", decayScale, 0, 1);
        within("strongest", strongest, -1, 2);
        within("slowest rate", slowestRate, 0.02, 0.6);
        within("rate step", rateStep, 0.01, 0.2);
        within("rates", rates, 2, 25);
        within("fastest rate", slowestRate + rateStep * (rates - 1), 0.05, 0.9);
        within("largest decay", fastestRate(slowestRate, rateStep, rates) + decayScale * Math.exp(strongest), 0, 1.9);
        within("usual rate", usualRate, 0.05, 0.6);
        within("rule rate", ruleRate, -0.3, 0);
        within("square rate", squareRate, -0.3, 0);
        within("rate spread", rateSpread, 0.01, 0.5);
        within("prior strength", priorStrength, 0.5, 50);
        within("family", family, 0, 2);
        within("table", table, 0, 2);
        within("size", size, 0, 2);
        within("drift", drift, 0, 0.2);
        within("threshold", threshold, -3, 1);
        within("noise", noise, 0.05, 1);
        within("slips", slips, 0, 0.2);
        within("speed-up", speedUp, 0.1, 1.5);
        within("spread", spread, 0.1, 1);
        within("heed times", heedTimes, 0, 1);
        within("least thinking", leastThinking, 0.05, 1);
        within("usual pace", usualPace, -2, 2);
        within("traces differ in time", tracesDifferInTime, 0, 1);
        within("traces differ in odds", tracesDifferInOdds, 0, 2);
        within("worked out", workedOut, 0, Math.min(0.95, 1 - slips));
        within("working out", workingOut, 2, 20);
        within("working spread", workingSpread, 0.1, 1);
        within("from products", fromProducts, 0, 1);
        within("brought along", broughtAlong, -1, 3);
        within("brought age", broughtAge, 60, 10_000_000);
        within("limit", limit, 0.5, 10);
        return this;
    }

    /** The activation recalled half the time. */
    public double threshold() {
        return threshold;
    }

    /** The softness of that threshold. */
    public double noise() {
        return noise;
    }

    /** The rate of forgetting with that place on the grid of rates, from 0. */
    double rate(int place) {
        return slowestRate + rateStep * place;
    }

    private static double fastestRate(double slowest, double step, int rates) {
        return slowest + step * (rates - 1);
    }

    private static void within(String name, double value, double least, double most) {
        if (!(value >= least && value <= most)) {
            throw new IllegalArgumentException(
                    "the parameter \"" + name + "\" lies between " + least + " and " + most + ", not at " + value);
        }
    }
}
