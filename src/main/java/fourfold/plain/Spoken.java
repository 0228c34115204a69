// SPDX-License-Identifier: Apache-2.0
package fourfold.plain;

import fourfold.facts.Family;
import fourfold.facts.Operation;
import fourfold.facts.Question;
import fourfold.words.SafeText;
import fourfold.words.Words;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** What all plain sentences share: signs in words, and a list of sentences as lines. */
public final class Spoken {
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

    /** What a page says, as it is heard: one sentence or more, signs in words, a stop at the end. */
    public static String heard(Words words, String text) {
        String told = SafeText.safe(text).strip().replaceAll(" {2,}", " ");
        Matcher hidden = Pattern.compile("(\\d+) " + Pattern.quote(Character.toString(words.sign(Operation.MULTIPLY)))
                        + " \\? = (\\d+)\\.?")
                .matcher(told);
        told = hidden.replaceAll(m -> Matcher.quoteReplacement(words.say("plain.ask.factor", m.group(1), m.group(2))));
        for (Operation operation : Operation.values()) {
            String key = operation == Operation.MULTIPLY ? "plain.times" : "plain.divided";
            String sign = Pattern.quote(Character.toString(words.sign(operation)));
            Matcher between = Pattern.compile("(\\d+) " + sign + " (\\d+)").matcher(told);
            told = between.replaceAll(m -> Matcher.quoteReplacement(words.say(key, m.group(1), m.group(2))));
            told = told.replaceAll(
                    "(?<= )" + sign + "(?=[ ;.])",
                    Matcher.quoteReplacement(words.say("plain.operation." + operation.word())));
        }
        told = Pattern.compile("([^ ]+) = ([^ ]+)")
                .matcher(told)
                .replaceAll(m -> Matcher.quoteReplacement(words.say("plain.is", m.group(1), m.group(2))));
        told = Pattern.compile("(\\d) s(?![^ .,;)])")
                .matcher(told)
                .replaceAll(m -> Matcher.quoteReplacement(words.say("plain.seconds", m.group(1))));
        return told.matches("(?s).*[.?!]") ? told : told + ".";
    }

    /** The sentences, each on a line of its own. */
    static String lines(List<String> sentences, boolean unicode) {
        return Signs.printable(String.join("\n", sentences), unicode) + "\n";
    }
}
