// SPDX-License-Identifier: Apache-2.0
package fourfold.drill;

import fourfold.facts.Families;
import fourfold.facts.NumberToCopy;
import fourfold.log.Surface;
import fourfold.memory.MotorTime;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;

/**
 * The numbers a drill begins with, to be copied as they are. The first drills have five of one digit and five of two,
 * for motor time is never taken from fewer than five copies. When the hands are known, three drills in four have none, and
 * the fourth two of each, which follows the child's hands as they grow quicker. None is a product that a child has to
 * learn, apart from those with 1 (counts are our own choice).
 */
final class WarmUp {
    private static final int ONE_DIGIT = 9;
    private static final int TWO_DIGITS = 99;
    private static final int FIRST = 5;
    private static final int LATER = 2;
    private static final int ONE_DRILL_IN = 4;

    private WarmUp() {}

    /** Whether motor time is known for answers of one and of two digits. */
    static boolean handsKnown(MotorTime motor, Surface surface) {
        return motor.isKnown(ONE_DIGIT, surface) && motor.isKnown(TWO_DIGITS, surface);
    }

    static List<NumberToCopy> numbers(boolean handsKnown, long seed) {
        SplittableRandom dice = new SplittableRandom(seed);
        int each = !handsKnown ? FIRST : Math.floorMod(seed, ONE_DRILL_IN) == 0 ? LATER : 0;
        List<NumberToCopy> numbers = new ArrayList<>();
        int before = 0;
        for (int i = 0; i < 2 * each; i++) {
            int number = before;
            while (number == before || isProduct(number)) {
                number = i % 2 == 0 ? dice.nextInt(2, 10) : dice.nextInt(11, 100);
            }
            numbers.add(new NumberToCopy(number));
            before = number;
        }
        return List.copyOf(numbers);
    }

    private static boolean isProduct(int number) {
        return Families.all().stream().anyMatch(f -> f.low() > 1 && f.product() == number);
    }
}
