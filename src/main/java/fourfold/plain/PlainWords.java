// SPDX-License-Identifier: Apache-2.0
package fourfold.plain;

import fourfold.drill.Depiction;
import fourfold.drill.Help;
import fourfold.drill.Phase;
import fourfold.drill.Phase.Asking;
import fourfold.drill.Summary;
import fourfold.facts.Family;
import fourfold.facts.MissingFactor;
import fourfold.facts.Operation;
import fourfold.facts.Prompt;
import fourfold.facts.Question;
import fourfold.log.Answer;
import fourfold.log.RecordsFailure;
import fourfold.words.MixupWords;
import fourfold.words.SafeText;
import fourfold.words.Words;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** What a plain drill says: whole sentences, with signs in words, for the ear and the fingertip as much as the eye. */
final class PlainWords {
    private final Words words;

    PlainWords(Words words) {
        this.words = words;
    }

    String say(String key, Object... gaps) {
        return words.say(key, gaps);
    }

    List<String> hello(String name, Duration planned, String today) {
        return List.of(
                say("plain.hello", SafeText.safe(name), words.minutes(planned)),
                today,
                say("plain.how"),
                say("plain.keys"));
    }

    String ask(Asking asking) {
        String nearly = asking.tries() > 0 ? say("plain.nearly") + " " : "";
        if (asking.question().isEmpty()) {
            return nearly + say("plain.copy", asking.prompt().expected());
        }
        Question question = asking.question().get();
        if (!asking.isInView()) {
            String hurry = asking.reason() == Phase.Reason.NO_HURRY ? say("drill.nohurry") + " " : "";
            return hurry
                    + (asking.prompt() instanceof MissingFactor hidden
                            ? say("plain.ask.factor", hidden.known(), hidden.product())
                            : say("plain.ask", asked(question)));
        }
        String type = " " + say("plain.type", question.expected());
        if (asking.tries() > 0 || asking.reason() == Phase.Reason.MEETING) {
            return nearly + sentence(inWords(asking)) + type;
        }
        String mixup = asking.help()
                .mixup()
                .map(m -> MixupWords.told(words, m, q -> asked(asking.prompt(), q)) + " ")
                .orElse("");
        String begin = asking.reason() == Phase.Reason.PUTTING_RIGHT
                ? say("plain.itis", question.expected())
                : say("plain.hereitis");
        String bridge = asking.help()
                .hint()
                .map(h -> " " + words.hint(h, this::inWords))
                .orElse("");
        return mixup + begin + " " + because(asking, question) + bridge + type;
    }

    /** The fact with its picture in words, where there is one. */
    private String because(Asking asking, Question question) {
        Help help = asking.help();
        return sentence(
                help.depiction().isEmpty()
                        ? inWords(asking)
                        : say("plain.so", picture(help.depiction().get(), question), inWords(asking)));
    }

    List<String> meeting(Phase.Meeting meeting) {
        Family family = meeting.family();
        List<String> lines = new ArrayList<>();
        lines.add(say("plain.meeting", family.low(), family.high(), family.product()));
        meeting.depiction().ifPresent(d -> lines.add(sentence(words.picture(d, false, family.low(), family.high()))));
        meeting.facts().forEach(fact -> lines.add(told(fact)));
        meeting.hint().ifPresent(h -> lines.add(words.hint(h, this::inWords)));
        lines.add(say("plain.ready"));
        return lines;
    }

    /** A fact of a lesson, as a sentence; one with a factor hidden as a question. */
    private String told(Prompt fact) {
        return fact instanceof MissingFactor hidden
                ? say("plain.ask.factor", hidden.known(), hidden.product())
                : sentence(inWords((Question) fact));
    }

    String right(Answer answer) {
        return say("plain.right")
                + answer.question().map(q -> " " + sentence(inWords(q))).orElse("");
    }

    List<String> notKept(Optional<RecordsFailure> failure) {
        return List.of(
                say("plain.notkept"), SafeText.safe(failure.map(words::failure).orElse("")), say("plain.trouble"));
    }

    List<String> lost(int answers) {
        return List.of(say("plain.lost", words.counted("count.answers", answers, answers)));
    }

    List<String> summary(Summary summary) {
        List<String> lines = new ArrayList<>();
        lines.add(say("plain.practised", words.minutes(summary.practised())));
        if (summary.enough()) {
            lines.add(say("summary.enough"));
        }
        if (summary.day().isAtRest()) {
            lines.add(say(summary.day().why()));
            return lines;
        }
        lines.add(
                summary.answers().asked() == 0
                        ? say("summary.none")
                        : say(
                                "summary.right",
                                summary.answers().right(),
                                summary.answers().asked()));
        summary.timing()
                .ifPresent(t -> lines.add(say(
                        t.operation() == Operation.MULTIPLY ? "summary.timed.products" : "summary.timed.quotients",
                        Math.round(t.rates().factsPerMinute()),
                        Math.round(t.rates().digitsPerMinute()))));
        add(lines, "summary.met", summary.changes().met());
        add(lines, "summary.firmer", summary.changes().firmer());
        add(lines, "summary.quicker", summary.changes().quicker());
        add(lines, "summary.again", summary.changes().again());
        summary.changes().next().ifPresent(f -> add(lines, "summary.next", List.of(f)));
        return lines;
    }

    private void add(List<String> lines, String key, List<Family> families) {
        if (!families.isEmpty()) {
            lines.add(say(key, families.stream().map(this::name).collect(Collectors.joining(", "))));
        }
    }

    private String name(Family family) {
        return asked(Question.product(family.low(), family.high()));
    }

    /** A question in the form in which the child was asked it. */
    private String asked(Prompt prompt, Question question) {
        boolean hidden =
                prompt instanceof MissingFactor factor && factor.quotient().equals(question);
        return hidden ? words.shown(prompt) : asked(question);
    }

    private String asked(Question question) {
        return say(
                question.operation() == Operation.MULTIPLY ? "plain.times" : "plain.divided",
                question.left(),
                question.right());
    }

    /** The fact a prompt belongs to: a hidden factor is said as the product it stands in. */
    private String inWords(Asking asking) {
        return asking.prompt() instanceof MissingFactor hidden
                ? inWords(Question.product(hidden.known(), hidden.expected()))
                : inWords(asking.question().orElseThrow());
    }

    private String inWords(Question question) {
        return say("plain.is", asked(question), question.expected());
    }

    /** A question's picture in words. */
    private String picture(Depiction depiction, Question question) {
        return words.picture(depiction, question);
    }

    private String sentence(String text) {
        return text.substring(0, 1).toUpperCase(words.language()) + text.substring(1) + ".";
    }
}
