// SPDX-License-Identifier: Apache-2.0
package fourfold.simulation;

import java.util.List;

/**
 * One question at one instant, drawn at random: what was foretold after a drill, and the true chance. Kept as floats, for
 * there are millions of them.
 *
 * @param horizon how far ahead
 * @param said what the policy foretold, 0 to 1
 * @param mean what the child's running mean says
 * @param lastFive what the trace's last five answers say
 * @param halfLife what the half-life rule says
 * @param truth the child's true chance to be right within 3 s, if nothing is practised until then
 */
record Probe(Horizon horizon, float said, float mean, float lastFive, float halfLife, float truth) {
    /** Who foretells: the policy, and the three references. */
    static final List<String> NAMES = List.of("forecast", "running mean", "last five", "half-life");

    /** How far ahead a forecast looks. */
    enum Horizon {
        NEXT("next drill"),
        DAYS_14("14 days"),
        DAYS_60("60 days");

        private final String words;

        Horizon(String words) {
            this.words = words;
        }

        String words() {
            return words;
        }
    }

    /** What one of {@link #NAMES} foretold, kept from 0 and 1, so that one odd case does not decide everything. */
    double chance(int who) {
        double chance = switch (who) {
            case 0 -> said;
            case 1 -> mean;
            case 2 -> lastFive;
            default -> halfLife;
        };
        return Math.max(0.001, Math.min(0.999, chance));
    }

    /** The log loss to be expected of what one of them foretold, in nats. */
    double logLoss(int who) {
        double p = chance(who);
        return -truth * Math.log(p) - (1 - truth) * Math.log(1 - p);
    }

    /** The Brier score to be expected. */
    double brier(int who) {
        double p = chance(who);
        return truth * (1 - p) * (1 - p) + (1 - truth) * p * p;
    }
}
