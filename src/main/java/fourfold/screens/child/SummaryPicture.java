package fourfold.screens.child;

import fourfold.drill.Summary;
import fourfold.facts.Family;
import fourfold.facts.Operation;
import fourfold.insight.LifetimeProgress;
import fourfold.insight.Timings;
import fourfold.log.Child;
import fourfold.progress.Progress;
import fourfold.progress.Settings;
import fourfold.terminal.Ink;
import fourfold.terminal.Picture;
import fourfold.terminal.Wrapping;
import fourfold.words.Words;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The end of a drill: what was practised, what became firmer or quicker than the child's own past, what comes next, a
 * sentence to read aloud, and beside it the child's own stairs, which only ever fill.
 */
record SummaryPicture(
        Words words,
        Child child,
        Settings settings,
        Optional<LifetimeProgress> filling,
        Optional<Timings> timings,
        boolean showsGraph) {
    /** More names than this make a list that nobody reads. */
    private static final int MOST_NAMES = 4;

    /** Without stairs and minutes. */
    static SummaryPicture without(Words words, Child child, Progress progress) {
        return new SummaryPicture(
                words, child, progress.steering().settings(), Optional.empty(), Optional.empty(), false);
    }

    /** With the child's stairs and minutes. */
    SummaryPicture with(LifetimeProgress stairs, Timings minutes) {
        return new SummaryPicture(words, child, settings, Optional.of(stairs), Optional.of(minutes), showsGraph);
    }

    /** Whether there is more to see: the graph of the child's minutes, if one was taken today. */
    boolean hasMore(Summary summary) {
        return !showsGraph && summary.timing().isPresent() && timings.isPresent();
    }

    /** The graph of the child's minutes. */
    SummaryPicture more() {
        return new SummaryPicture(words, child, settings, filling, timings, true);
    }

    void draw(Picture picture, Summary summary) {
        if (showsGraph) {
            graph(picture, summary);
        } else {
            told(picture, summary);
        }
        picture.centred(
                picture.height() - 1, words.say("summary.press", new DrillKeys(words, settings).ready()), Ink.PLAIN);
    }

    private void graph(Picture picture, Summary summary) {
        Operation operation = summary.timing().orElseThrow().operation();
        String title = operation == Operation.MULTIPLY ? "summary.graph.products" : "summary.graph.quotients";
        picture.centred(1, words.say(title), Ink.STRONG);
        timings.ifPresent(t -> new MinutesGraph(t.of(operation)).draw(picture, 3));
    }

    private void told(Picture picture, Summary summary) {
        ChildStairs stairs = new ChildStairs(picture, filling);
        int gap = 4;
        int textWidth = Math.min(56, picture.width() - stairs.width() - gap - 4);
        int left = Math.max(1, (picture.width() - stairs.width() - gap - textWidth) / 2);
        int top = Math.max(2, (picture.height() - stairs.height() - 2) / 2 - 1);
        picture.centred(top - 2, words.say("summary.title", Words.isolated(child.name())), Ink.STRONG);
        stairs.draw(left, top);
        picture.text(left, top + stairs.height() + 1, words.say("summary.stairs"), Ink.QUIET);
        int y = top;
        for (String line : fitted(summary, textWidth, picture.height() - top - 2)) {
            picture.text(left + stairs.width() + gap, y++, line, Ink.PLAIN);
        }
    }

    /** As many sentences as there is room for; what matters least goes first. */
    private List<String> fitted(Summary summary, int width, int rows) {
        List<String> sentences = new ArrayList<>(sentences(summary));
        List<String> lines = wrapped(sentences, width);
        for (int drop = sentences.size() - 3; lines.size() > rows && drop > 1; drop--) {
            sentences.remove(drop);
            lines = wrapped(sentences, width);
        }
        return lines;
    }

    private static List<String> wrapped(List<String> sentences, int width) {
        List<String> lines = new ArrayList<>();
        for (String sentence : sentences) {
            List<String> parts = Wrapping.lines(sentence, width);
            lines.add(parts.get(0));
            parts.subList(1, parts.size()).forEach(part -> lines.add("  " + part));
        }
        return lines;
    }

    /** Everything there is to tell, the sentence to read aloud before the last. */
    private List<String> sentences(Summary summary) {
        List<String> told = new ArrayList<>();
        told.add(words.say("summary.practised", words.minutes(summary.practised())));
        told.add(
                summary.answers().asked() == 0
                        ? words.say("summary.none")
                        : words.say(
                                "summary.right",
                                summary.answers().right(),
                                summary.answers().asked()));
        summary.timing().ifPresent(t -> told.add(timed(t)));
        add(told, "summary.met", summary.changes().met());
        add(told, "summary.firmer", summary.changes().firmer());
        add(told, "summary.quicker", summary.changes().quicker());
        add(told, "summary.again", summary.changes().again());
        summary.changes().next().ifPresent(f -> add(told, "summary.next", List.of(f)));
        told.add("");
        told.add(words.say("summary.read", aloud(words, summary)));
        told.add(words.say("summary.kept"));
        return told;
    }

    private void add(List<String> told, String key, List<Family> families) {
        if (!families.isEmpty()) {
            told.add(words.say(key, words.names(families, MOST_NAMES)));
        }
    }

    private String timed(Summary.Timed timed) {
        String key = timed.operation() == Operation.MULTIPLY ? "summary.timed.products" : "summary.timed.quotients";
        return words.say(
                key,
                Math.round(timed.rates().factsPerMinute()),
                Math.round(timed.rates().digitsPerMinute()));
    }

    /** One sentence a child can read aloud to a parent: the best thing there is to tell. */
    static String aloud(Words words, Summary summary) {
        String minutes = words.minutes(summary.practised());
        if (!summary.changes().firmer().isEmpty()) {
            return words.say(
                    "summary.aloud.firmer",
                    minutes,
                    words.name(summary.changes().firmer().get(0)));
        }
        if (!summary.changes().quicker().isEmpty()) {
            return words.say(
                    "summary.aloud.quicker",
                    minutes,
                    words.name(summary.changes().quicker().get(0)));
        }
        if (!summary.changes().met().isEmpty()) {
            return words.say(
                    "summary.aloud.met",
                    minutes,
                    words.name(summary.changes().met().get(0)));
        }
        return summary.answers().asked() == 0
                ? words.say("summary.aloud.none")
                : words.say(
                        "summary.aloud.plain",
                        minutes,
                        summary.answers().right(),
                        summary.answers().asked());
    }
}
