package fourfold.store;

import fourfold.facts.Answer;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.UUID;
import java.util.function.Consumer;

/**
 * Some hundred of a child's answers, as the file holds them. Making answers of the numbers takes as long as reading them,
 * so it is put off until they are asked for, which another thread may do.
 */
final class AnswerBatch {
    private static final int MOST = 512;

    private final UUID child;
    private final long[] numbers = new long[MOST * AnswerRow.NUMBERS_IN_A_ROW];
    private final UUID[] drills = new UUID[MOST];
    private int count;
    private int drillNumber;
    private UUID drill;

    /** An empty one. */
    AnswerBatch(UUID child) {
        this(child, 0, child);
    }

    private AnswerBatch(UUID child, int drillNumber, UUID drill) {
        this.child = child;
        this.drillNumber = drillNumber;
        this.drill = drill;
    }

    /** An empty one for what comes after this. */
    AnswerBatch next() {
        return new AnswerBatch(child, drillNumber, drill);
    }

    /** Whether no more fits in. */
    boolean isFull() {
        return count == MOST;
    }

    /** Adds the answer in this row. */
    void add(ResultSet row) throws SQLException {
        int at = count * AnswerRow.NUMBERS_IN_A_ROW;
        AnswerRow.numbers(row, numbers, at);
        int number = AnswerRow.drillNumber(numbers[at + AnswerRow.NUMBERS_IN_A_ROW - 1]);
        if (number != drillNumber) {
            drillNumber = number;
            drill = AnswerRow.drill(row);
        }
        drills[count++] = drill;
    }

    /**
     * Hands over each answer, in order.
     *
     * @throws Refusal if one can't be an answer
     */
    void forEach(Consumer<Answer> each) {
        for (int i = 0; i < count; i++) {
            each.accept(AnswerRow.answer(child, drills[i], numbers, i * AnswerRow.NUMBERS_IN_A_ROW));
        }
    }
}
