// SPDX-License-Identifier: Apache-2.0
package fourfold.drill;

import fourfold.facts.Family;
import fourfold.facts.MissingFactor;
import fourfold.facts.Operation;
import fourfold.facts.Prompt;
import fourfold.facts.Question;
import fourfold.progress.DrillSoFar;
import fourfold.progress.Progress;
import java.util.List;
import java.util.SplittableRandom;

/**
 * Which divisions are asked as 7 × ? = 56: all of a table whose division has not come yet, and where the parent wants it
 * every third one or so of the others (our own choice).
 */
final class HiddenFactors {
    private static final int ONE_IN = 3;

    private HiddenFactors() {}

    /** The question in the form in which it is asked now. */
    static Prompt form(Question question, Progress progress) {
        DrillSoFar drill = progress.drill().orElseThrow();
        long seed = drill.session().seed() + drill.turns();
        boolean hidden = question.operation() == Operation.DIVIDE
                && progress.steering().settings().missingFactors()
                && new SplittableRandom(seed).nextInt(ONE_IN) == 0;
        return hidden ? new MissingFactor(question) : progress.signed(question);
    }

    /** All facts of a family as they are shown. */
    static List<Prompt> signed(Family family, Progress progress) {
        return family.questions().stream().map(progress::signed).toList();
    }
}
