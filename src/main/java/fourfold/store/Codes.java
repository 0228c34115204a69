// SPDX-License-Identifier: Apache-2.0
package fourfold.store;

import fourfold.facts.Families;
import fourfold.facts.MissingFactor;
import fourfold.facts.NumberToCopy;
import fourfold.facts.Operation;
import fourfold.facts.Prompt;
import fourfold.facts.Question;
import fourfold.log.Answer;
import fourfold.log.InvalidValue;
import fourfold.log.Purpose;
import fourfold.log.Reason;
import fourfold.log.Surface;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;
import java.util.UUID;

/**
 * The small numbers that stand for words in the table of answers. They are written out in the migration and never change,
 * whatever becomes of the order of the enums.
 */
final class Codes {
    /** The code in the place of an operation where there is only a number to copy. */
    static final int NO_OPERATION = 0;

    private static final int MULTIPLY = 1;
    private static final int DIVIDE = 2;
    private static final int FACTOR = 3;
    private static final List<Purpose> PURPOSES = List.of(
            Purpose.COPY,
            Purpose.INTRODUCE,
            Purpose.PRACTISE,
            Purpose.AGAIN,
            Purpose.PROBE,
            Purpose.PAPER,
            Purpose.TIMED,
            Purpose.ALOUD);
    private static final List<Surface> SURFACES =
            List.of(Surface.TERMINAL, Surface.WINDOW, Surface.PLAIN, Surface.PAPER, Surface.ALOUD);
    private static final List<Answer.Pace> PACES = List.of(Answer.Pace.QUICK, Answer.Pace.SLOW);
    private static final int HEIGHT = Families.LARGEST_PRODUCT + 1;
    private static final int WIDTH = Families.LARGEST_FACTOR + 1;

    /** Each prompt once, so that a long log holds 400 of them and not one for each answer. */
    private static final Prompt[] PROMPTS = new Prompt[(FACTOR + 1) * HEIGHT * WIDTH];

    static {
        for (int n = 1; n < HEIGHT; n++) {
            PROMPTS[place(NO_OPERATION, n, 0)] = new NumberToCopy(n);
        }
        for (Question question : Families.questions()) {
            PROMPTS[place(of(question.operation()), question.left(), question.right())] = question;
            if (question.operation() == Operation.DIVIDE) {
                PROMPTS[place(FACTOR, question.left(), question.right())] = new MissingFactor(question);
            }
        }
    }

    private Codes() {}

    private static int of(Operation operation) {
        return operation == Operation.MULTIPLY ? MULTIPLY : DIVIDE;
    }

    /** The code of the form in which a question was asked. */
    static int of(Question question, Prompt asked) {
        return asked instanceof MissingFactor ? FACTOR : of(question.operation());
    }

    static int of(Purpose purpose) {
        return PURPOSES.indexOf(purpose);
    }

    static int of(Surface surface) {
        return SURFACES.indexOf(surface) + 1;
    }

    static int of(Answer.Pace pace) {
        return PACES.indexOf(pace) + 1;
    }

    /**
     * The purpose of a code.
     *
     * @param code from 0
     * @throws InvalidValue if there is none
     */
    static Purpose purpose(int code) {
        return of(PURPOSES, code);
    }

    /**
     * The surface of a code.
     *
     * @param code from 1
     * @throws InvalidValue if there is none
     */
    static Surface surface(int code) {
        return of(SURFACES, code - 1);
    }

    /**
     * The pace of a code.
     *
     * @param code from 1
     * @throws InvalidValue if there is none
     */
    static Answer.Pace pace(int code) {
        return of(PACES, code - 1);
    }

    private static <T> T of(List<T> all, int place) {
        if (place < 0 || place >= all.size()) {
            throw new InvalidValue(Reason.CODE, place);
        }
        return all.get(place);
    }

    /**
     * The prompt of these codes.
     *
     * @param right the number after the sign; 0 for a number to copy
     * @throws InvalidValue if there is no such prompt
     */
    static Prompt prompt(int operation, int left, int right) {
        boolean inside =
                operation >= 0 && operation <= FACTOR && left >= 1 && left < HEIGHT && right >= 0 && right < WIDTH;
        Prompt prompt = inside ? PROMPTS[place(operation, left, right)] : null;
        if (prompt == null) {
            throw new InvalidValue(Reason.CODE, operation + ", " + left + ", " + right);
        }
        return prompt;
    }

    /**
     * The id in a column.
     *
     * @throws Refusal if it is none
     */
    static UUID id(ResultSet row, int column) throws SQLException {
        String text = row.getString(column);
        try {
            return UUID.fromString(text == null ? "" : text);
        } catch (IllegalArgumentException e) {
            throw new Refusal(Reason.ID_UNREADABLE);
        }
    }

    private static int place(int operation, int left, int right) {
        return (operation * HEIGHT + left) * WIDTH + right;
    }
}
