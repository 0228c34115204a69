package fourfold.plain;

import fourfold.facts.Family;
import fourfold.facts.Operation;
import fourfold.facts.Question;
import fourfold.words.Words;
import java.util.List;

/** What all plain sentences share: signs in words, and a list of sentences as lines. */
final class Spoken {
    private Spoken() {}

    /** A question with its sign in words. */
    static String asked(Words words, Question question) {
        return words.say(
                question.operation() == Operation.MULTIPLY ? "plain.times" : "plain.divided",
                question.left(),
                question.right());
    }

    /** A family's product with its sign in words. */
    static String product(Words words, Family family) {
        return asked(words, Question.product(family.low(), family.high()));
    }

    /** A sentence begins with a capital letter. */
    static String sentence(Words words, String text) {
        return text.substring(0, 1).toUpperCase(words.language()) + text.substring(1);
    }

    /** The sentences, each on a line of its own. */
    static String lines(List<String> sentences, boolean unicode) {
        return Signs.printable(String.join("\n", sentences), unicode) + "\n";
    }
}
