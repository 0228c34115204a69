// SPDX-License-Identifier: Apache-2.0
package fourfold.upkeep;

/** Is told how far long work has come. It may be told often, and by any thread; it takes no time and throws nothing. */
public interface Advance {
    /** Tells nobody. */
    Advance UNSEEN = percent -> {};

    /**
     * So far.
     *
     * @param percent 0 to 100; what is less than was said before is no news
     */
    void to(int percent);

    /** So many of them all. */
    default void to(long done, long all) {
        to(all <= 0 ? 100 : (int) Math.max(0, Math.min(100, 100 * done / all)));
    }

    /** One part of the work: its own 0 to 100 is this much of the whole. */
    default Advance part(int from, int until) {
        return percent -> to(from + (until - from) * percent / 100);
    }
}
