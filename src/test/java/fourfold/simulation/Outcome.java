package fourfold.simulation;

import java.util.List;

/**
 * What came of one child's year under one policy.
 *
 * @param fluentAt families fluent after weeks 6, 12, 24 and 36: every question right within 3 s, hands included, with a
 *     chance of at least .9 at the time of the next drill
 * @param minutesTo minutes of drills until 28, 50 and 55 families were fluent at once; {@link #NEVER} if they never were
 * @param keptAfter share of the 200 questions right within 3 s, after 14 and after 60 days without a drill
 * @param quotientsKept share of the 100 divisions among them right within 3 s, after 14 days without a drill
 * @param success share of questions from memory answered right
 * @param perDrill questions from memory in a drill
 * @param onLasting share of questions spent on what would have lasted 14 more days without them
 */
public record Outcome(
        List<Integer> fluentAt,
        List<Double> minutesTo,
        List<Double> keptAfter,
        double quotientsKept,
        double success,
        double perDrill,
        double onLasting) {
    /** Counted when a number of families is not reached in the year; more than all drills together last. */
    public static final double NEVER = 1300;

    public Outcome {
        fluentAt = List.copyOf(fluentAt);
        minutesTo = List.copyOf(minutesTo);
        keptAfter = List.copyOf(keptAfter);
    }
}
