// SPDX-License-Identifier: Apache-2.0
package fourfold.words;

import static org.junit.jupiter.api.Assertions.assertThrows;

import fourfold.log.Problem;
import fourfold.log.RecordsFailure;
import java.util.List;
import org.junit.jupiter.api.function.Executable;

/** What a person reads of a failure, in English. */
public final class InEnglish {
    private InEnglish() {}

    /** The line told of what the attempt must fail with. */
    public static String failure(Executable attempt) {
        return failure(attempt, "it worked");
    }

    /** The same, with a message for an attempt that works. */
    public static String failure(Executable attempt, String message) {
        return Words.english().failure(assertThrows(RecordsFailure.class, attempt, message));
    }

    /** What is found in a file, a line each. */
    public static List<String> problems(List<Problem> found) {
        return found.stream().map(Words.english()::problem).toList();
    }
}
