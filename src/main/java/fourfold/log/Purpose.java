// SPDX-License-Identifier: Apache-2.0
package fourfold.log;

import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Why something was asked. The word is what files hold. */
public enum Purpose {
    /** A number to copy, to learn how fast the child's hands are. */
    COPY,
    /** Typed with the answer in view: a new family, or the right fact after an error. */
    INTRODUCE,
    /** Asked from memory. */
    PRACTISE,
    /** Asked from memory again in the same drill, after an error or a first success. */
    AGAIN,
    /** A family asked before it was ever taught here, to see whether it is known already. */
    PROBE,
    /** Asked on a printed page and entered afterwards: right or not, timed at most as a whole page. */
    PAPER,
    /** Asked in a one-minute timing. */
    TIMED,
    /** Asked and answered aloud, with cards or on the way, and keyed by the grown-up: right or not, quick or slow. */
    ALOUD;

    /** The word used in files. */
    public String word() {
        return name().toLowerCase(java.util.Locale.ROOT);
    }

    /** Whether the answer had to come from memory, so that right and wrong mean something. */
    public boolean isFromMemory() {
        return this != COPY && this != INTRODUCE;
    }

    /** Whether the child itself typed the answer, so that a first key can be timed. */
    public boolean isTyped() {
        return this != PAPER && this != ALOUD;
    }

    /**
     * The purpose a file's word names.
     *
     * @throws InvalidValue if there is none
     */
    public static Purpose ofWord(String word) {
        for (Purpose purpose : values()) {
            if (purpose.word().equals(word)) {
                return purpose;
            }
        }
        throw new InvalidValue(
                Reason.PURPOSE, Stream.of(values()).map(Purpose::word).collect(Collectors.joining(", ")), word);
    }
}
