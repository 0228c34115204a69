// SPDX-License-Identifier: Apache-2.0
package fourfold.home;

/** How a question went that was answered away from the keys. */
public enum Mark {
    /** Right. */
    RIGHT,
    /** Right, but not at once; of questions said aloud only. */
    SLOW,
    /** Not right. */
    WRONG,
    /** Not done, or not marked: nothing is kept of it. */
    OPEN
}
