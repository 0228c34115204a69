// SPDX-License-Identifier: Apache-2.0
package fourfold.paper;

import fourfold.facts.Family;
import fourfold.facts.MissingFactor;
import fourfold.facts.Operation;
import fourfold.facts.Prompt;
import fourfold.facts.Question;
import fourfold.words.Words;
import java.util.List;

/** Questions as they are written on paper. */
final class Written {
    /** Where an answer is written. */
    static final String LINE = "<span class=\"line\">&nbsp;</span>";

    private Written() {}

    /** Families by their products; a line never ends inside one. */
    static String names(List<Family> families, int most, Words words) {
        char sign = words.sign(Operation.MULTIPLY);
        return words.names(families, most).replace(" " + sign + " ", "\u00a0" + sign + "\u00a0");
    }

    /** Four cells of a row, so that signs and lines stand under each other; the answer is HTML. */
    static String cells(Prompt prompt, String answer, Words words) {
        if (prompt instanceof MissingFactor hidden) {
            return cell("left", hidden.known())
                    + cell("sign", words.sign(Operation.MULTIPLY))
                    + "<td class=\"answer\" colspan=\"2\">" + answer + " = " + hidden.product() + "</td>";
        }
        Question question = (Question) prompt;
        return cell("left", question.left())
                + cell("sign", words.sign(question.operation()))
                + cell("right", question.right())
                + "<td class=\"answer\"> = " + answer + "</td>";
    }

    /** In one line with its answer, which is HTML: 56 ÷ 7 = 8, or 7 × 8 = 56 where the factor was hidden. */
    static String line(Prompt prompt, String answer, Words words) {
        return prompt instanceof MissingFactor hidden
                ? hidden.known() + " " + words.sign(Operation.MULTIPLY) + " " + answer + " = " + hidden.product()
                : HtmlPage.escaped(words.asked(prompt)) + " = " + answer;
    }

    private static String cell(String kind, Object text) {
        return "<td class=\"" + kind + "\">" + text + "</td>";
    }
}
