// SPDX-License-Identifier: Apache-2.0
package fourfold.simulation.policy20261127;

import java.time.Duration;

/**
 * The constants of the policy that practises for lasting gain, each beside its name. Those without a source are our own
 * choice, set with the benchmark's tuning children. Immutable: what is to be other is a copy.
 */
public final class Rules implements Cloneable {
    private static final Rules USUAL = new Rules();

    private double target = 0.98;
    private double firm = 0.93;
    private Duration nextDrill = Duration.ofHours(40);
    private Duration later = Duration.ofDays(20);
    private Duration newEvery = Duration.ofSeconds(90);
    private int mostNew = 4;
    private int mostWaiting = 30;
    private int mostWeak = 60;
    private int longestWait = 12;
    private int mostShaky = 8;
    private int againAfter = 8;
    private int againSoon = 3;
    private double usuallyRight = 0.5;
    private int weakApart = 12;
    private int mostAsked = 3;
    private boolean pairs = true;

    private Rules() {}

    /** The rules the program uses. */
    public static Rules usual() {
        return USUAL;
    }

    /** These rules with a new family only while no more traces are due. */
    public Rules withMostWaiting(int traces) {
        Rules other = copy();
        other.mostWaiting = traces;
        return other;
    }

    /** These rules with a new family only while no more traces are weak. */
    public Rules withMostWeak(int traces) {
        Rules other = copy();
        other.mostWeak = traces;
        return other;
    }

    /** These rules with a new family only while fewer families are below accurate. */
    public Rules withMostShaky(int families) {
        Rules other = copy();
        other.mostShaky = families;
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
     * A trace is due if, left alone, its chance of a quick right answer at the next drill is below this; 0.5 to 0.99.
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

    /** The least time between two new families. */
    public Duration newEvery() {
        return newEvery;
    }

    /** The most new families in a drill, beside the parent's own limit; known ones do not count. */
    public int mostNew() {
        return mostNew;
    }

    /** No new family while more traces are due. */
    public int mostWaiting() {
        return mostWaiting;
    }

    /**
     * No new family while more traces are weak; with fewer, the weak ones are asked again in the same drill. What was
     * begun is made firm before more is begun: this mattered more than any order of questions.
     */
    public int mostWeak() {
        return mostWeak;
    }

    /**
     * When every fact met was asked so often from memory, a new family joins though many are weak: no child waits for
     * ever.
     */
    public int longestWait() {
        return longestWait;
    }

    /** No new family while this many families are below accurate. */
    public int mostShaky() {
        return mostShaky;
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

    /** How often a weak trace is asked in one drill at most. */
    public int mostAsked() {
        return mostAsked;
    }

    /** Whether a product brings its inverse along. */
    public boolean pairs() {
        return pairs;
    }
}
