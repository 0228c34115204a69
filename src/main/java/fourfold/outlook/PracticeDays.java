// SPDX-License-Identifier: Apache-2.0
package fourfold.outlook;

import java.util.Set;

/**
 * On which days there will be practice: on any day with the same chance, but for the days off.
 *
 * @param aWeek days with a drill in a week without days off, above 0, at most 7
 * @param off local days on which there is none, days since 1 January 1970
 */
public record PracticeDays(double aWeek, Set<Long> off) {
    /** Less than this is taken for this: a day in four weeks. Our own choice. */
    private static final double FEWEST = 0.25;

    public PracticeDays {
        aWeek = Math.max(FEWEST, Math.min(7, aWeek));
        off = Set.copyOf(off);
    }

    /** So many days a week, and no days off. */
    public static PracticeDays aWeek(double days) {
        return new PracticeDays(days, Set.of());
    }

    /** The chance of a drill on a local day, 0 to 1. */
    double chance(long localDay) {
        return off.contains(localDay) ? 0 : aWeek / 7;
    }

    /** The same days off with other days a week. */
    PracticeDays with(double days) {
        return new PracticeDays(days, off);
    }
}
