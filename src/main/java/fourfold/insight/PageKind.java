// SPDX-License-Identifier: Apache-2.0
package fourfold.insight;

import java.util.Locale;

/** The pages that can be printed, in the order in which they are offered. */
public enum PageKind {
    /** Questions to answer by hand, with a key. */
    PRACTICE,
    /** Questions of one operation for one minute, with a key that counts digits. */
    MINUTE,
    /** Questions in which facts are met in life. */
    LIFE,
    /** Cards: a question, its answer behind it. */
    CARDS,
    /** Cards: the square of four with one fact shown, the whole square behind it. */
    SQUARECARDS,
    /** Cards: an array, its facts behind it. */
    PICTURECARDS,
    /** Squares of four to fill in. */
    SQUARES,
    /** Number line and array that teach a family. */
    PICTURES,
    /** A game: tiles in a ring. */
    DOMINO,
    /** A game: questions and answers face down. */
    PAIRS,
    /** A game: boards of answers, and questions to call out. */
    LOTTO,
    /** The table of all products, blank and filled. */
    TABLE,
    /** What the pages and games of the coming weeks need. */
    SUPPLIES,
    /** What the child can do now, told to the child. */
    CANDO,
    /** A period of practice, told to whoever asks for a report. */
    REPORT,
    /** The last page: the stairs are whole. */
    WHOLE;

    /** Its name in texts, files and on the command line. */
    public String key() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** Whether a page has a number by which its answers are entered later. */
    public boolean isNumbered() {
        return this == PRACTICE || this == MINUTE || this == LIFE || this == CARDS;
    }

    /** Whether it asks questions. */
    public boolean hasQuestions() {
        return isNumbered() || isGame();
    }

    /** Whether it is a game for two. */
    public boolean isGame() {
        return this == DOMINO || this == PAIRS || this == LOTTO;
    }

    /** Whether it shows families as a whole. */
    public boolean hasFamilies() {
        return this == SQUARECARDS || this == PICTURECARDS || this == SQUARES || this == PICTURES;
    }

    /** Whether a parent chooses what is on it. */
    public boolean isChosen() {
        return hasQuestions() || hasFamilies();
    }

    /** The most questions, or families, on one page. */
    public int most() {
        return switch (this) {
            case PRACTICE, MINUTE -> PaperQuestions.MOST;
            case CARDS -> PaperQuestions.CARDS;
            case LIFE -> 12;
            case DOMINO, LOTTO -> 18;
            case PAIRS -> 12;
            case SQUARECARDS, PICTURECARDS -> 8;
            case SQUARES -> 6;
            case PICTURES -> 2;
            default -> 0;
        };
    }

    /** The name in texts of what is said when there is nothing to print yet. */
    public String nothing() {
        return this == WHOLE ? "notwhole" : "nothing";
    }
}
