// SPDX-License-Identifier: Apache-2.0
package fourfold.simulation;

import fourfold.facts.Operation;
import fourfold.facts.Question;
import java.util.SplittableRandom;

/**
 * Wrong answers as they occur: about four in five are a neighbour in one of the two tables, most by one step, some are
 * another product, some are no product at all (Campbell and Graham 1985; shares from memory: 79, 14 and 7 %).
 */
final class WrongAnswers {
    private WrongAnswers() {}

    static int to(Question question, SplittableRandom dice) {
        int right = question.expected();
        int wrong = right;
        for (int tries = 0; wrong == right || wrong < 1; tries++) {
            wrong = tries > 20 ? right + 1 : draw(question, dice);
        }
        return wrong;
    }

    private static int draw(Question question, SplittableRandom dice) {
        int step = (dice.nextBoolean() ? 1 : -1) * (dice.nextDouble() < 0.7 ? 1 : 2);
        double kind = dice.nextDouble();
        if (question.operation() == Operation.DIVIDE) {
            return kind < 0.85 ? question.expected() + step : question.right();
        }
        int a = question.left();
        int b = question.right();
        if (kind < 0.79) {
            return dice.nextBoolean() ? (a + step) * b : a * (b + step);
        }
        return kind < 0.93 ? dice.nextInt(2, 10) * dice.nextInt(2, 10) : a * b + step;
    }

    /** A slip of the finger: one digit replaced by a neighbour on the keyboard's row. */
    static int slip(int right, SplittableRandom dice) {
        int last = right % 10;
        int other = last == 9 ? 8 : last == 0 ? 1 : last + (dice.nextBoolean() ? 1 : -1);
        return right - last + other;
    }
}
