// SPDX-License-Identifier: Apache-2.0
package fourfold.progress;

/** Whether a trace was met: of its mastery, and of a mastery in the making. */
interface Meeting {
    /** Whether it was ever asked or introduced. */
    boolean isMet();

    /** Whether it was only tried: never right from memory, and shown no more than was needed to put that right. */
    boolean isOnlyTried();
}
