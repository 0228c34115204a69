// SPDX-License-Identifier: Apache-2.0
package fourfold.facts;

/** Multiplication or division; the two undo each other. */
public enum Operation {
    MULTIPLY("multiply", '×', 'x'),
    DIVIDE("divide", '÷', '/');

    private final String word;
    private final char sign;
    private final char plainSign;

    Operation(String word, char sign, char plainSign) {
        this.word = word;
        this.sign = sign;
        this.plainSign = plainSign;
    }

    /** The word used in files: {@code multiply} or {@code divide}. */
    public String word() {
        return word;
    }

    /** The printed sign: × or ÷. */
    public char sign() {
        return sign;
    }

    /** The sign where only ASCII can be shown: x or /. */
    public char plainSign() {
        return plainSign;
    }

    /** The other operation. */
    public Operation inverse() {
        return this == MULTIPLY ? DIVIDE : MULTIPLY;
    }

    /**
     * The operation a file's word names.
     *
     * @throws IllegalArgumentException if the word is neither {@code multiply} nor {@code divide}
     */
    public static Operation ofWord(String word) {
        for (Operation operation : values()) {
            if (operation.word.equals(word)) {
                return operation;
            }
        }
        throw new IllegalArgumentException("operation must be multiply or divide, not \"" + word + "\"");
    }
}
