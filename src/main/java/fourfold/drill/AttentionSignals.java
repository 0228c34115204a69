// SPDX-License-Identifier: Apache-2.0
package fourfold.drill;

import fourfold.log.Answer;
import fourfold.progress.DrillSoFar;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;

/**
 * What shows how attentive the child is: keys that mean nothing, and answers
 * given faster than they can be thought. All limits are our own choice.
 *
 * @param idleKeys keys in a row that meant nothing
 * @param lastIdleKey when the last of them came
 * @param saidAtTurn after how many questions from memory the child last read that there is no hurry
 */
record AttentionSignals(int idleKeys, Optional<Instant> lastIdleKey, Optional<Integer> saidAtTurn) {
    /** Nothing yet. */
    static final AttentionSignals NOTHING = new AttentionSignals(0, Optional.empty(), Optional.empty());

    /** Keys that mean nothing count as one burst when they come no further apart. */
    private static final Duration BURST = Duration.ofMillis(400);

    /** This many in a burst are no slip of the hand. */
    private static final int MANY = 10;

    /** Nobody reads, thinks and types in less. */
    private static final Duration UNREAD = Duration.ofMillis(350);

    private static final int UNREAD_IN_A_ROW = 3;

    /** A wrong answer begun sooner was not thought over. */
    private static final Duration RACED = Duration.ofSeconds(1);

    private static final int RACED_OF = 4;
    private static final int RACED_ERRORS = 2;

    /** The sentence is not said again within this many questions. */
    private static final int SAID_FOR = 10;

    /** With one more key that meant nothing. */
    AttentionSignals idleKey(Instant at) {
        boolean burst = lastIdleKey
                .filter(last -> Duration.between(last, at).compareTo(BURST) <= 0)
                .isPresent();
        return new AttentionSignals(burst ? idleKeys + 1 : 1, Optional.of(at), saidAtTurn);
    }

    /** After a key that meant something. */
    AttentionSignals meantKey() {
        return idleKeys == 0 ? this : new AttentionSignals(0, Optional.empty(), saidAtTurn);
    }

    AttentionSignals said(int turn) {
        return new AttentionSignals(idleKeys, lastIdleKey, Optional.of(turn));
    }

    /** Whether more keys came at once than anybody can mean. */
    boolean isMashing() {
        return idleKeys >= MANY;
    }

    /** Whether the last prompts were answered wrongly without having been read. */
    static boolean areUnread(DrillSoFar drill) {
        int seen = 0;
        for (Answer answer : drill.newestFirst()) {
            boolean unread = !answer.isCorrect()
                    && !answer.isMissing()
                    && answer.whole().filter(w -> w.compareTo(UNREAD) < 0).isPresent();
            if (!unread) {
                return false;
            }
            if (++seen == UNREAD_IN_A_ROW) {
                return true;
            }
        }
        return false;
    }

    /** Whether the child races through with errors and did not read lately that there is no hurry. */
    boolean shouldHearThereIsNoHurry(DrillSoFar drill) {
        if (saidAtTurn.filter(t -> drill.turns() - t < SAID_FOR).isPresent()) {
            return false;
        }
        int seen = 0;
        int raced = 0;
        for (Answer answer : drill.newestFirst()) {
            if (!answer.purpose().isFromMemory()) {
                continue;
            }
            boolean fast = answer.firstKey().filter(f -> f.compareTo(RACED) < 0).isPresent();
            raced += fast && !answer.isCorrect() ? 1 : 0;
            if (++seen == RACED_OF) {
                break;
            }
        }
        return raced >= RACED_ERRORS;
    }
}
