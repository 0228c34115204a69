// SPDX-License-Identifier: Apache-2.0
package fourfold.progress;

import fourfold.facts.Operation;
import fourfold.log.Answer;
import java.time.Duration;
import java.util.List;

/**
 * Digits and facts correct per minute, as curriculum-based measurement counts them: a digit counts if it is right in its
 * place. Products and quotients are never mixed, since their answers differ in length.
 *
 * @param digitsPerMinute digits correct a minute, 0 or more
 * @param factsPerMinute facts correct a minute, 0 or more
 * @param answers how many timed answers from memory were counted
 */
public record Rates(double digitsPerMinute, double factsPerMinute, int answers) {
    /**
     * The rates of one operation over some answers; only answers from memory that were timed count.
     */
    public static Rates of(List<Answer> answers, Operation operation) {
        long millis = 0;
        int digits = 0;
        int facts = 0;
        int counted = 0;
        for (Answer answer : answers) {
            boolean counts = answer.purpose().isFromMemory()
                    && answer.whole().isPresent()
                    && answer.question().filter(q -> q.operation() == operation).isPresent();
            if (counts) {
                counted++;
                millis += answer.whole().map(Duration::toMillis).orElse(0L);
                digits += digitsCorrect(answer.typed(), answer.prompt().expected());
                facts += answer.isCorrect() ? 1 : 0;
            }
        }
        return millis == 0
                ? new Rates(0, 0, counted)
                : new Rates(perMinute(digits, millis), perMinute(facts, millis), counted);
    }

    /** A count over a time, per minute. */
    public static double perMinute(int count, long millis) {
        return 60_000.0 * count / millis;
    }

    /**
     * How many digits of the typed answer are right in their place, counted from the ones' place, as facts are scored in
     * curriculum-based measurement (after Shinn 1989; Fuchs and Fuchs): 54 for 56 has one, 65 for 56 none.
     */
    public static int digitsCorrect(String typed, int expected) {
        String right = Integer.toString(expected);
        int count = 0;
        for (int fromRight = 1; fromRight <= Math.min(typed.length(), right.length()); fromRight++) {
            count += typed.charAt(typed.length() - fromRight) == right.charAt(right.length() - fromRight) ? 1 : 0;
        }
        return count;
    }
}
