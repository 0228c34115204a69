// SPDX-License-Identifier: Apache-2.0
package fourfold.words;

import fourfold.facts.Question;
import fourfold.insight.Advice;
import fourfold.insight.FamilyReport;
import java.util.function.Function;

/** The one sentence of advice on a family, and a way to it where that helps. */
public final class AdviceWords {
    private AdviceWords() {}

    /**
     * The advice in words.
     *
     * @param fact how a question with its result is written
     */
    public static String told(Words words, FamilyReport report, Function<Question, String> fact) {
        Advice advice = report.advice();
        String key = "advice." + advice.about().key();
        String told = advice.wrong()
                .map(w -> words.say(
                        key,
                        w.answer().typed(),
                        words.asked(w.answer().question()),
                        w.answer().fits().map(words::fact).orElse("")))
                .orElseGet(() -> words.say(key));
        return told + report.hint().map(h -> " " + words.hint(h, fact)).orElse("");
    }
}
