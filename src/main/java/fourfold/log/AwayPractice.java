// SPDX-License-Identifier: Apache-2.0
package fourfold.log;

/** What a child can practise with away from the screen. */
public enum AwayPractice {
    /** Cards with a question on one side and its answer on the other. */
    CARDS,
    /** A page of questions on paper. */
    PAGE,
    /** A game for two. */
    GAME;

    /** Its name in the log of actions and on the command line, which never changes. */
    public String key() {
        return name().toLowerCase(java.util.Locale.ROOT);
    }

    /**
     * What has that name.
     *
     * @throws IllegalArgumentException if nothing has
     */
    public static AwayPractice ofKey(String key) {
        for (AwayPractice one : values()) {
            if (one.key().equals(key)) {
                return one;
            }
        }
        throw new IllegalArgumentException(key);
    }
}
