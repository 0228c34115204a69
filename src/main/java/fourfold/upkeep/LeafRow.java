// SPDX-License-Identifier: Apache-2.0
package fourfold.upkeep;

import fourfold.store.AnswerValues;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/** A row as it stands in its page: whole numbers, texts, or nothing. */
final class LeafRow {
    private final long number;
    private final @Nullable Object[] values;

    LeafRow(long number, @Nullable Object... values) {
        this.number = number;
        this.values = values;
    }

    /** Its number in the table. */
    long number() {
        return number;
    }

    int columns() {
        return values.length;
    }

    /** Whether nothing is in a column; there is nothing behind the last. */
    boolean isNone(int column) {
        return column >= values.length || values[column] == null;
    }

    /** Whether a whole number is in a column. */
    boolean isWhole(int column) {
        return values[column] instanceof Long;
    }

    /**
     * The whole number in a column.
     *
     * @throws RuntimeException if none is there
     */
    long whole(int column) {
        return (Long) Objects.requireNonNull(values[column]);
    }

    /**
     * The text in a column.
     *
     * @throws RuntimeException if none is there
     */
    String text(int column) {
        return (String) Objects.requireNonNull(values[column]);
    }

    /**
     * What these columns say of an answer.
     *
     * @throws fourfold.log.InvalidValue if it can be none
     */
    AnswerValues answer(int from, int until) {
        return AnswerValues.of(from, until, values);
    }
}
