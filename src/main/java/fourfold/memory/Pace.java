package fourfold.memory;

/**
 * What holds for a child as a whole: how fast recalled answers come, and how the child's own record corrects the
 * forecasts. A value; every change makes a new one.
 *
 * @param speed how fast recalled answers come
 * @param correction how the chances of the model become this child's
 */
record Pace(Speed speed, Correction correction) {
    /**
     * How fast recalled answers come.
     *
     * @param level ln seconds of thinking at activation 0
     * @param answers how many answers the level rests on
     */
    record Speed(double level, double answers) {}

    /**
     * The corrected log odds of a chance whose log odds are x: offset + slope · x.
     *
     * @param offset log odds
     * @param slope without unit, {@value #LEAST_SLOPE} to {@value #MOST_SLOPE}
     * @param fresh what is added for a fact answered fewer than {@link #FRESH} times from memory, 0 or below
     */
    record Correction(double offset, double slope, double fresh) {}

    /** After this many answers from memory a fact is no longer fresh. Our own choice. */
    static final int FRESH = 3;

    /** Before any record: what was only just met is known less surely than its activation says. Our own choice. */
    private static final double USUAL_FRESH = -1.5;

    /** How far one more outcome moves it. Our own choice. */
    private static final double FRESH_STEP = 0.02;

    private static final double MOST_LOG_ODDS = 6;
    private static final double STEEP_LOG_ODDS = 3;
    private static final double LEAST_SLOPE = 0.2;
    private static final double MOST_SLOPE = 2;

    static Pace usual(Parameters parameters) {
        return new Pace(new Speed(parameters.usualPace, parameters.paceTrust), new Correction(0, 1, USUAL_FRESH));
    }

    /** With one more right answer. */
    Pace afterTime(double logSeconds, double activation, Parameters parameters) {
        double more = Math.min(speed.answers + 1, parameters.paceMemory);
        double at = logSeconds + parameters.speedUp * activation;
        return new Pace(new Speed(speed.level + (at - speed.level) / more, more), correction);
    }

    /** With one more forecast of a fresh fact that came true or did not. */
    Pace afterFresh(double chance, boolean came) {
        double miss = (came ? 1 : 0) - corrected(chance, true);
        double fresh = Math.min(0, correction.fresh + FRESH_STEP * miss);
        return new Pace(speed, new Correction(correction.offset, correction.slope, fresh));
    }

    /** With one more forecast that came true or did not. */
    Pace afterOutcome(double chance, boolean came, Parameters parameters) {
        double x = logOdds(chance);
        double miss = (came ? 1 : 0) - corrected(chance, false);
        double steep = Math.max(-STEEP_LOG_ODDS, Math.min(STEEP_LOG_ODDS, x));
        double slope = correction.slope + parameters.steepness * miss * steep;
        return new Pace(
                speed,
                new Correction(
                        correction.offset + parameters.correction * miss,
                        Math.max(LEAST_SLOPE, Math.min(MOST_SLOPE, slope)),
                        correction.fresh));
    }

    /** The model's chance after the correction. */
    double corrected(double chance, boolean isFresh) {
        return Equations.logistic(
                correction.offset + correction.slope * logOdds(chance) + (isFresh ? correction.fresh : 0));
    }

    /** The plain chance that is corrected to this one; below 0 or above 1 where no chance is. */
    double uncorrected(double chance) {
        double x = (Math.log(chance / (1 - chance)) - correction.offset) / correction.slope;
        if (Math.abs(x) > MOST_LOG_ODDS) {
            return x < 0 ? -1 : 2;
        }
        return Equations.logistic(x);
    }

    private static double logOdds(double chance) {
        double x = Math.log(chance / (1 - chance));
        return Math.max(-MOST_LOG_ODDS, Math.min(MOST_LOG_ODDS, x));
    }
}
