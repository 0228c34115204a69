// SPDX-License-Identifier: Apache-2.0
package fourfold.scheduling;

import java.time.Duration;

/**
 * The constants of the policy that practises for lasting gain, each beside its name. Those without a source are our own
 * choice, set with the benchmark's tuning children. Immutable: what is to be other is a copy.
 */
public final class Rules implements Cloneable {
    private static final Rules USUAL = new Rules();

    private double target = 0.97;
    private double firm = 0.93;
    private Duration nextDrill = Duration.ofHours(40);
    private Duration later = Duration.ofDays(20);
    private Duration weeksOn = Duration.ofDays(14);
    private Duration newEvery = Duration.ofSeconds(90);
    private int mostWaiting = 30;
    private double unsureShare = 0.33;
    private int wellInARow = 3;
    private int longestWait = 3;
    private int shortWait = 2;
    private double muchCarried = 50;
    private Duration afterLesson = Duration.ofMinutes(2);
    private Duration shortest = Duration.ofMinutes(5);
    private Duration least = Duration.ofMinutes(2);
    private int againAfter = 8;
    private int againSoon = 3;
    private double usuallyRight = 0.5;
    private int weakApart = 60;
    private boolean pairs = true;

    private Rules() {}

    /** The rules the program uses. */
    public static Rules usual() {
        return USUAL;
    }

    /** These rules without any limit on new families but the parent's own. */
    public Rules withoutLimitOnNew() {
        Rules other = copy();
        other.newEvery = Duration.ZERO;
        other.wellInARow = 0;
        other.longestWait = 0;
        return other;
    }

    /** These rules with products that bring no inverse along: for measuring what the pairs cost and gain. */
    public Rules withoutPairs() {
        Rules other = copy();
        other.pairs = false;
        return other;
    }

    private Rules copy() {
        try {
            return (Rules) super.clone();
        } catch (CloneNotSupportedException e) {
            throw new AssertionError(e);
        }
    }

    /**
     * A trace is due if, left alone, its chance of a quick right answer at the next drill is below this, or
     * below what the child can reach at its best; 0.5 to 0.99.
     */
    public double target() {
        return target;
    }

    /** A trace is weak while, with what was practised today, that chance is below this; at most the target. */
    public double firm() {
        return firm;
    }

    /** How far away the next drill is taken to be, from the beginning of this one. */
    public Duration nextDrill() {
        return nextDrill;
    }

    /** The second moment at which a gain is looked at; a lasting one. */
    public Duration later() {
        return later;
    }

    /** What would not be quick enough after so long without practice is asked while there is time. */
    public Duration weeksOn() {
        return weeksOn;
    }

    /** The least time between two new families. */
    public Duration newEvery() {
        return newEvery;
    }

    /** No new family while more traces are due. */
    public int mostWaiting() {
        return mostWaiting;
    }

    /** No new family while more families are unsure than this share of the facts the child carries. */
    public double unsureShare() {
        return unsureShare;
    }

    /** How many drills in a row must have gone well for a new family to come though much is weak. */
    public int wellInARow() {
        return wellInARow;
    }

    /** After how many drills without a new family it comes then. */
    public int longestWait() {
        return longestWait;
    }

    /** The same for a child who carries much. */
    public int shortWait() {
        return shortWait;
    }

    /** How many weak facts are much. */
    public double muchCarried() {
        return muchCarried;
    }

    /** A drill goes on so long after a lesson. */
    public Duration afterLesson() {
        return afterLesson;
    }

    /** A drill with nothing useful left to ask goes on so long while a family is not fluent. */
    public Duration shortest() {
        return shortest;
    }

    /** So long it goes on though all families that were met are fluent. */
    public Duration least() {
        return least;
    }

    /** Others asked before a missed fact comes back, for a child who is usually right then. */
    public int againAfter() {
        return againAfter;
    }

    /** The same for a child who usually is not. */
    public int againSoon() {
        return againSoon;
    }

    /** The chance of being right at a re-ask from which on it counts as usual. */
    public double usuallyRight() {
        return usuallyRight;
    }

    /** Others asked before a weak trace comes back, not missed, when nothing is due any more. */
    public int weakApart() {
        return weakApart;
    }

    /** Whether a product brings its inverse along. */
    public boolean pairs() {
        return pairs;
    }
}
