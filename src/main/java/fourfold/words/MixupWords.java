// SPDX-License-Identifier: Apache-2.0
package fourfold.words;

import fourfold.facts.Operation;
import fourfold.facts.Question;
import fourfold.progress.WrongAnswer;
import java.util.function.Function;

/** What happened with a wrong answer, in plain words. */
public final class MixupWords {
    private MixupWords() {}

    /**
     * What happened, in one calm line.
     *
     * @param inWords how a question is written where this is said
     */
    public static String told(Words words, WrongAnswer wrong, Function<Question, String> inWords) {
        Question asked = wrong.question();
        boolean product = asked.operation() == Operation.MULTIPLY;
        return switch (wrong.kind()) {
            case NEIGHBOUR, SAME_TABLE, OTHER_TABLE -> otherFact(words, wrong, inWords);
            case OTHER_OPERATION ->
                words.say(
                        product ? "mixup.sum" : "mixup.difference", asked.left(), asked.right(), inWords.apply(asked));
            case DIGITS_SWAPPED -> words.say("mixup.swapped");
            case OTHER -> words.say("mixup.other");
        };
    }

    /** The answer belongs to another fact. */
    private static String otherFact(Words words, WrongAnswer wrong, Function<Question, String> inWords) {
        Question asked = wrong.question();
        if (wrong.fits().isEmpty()) {
            return words.say("mixup.other");
        }
        if (asked.operation() == Operation.MULTIPLY) {
            String other = inWords.apply(wrong.fits().orElseThrow().question());
            return words.say("mixup." + direction(wrong), other, wrong.typed(), inWords.apply(asked));
        }
        String other = inWords.apply(Question.product(wrong.typed(), asked.right()));
        return words.say("mixup.quotient", other, wrong.typed() * asked.right(), asked.left());
    }

    /** Whether a product is the next one up or down in the table, or stands elsewhere. */
    private static String direction(WrongAnswer wrong) {
        if (wrong.kind() != WrongAnswer.Kind.NEIGHBOUR) {
            return "product";
        }
        return wrong.typed() > wrong.question().expected() ? "up" : "down";
    }
}
