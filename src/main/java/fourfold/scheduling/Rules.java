package fourfold.scheduling;

import java.time.Duration;

/**
 * The constants of the policy that practises for lasting gain. Those without a source are our own choice, set with the
 * benchmark's tuning children.
 *
 * @param target a trace is due if, left alone, its chance of a quick right answer at the next drill is below this; 0.5
 *     to 0.99
 * @param firm a trace is weak while, with what was practised today, that chance is below this; at most {@code target}
 * @param nextDrill how far away the next drill is taken to be, from the beginning of this one
 * @param later the second moment at which a gain is looked at; a lasting one
 * @param newEvery the least time between two new families
 * @param mostNew the most new families in a drill, beside the parent's own limit; known ones do not count
 * @param mostWaiting no new family while more traces are due
 * @param mostWeak no new family while more traces are weak; with fewer, the weak ones are asked again in the same drill.
 *     What was begun is made firm before more is begun: this mattered more than any order of questions
 * @param longestWait when every fact met was asked so often from memory, a new family joins though many are weak: no
 *     child waits for ever
 * @param mostShaky no new family while so many families are below accurate
 * @param againAfter others asked before a missed fact comes back, for a child who is usually right then
 * @param againSoon the same for a child who usually is not
 * @param usuallyRight the chance of being right at a re-ask from which on it counts as usual
 * @param weakApart others asked before a weak trace comes back, not missed, when nothing is due any more
 * @param mostAsked how often a weak trace is asked in one drill at most
 * @param pairs whether a product brings its inverse along
 * @param ahead whether the largest gain per second comes first, or the least certain
 * @param probes whether a family may be asked before it is taught, to see whether it is known
 * @param growing whether gaps grow after success whatever the forecast says
 */
public record Rules(
        double target,
        double firm,
        Duration nextDrill,
        Duration later,
        Duration newEvery,
        int mostNew,
        int mostWaiting,
        int mostWeak,
        int longestWait,
        int mostShaky,
        int againAfter,
        int againSoon,
        double usuallyRight,
        int weakApart,
        int mostAsked,
        boolean pairs,
        boolean ahead,
        boolean probes,
        boolean growing) {
    private static final Rules USUAL = new Rules(
            0.98,
            0.93,
            Duration.ofHours(40),
            Duration.ofDays(20),
            Duration.ofSeconds(90),
            4,
            30,
            60,
            12,
            8,
            8,
            3,
            0.5,
            12,
            3,
            true,
            true,
            true,
            true);

    /** The rules the program uses. */
    public static Rules usual() {
        return USUAL;
    }

    /** These rules with other openings: no new family while more traces are due or weak, or so many families shaky. */
    public Rules withOpenings(int waiting, int weak, int shaky) {
        return with(newEvery, mostNew, waiting, weak, shaky, pairs);
    }

    /** These rules without any limit on new families but the parent's own. */
    public Rules withoutLimitOnNew() {
        return with(Duration.ZERO, Integer.MAX_VALUE, Integer.MAX_VALUE, Integer.MAX_VALUE, Integer.MAX_VALUE, pairs);
    }

    /** These rules with products that bring no inverse along: for measuring what the pairs cost and gain. */
    public Rules withoutPairs() {
        return with(newEvery, mostNew, mostWaiting, mostWeak, mostShaky, false);
    }

    private Rules with(Duration every, int most, int waiting, int weak, int shaky, boolean paired) {
        return new Rules(
                target,
                firm,
                nextDrill,
                later,
                every,
                most,
                waiting,
                weak,
                longestWait,
                shaky,
                againAfter,
                againSoon,
                usuallyRight,
                weakApart,
                mostAsked,
                paired,
                ahead,
                probes,
                growing);
    }
}
