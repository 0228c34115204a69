// SPDX-License-Identifier: Apache-2.0
package fourfold.memory;

import fourfold.log.Surface;
import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/** How fast one child's hands are on one surface, by the number of digits. Times are in milliseconds. Immutable. */
final class HandsOnASurface {
    /** The bounds within which a believed median first key is kept, milliseconds. Our own choice. */
    static final double LEAST_FIRST_KEY = 200;

    static final double MOST_FIRST_KEY = 3_000;

    /** The most a believed median whole time can be, milliseconds. Our own choice. */
    static final double MOST_WHOLE = 6_000;

    /** What is taken for the first key before five copies: 800 ms. Our own choice. */
    static final double USUAL_FIRST_KEY = 800;

    /** What is taken for Enter after the first key, and for each further digit: 300 ms. Our own choice. */
    static final double USUAL_NEXT_KEY = 300;

    /**
     * What is taken for reading a question on paper and going on to it, and for writing each digit: 800 ms each. Our own
     * choice: nobody copies numbers on paper here, so a hand that writes slowly is not known from others.
     */
    static final double USUAL_READING = 800;

    static final double USUAL_WRITTEN_DIGIT = 800;

    private static final int MOST_DIGITS = 3;

    private final Surface surface;
    /** By the number of digits, from one. */
    private final CopyTimes[] copies;

    /** Worked out when first asked for, since copies come several in a row; whoever comes twice finds the same. */
    private @Nullable Estimates estimates;

    private HandsOnASurface(Surface surface, CopyTimes[] copies) {
        this.surface = surface;
        this.copies = copies;
    }

    /** Of a child who has copied nothing there yet. */
    static HandsOnASurface unknown(Surface surface) {
        CopyTimes[] none = new CopyTimes[MOST_DIGITS];
        Arrays.fill(none, CopyTimes.NONE);
        return new HandsOnASurface(surface, none);
    }

    /** With one more copy of a number of so many digits. */
    HandsOnASurface with(int digits, long at, int firstKey, int whole) {
        CopyTimes[] more = copies.clone();
        more[digits - 1] = more[digits - 1].with(at, firstKey, whole);
        return new HandsOnASurface(surface, more);
    }

    /** Whether enough copies of so many digits have been seen. */
    boolean isKnown(int digits) {
        return copies[digits - 1].isKnown();
    }

    /** What is taken for the time to the first digit; at plain lines and on paper, for all of it. */
    double firstKey(int digits) {
        return estimates().firstKeys[digits - 1];
    }

    /** What is taken for the time to Enter. */
    double whole(int digits) {
        return estimates().wholes[digits - 1];
    }

    private Estimates estimates() {
        Estimates known = estimates;
        if (known == null) {
            known = new Estimates(this);
            estimates = known;
        }
        return known;
    }

    /** What the copies come to. Immutable. */
    private static final class Estimates {
        private final double[] firstKeys = new double[MOST_DIGITS];
        private final double[] wholes = new double[MOST_DIGITS];

        Estimates(HandsOnASurface hands) {
            boolean written = hands.surface == Surface.PAPER;
            boolean byLine = written || hands.surface == Surface.PLAIN;
            for (int i = 0; i < MOST_DIGITS; i++) {
                double first = USUAL_FIRST_KEY;
                double whole = written
                        ? USUAL_READING + USUAL_WRITTEN_DIGIT * (i + 1)
                        : USUAL_FIRST_KEY + USUAL_NEXT_KEY * (i + 1);
                int nearest = hands.nearestKnown(i);
                if (nearest >= 0) {
                    first = hands.copies[nearest].firstKey();
                    whole = hands.copies[nearest].whole() + USUAL_NEXT_KEY * (i - nearest);
                }
                firstKeys[i] = byLine
                        ? Math.max(LEAST_FIRST_KEY, Math.min(MOST_WHOLE, whole))
                        : Math.max(LEAST_FIRST_KEY, Math.min(MOST_FIRST_KEY, first));
                wholes[i] = Math.max(firstKeys[i], Math.min(MOST_WHOLE, whole));
            }
        }
    }

    /** The place itself, or the known one with the closest digit count; −1 if there is none. */
    private int nearestKnown(int place) {
        int nearest = -1;
        for (int other = 0; other < MOST_DIGITS; other++) {
            if (copies[other].isKnown() && (nearest < 0 || Math.abs(other - place) < Math.abs(nearest - place))) {
                nearest = other;
            }
        }
        return nearest;
    }
}
