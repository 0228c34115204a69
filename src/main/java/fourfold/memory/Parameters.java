package fourfold.memory;

import java.time.Duration;

/**
 * Every constant of the memory model. Activations are natural logarithms; times are seconds of thinking unless said
 * otherwise. "Published" names where the form and the value come from (values from memory of the papers); "our own
 * choice" was set by judgement and by the benchmark's tuning children.
 *
 * @param pause seconds of silence that still count in full, 1 to 3600; what is beyond lies between drills. Our own choice
 * @param betweenDrills how much a second between drills counts, 0.001 to 1. Form published (Pavlik and Anderson 2005),
 *     value 0.025 as there
 * @param decayScale c, how much activation adds to a presentation's decay, 0 to 1. Published: 0.217 (Pavlik and Anderson
 *     2005), 0.25 (van Rijn, van Maanen and van Woudenberg 2009)
 * @param strongest the most activation counts towards decay, −1 to 2. Our own choice, a guard against decays above 1.5
 * @param slowestRate the lowest rate of forgetting considered, 0.02 to 0.6. Our own choice around the published means
 * @param rateStep distance between the rates considered, 0.01 to 0.2. Our own choice
 * @param rates how many rates are considered side by side, 2 to 25. Our own choice
 * @param usualRate the rate expected of a child before any evidence, 0.05 to 0.6. Published: 0.177 (2005), 0.3 (2009)
 * @param ruleRate what is added for ×1 and ×10, which children answer by rule, −0.3 to 0. Direction published (Cooney,
 *     Swanson and Ladd 1988), size our own choice
 * @param squareRate what is added for squares, −0.3 to 0. Direction published (De Brauwer, Verguts and Fias 2006), size
 *     our own choice
 * @param rateSpread standard deviation of a trace's rate around what its kin suggest, 0.01 to 0.5. Our own choice
 * @param priorStrength traces' worth of trust in the usual rate against the child's own mean, 0.5 to 50. Our own choice
 * @param family weight of a trace of the same family when a rate is first guessed, 0 to 2. Our own choice
 * @param table weight of a trace of the same table, 0 to 2. Our own choice
 * @param size weight of a trace of the same size of product, 0 to 2. Our own choice
 * @param drift share of the evidence on a rate that each new answer gives back to all rates alike, 0 to 0.2, for what
 *     a child once forgot fast may fade slowly later. Our own choice
 * @param threshold τ, the activation recalled half the time, −3 to 1. Published: −0.704 (2005), −0.8 (2009)
 * @param noise s, the softness of that threshold, 0.05 to 1. Published: 0.255 (2005)
 * @param slips chance of a wrong answer though the fact was recalled, 0 to 0.2. Our own choice
 * @param speedUp ln seconds of thinking gained per unit of activation, 0.1 to 1.5. Published form F·e^(−m) has 1; one half
 *     is our own choice
 * @param spread standard deviation of ln thinking time, 0.1 to 1. Form published (van der Linden 2006), value our own
 * @param heedTimes how far thinking times count as evidence, 0 (not at all) to 1 (in full). Our own choice
 * @param leastThinking thinking times below this count as this, seconds, 0.05 to 1: subtracting the hands' median leaves
 *     nought too often. Our own choice
 * @param usualPace ln seconds of thinking at activation nought before any evidence, −2 to 2. Published: F = 1 s (2009)
 * @param paceTrust answers' worth of trust in the usual pace, 1 to 100. Our own choice
 * @param paceMemory answers the running pace looks back on, 20 to 2000. Our own choice
 * @param workedOut chance that a fact not recalled is worked out rightly, 0 to 0.95. Our own choice; that children fall
 *     back on counting and adding is published (Lemaire and Siegler 1995)
 * @param workingOut median seconds of working out, 2 to 20. Our own choice
 * @param workingSpread standard deviation of its logarithm, 0.1 to 1. Our own choice
 * @param fromProducts how much of a product's strength helps its quotients, 0 to 1. Direction published (Campbell 1999),
 *     size our own choice
 * @param broughtAlong activation a fact is taken to have when it is answered right and fast before it was ever practised
 *     here, −1 to 3. Our own choice
 * @param broughtAge seconds of the memory's clock since it was learned elsewhere, 60 to 10,000,000. Our own choice
 * @param limit seconds to the first key within which an answer counts as recalled, 0.5 to 10; the hands' own time is taken
 *     off, and half of it is left for thinking at least. Common criterion of 3 s (Van de Walle; Mercer and Miller 1992);
 *     that the hands count is our own choice: more answers miss the limit, and each of them tells something
 * @param correction how fast the child's own record corrects the forecast, 0 to 0.2. Our own choice
 * @param steepness how fast it corrects the forecast's steepness, 0 to 0.2. Our own choice
 */
public record Parameters(
        double pause,
        double betweenDrills,
        double decayScale,
        double strongest,
        double slowestRate,
        double rateStep,
        int rates,
        double usualRate,
        double ruleRate,
        double squareRate,
        double rateSpread,
        double priorStrength,
        double family,
        double table,
        double size,
        double drift,
        double threshold,
        double noise,
        double slips,
        double speedUp,
        double spread,
        double heedTimes,
        double leastThinking,
        double usualPace,
        double paceTrust,
        double paceMemory,
        double workedOut,
        double workingOut,
        double workingSpread,
        double fromProducts,
        double broughtAlong,
        double broughtAge,
        double limit,
        double correction,
        double steepness) {
    private static final Parameters USUAL = new Parameters(
            120, 0.025, 0.22, 1.2, 0.06, 0.06, 7, 0.22, -0.06, -0.03, 0.08, 4, 1, 0.25, 0.1, 0.02, -0.8, 0.3, 0.025,
            0.6, 0.4, 1, 0.2, 0, 5, 200, 0.4, 7, 0.5, 0.3, 1.2, 300_000, 3, 0.02, 0.005);

    public Parameters {
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
        within("pace trust", paceTrust, 1, 100);
        within("pace memory", paceMemory, 20, 2000);
        within("worked out", workedOut, 0, Math.min(0.95, 1 - slips));
        within("working out", workingOut, 2, 20);
        within("working spread", workingSpread, 0.1, 1);
        within("from products", fromProducts, 0, 1);
        within("brought along", broughtAlong, -1, 3);
        within("brought age", broughtAge, 60, 10_000_000);
        within("limit", limit, 0.5, 10);
        within("correction", correction, 0, 0.2);
        within("steepness", steepness, 0, 0.2);
    }

    /** The constants the program uses. */
    public static Parameters usual() {
        return USUAL;
    }

    /** The same constants with another limit for a quick answer. */
    public Parameters withLimit(Duration quick) {
        return with(betweenDrills, decayScale, heedTimes, quick.toMillis() / 1000.0);
    }

    /** The same constants with thinking times that count for nothing, to measure what they are worth. */
    public Parameters withoutTimes() {
        return with(betweenDrills, decayScale, 0, limit);
    }

    /** The same constants with one rate of forgetting for all traces, to measure what rates of their own are worth. */
    public Parameters withOneRate() {
        return with(betweenDrills, decayScale, heedTimes, limit).oneRate(usualRate, fromProducts);
    }

    /**
     * One decay for all, time between drills in full, nothing from products: the plain activation of Anderson and Schooler.
     *
     * @param decay the exponent d, 0.5 in Anderson and others since
     */
    public static Parameters oneDecay(double decay) {
        return USUAL.with(1, 0, USUAL.heedTimes, USUAL.limit).oneRate(decay, 0);
    }

    /** A grid needs two rates; these are as good as one. */
    private Parameters oneRate(double only, double help) {
        return new Parameters(
                pause,
                betweenDrills,
                decayScale,
                strongest,
                only,
                0.01,
                2,
                only,
                0,
                0,
                0.01,
                priorStrength,
                0,
                0,
                0,
                drift,
                threshold,
                noise,
                slips,
                speedUp,
                spread,
                heedTimes,
                leastThinking,
                usualPace,
                paceTrust,
                paceMemory,
                workedOut,
                workingOut,
                workingSpread,
                help,
                broughtAlong,
                broughtAge,
                limit,
                correction,
                steepness);
    }

    private Parameters with(double between, double scale, double heeded, double within) {
        return new Parameters(
                pause,
                between,
                scale,
                strongest,
                slowestRate,
                rateStep,
                rates,
                usualRate,
                ruleRate,
                squareRate,
                rateSpread,
                priorStrength,
                family,
                table,
                size,
                drift,
                threshold,
                noise,
                slips,
                speedUp,
                spread,
                heeded,
                leastThinking,
                usualPace,
                paceTrust,
                paceMemory,
                workedOut,
                workingOut,
                workingSpread,
                fromProducts,
                broughtAlong,
                broughtAge,
                within,
                correction,
                steepness);
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
