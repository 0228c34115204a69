package fourfold.commands;

import fourfold.drill.Phase;
import fourfold.drill.Phase.Asking;
import fourfold.drill.Summary;
import fourfold.export.PlainText;
import fourfold.facts.Answer;
import fourfold.facts.Fact;
import fourfold.facts.Family;
import fourfold.facts.Operation;
import fourfold.facts.Question;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/** What a plain drill says: whole sentences, with signs in words, for the ear and the fingertip as much as the eye. */
final class PlainWords {
    static final String PAUSE = "Pause. The clock stands still. Press Enter to go on, or type q to stop for today.";
    static final String READY = "When you are ready, press Enter.";
    static final String DIGITS_ONLY =
            "Please type digits only, at most " + Answer.LONGEST_TYPED + ". Nothing was counted.";

    static final String NUMBER_FIRST = "Please type the number, then press Enter.";

    private PlainWords() {}

    static List<String> hello(String name, Duration planned) {
        return List.of(
                "Hello " + PlainText.safe(name) + ". This drill lasts about " + minutes(planned) + ".",
                "Type each answer and press Enter. Press Enter alone to be shown the answer.",
                "Type p for a pause, or q to stop for today. Your answers are kept as you go.");
    }

    static String ask(Asking asking) {
        String nearly = asking.tries() > 0 ? "Nearly. " : "";
        if (!(asking.prompt() instanceof Question question)) {
            return nearly + "Type the number " + asking.prompt().expected() + ".";
        }
        if (!asking.isInView()) {
            return "What is " + asked(question) + "?";
        }
        String type = " Type " + question.expected() + ".";
        if (asking.tries() > 0 || asking.reason() == Phase.Reason.MEETING) {
            return nearly + told(question.fact()) + "." + type;
        }
        String begin =
                asking.reason() == Phase.Reason.PUTTING_RIGHT ? "It is " + question.expected() + ". " : "Here it is. ";
        return begin + rows(question) + ", so " + told(question.fact()) + "." + type;
    }

    static List<String> meeting(Family family) {
        List<String> lines = new ArrayList<>();
        lines.add("Here is a new family: " + family.low() + ", " + family.high() + " and " + family.product() + ".");
        lines.add(rows(family.low(), family.high()) + ".");
        family.facts().forEach(fact -> lines.add(told(fact) + "."));
        lines.add(READY);
        return lines;
    }

    static String right(Answer answer) {
        return "Right." + answer.question().map(q -> " " + told(q.fact()) + ".").orElse("");
    }

    static List<String> notKept(String reason) {
        return List.of(
                "The last answer is not kept yet. It is not your fault. Please fetch a grown-up.",
                PlainText.safe(reason),
                "Press Enter to try again, g to go on all the same, or q to stop for today without it.");
    }

    static List<String> lost(int answers) {
        return List.of("You did well. " + (answers == 1 ? "1 answer" : answers + " answers")
                + " could not be kept. It is not your fault. Please fetch a grown-up.");
    }

    static List<String> summary(Summary summary, String name) {
        List<String> lines = new ArrayList<>();
        lines.add("You practised for " + minutes(summary.practised()) + ".");
        lines.add(
                summary.asked() == 0
                        ? "No questions this time."
                        : summary.right() + " of " + summary.asked() + " answers came right from memory.");
        if (!summary.met().isEmpty()) {
            lines.add("New today: " + families(summary.met()) + ".");
        }
        if (!summary.firmer().isEmpty()) {
            lines.add("Firmer than before: " + families(summary.firmer()) + ".");
        }
        lines.add("Everything is kept. See you next time, " + PlainText.safe(name) + ".");
        return lines;
    }

    private static String minutes(Duration time) {
        long minutes = time.plusSeconds(30).toMinutes();
        return minutes < 1 ? "less than a minute" : minutes == 1 ? "1 minute" : minutes + " minutes";
    }

    private static String families(List<Family> families) {
        return families.stream().map(f -> f.low() + " times " + f.high()).collect(Collectors.joining(", "));
    }

    private static String asked(Question question) {
        return question.left()
                + (question.operation() == Operation.MULTIPLY ? " times " : " divided by ")
                + question.right();
    }

    private static String told(Fact fact) {
        Question question = new Question(fact.operation(), fact.left(), fact.right());
        return asked(question) + " is " + question.expected();
    }

    /** The picture of a question in words; a division looks at the rows of its product. */
    private static String rows(Question question) {
        return question.operation() == Operation.MULTIPLY
                ? rows(question.left(), question.right())
                : rows(question.right(), question.expected());
    }

    private static String rows(int rows, int inEach) {
        return (rows == 1 ? "1 row of " + inEach + " makes " : rows + " rows of " + inEach + " make ") + rows * inEach;
    }
}
