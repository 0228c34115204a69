// SPDX-License-Identifier: Apache-2.0
package fourfold.simulation;

import java.util.Locale;
import java.util.stream.LongStream;

/**
 * Which children numbers may be chosen on, and which they are told from. The two never share a child. A range for
 * reporting is used once for each release of the policy and bears its name: whoever has looked at a table knows its
 * children, so the next release gets a new range.
 */
public enum Seeds {
    /** For choosing numbers: seeds 1 to 60. */
    TUNING(1),
    /** For the table of the policy of 27 November 2026. */
    REPORTING_2026_11_27(20_001),
    /** For the table of the second policy of that day. */
    REPORTING_2026_11_27_SECOND(30_001),
    /** For the tables of the policy and of the look ahead of 28 November 2026. */
    REPORTING_2026_11_28(40_001),
    /** For the table of the second policy of that day. */
    REPORTING_2026_11_28_SECOND(80_001),
    /** For the table of the next policy. */
    REPORTING_NEXT(90_001);

    private static final int MOST = 1000;

    private final long first;

    Seeds(long first) {
        this.first = first;
    }

    /** The range with that name, in any case, with - for _. */
    public static Seeds named(String name) {
        return valueOf(name.replace('-', '_').toUpperCase(Locale.ROOT));
    }

    /** The first of the range. */
    public long first() {
        return first;
    }

    /** The first so many seeds of the range. */
    public LongStream take(int children) {
        if (children < 1 || children > MOST) {
            throw new IllegalArgumentException("a range has 1 to " + MOST + " children, not " + children);
        }
        return LongStream.range(first, first + children);
    }
}
