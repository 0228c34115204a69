// SPDX-License-Identifier: Apache-2.0
package fourfold.simulation.policy20261127;

/** Numbers that look shuffled and are the same for the same seed. */
final class Mixing {
    private Mixing() {}

    /** A well-mixed number for a seed and a place (the finishing steps of SplitMix64, Steele, Lea and Flood 2014). */
    static long of(long seed, long place) {
        long z = seed + (place + 1) * 0x9E3779B97F4A7C15L;
        z = (z ^ (z >>> 30)) * 0xBF58476D1CE4E5B9L;
        z = (z ^ (z >>> 27)) * 0x94D049BB133111EBL;
        return z ^ (z >>> 31);
    }
}
