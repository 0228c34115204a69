// SPDX-License-Identifier: Apache-2.0
package fourfold.screens.child;

import fourfold.drill.Gain;
import fourfold.drill.Summary;
import fourfold.drill.Summary.Day;
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
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.UUID;

/**
 * The end of a drill: a word for the day, the one gain most worth telling as a sentence to read aloud, the child's stairs
 * as they grow by what was done today, what a stone is, and what comes next.
 */
record SummaryPicture(
        Words words,
        Child child,
        Settings settings,
        Optional<UUID> drill,
        Optional<TodaysStones> stones,
        Optional<Timings> timings,
        boolean showsGraph) {
    /** More names than this make a list that nobody reads. */
    private static final int MOST_NAMES = 3;

    private static final int WIDEST_TEXT = 56;

    /** The last step beside which the text stands. */
    private static final int BESIDE = 5;

    /** Without stairs and minutes. */
    static SummaryPicture without(Words words, Child child, Progress progress) {
        return new SummaryPicture(
                words,
                child,
                progress.steering().settings(),
                progress.drill().map(d -> d.session().id()),
                Optional.empty(),
                Optional.empty(),
                false);
    }

    /** With the child's stairs, in which today is counted, and minutes. */
    SummaryPicture with(LifetimeProgress stairs, Timings minutes) {
        LifetimeProgress before = drill.map(stairs::before).orElse(stairs);
        TodaysStones laid = TodaysStones.between(before, stairs);
        return new SummaryPicture(words, child, settings, drill, Optional.of(laid), Optional.of(minutes), showsGraph);
    }

    private SummaryPicture with(Optional<TodaysStones> shown) {
        return new SummaryPicture(words, child, settings, drill, shown, timings, showsGraph);
    }

    /** The stairs as they are at that moment; this very picture if nothing moves. */
    SummaryPicture at(Instant now) {
        Optional<TodaysStones> shown = stones.map(s -> s.at(now));
        return shown.equals(stones) ? this : with(shown);
    }

    /** Whether stones are still being laid. */
    boolean isMoving() {
        return stones.filter(TodaysStones::isMoving).isPresent();
    }

    /** With all stones laid. */
    SummaryPicture still() {
        return with(stones.map(TodaysStones::all));
    }

    /** Whether there is more to see: the graph of the child's minutes, if one was taken today. */
    boolean hasMore(Summary summary) {
        return !showsGraph && summary.timing().isPresent() && timings.isPresent();
    }

    /** The graph of the child's minutes. */
    SummaryPicture more() {
        return new SummaryPicture(words, child, settings, drill, stones, timings, true);
    }

    void draw(Picture picture, Summary summary) {
        if (showsGraph) {
            graph(picture, summary);
        } else {
            told(picture, summary);
        }
        picture.centred(
                picture.height() - 1, words.say("summary.press", new DrillKeys(words, settings).ready()), Ink.QUIET);
    }

    private void graph(Picture picture, Summary summary) {
        Operation operation = summary.timing().orElseThrow().operation();
        String title = operation == Operation.MULTIPLY ? "summary.graph.products" : "summary.graph.quotients";
        picture.centred(1, words.say(title), Ink.STRONG);
        timings.ifPresent(t -> new MinutesGraph(t.of(operation)).draw(picture, 3));
    }

    private void told(Picture picture, Summary summary) {
        ChildStairs stairs = new ChildStairs(picture);
        int spare = picture.height() - stairs.height() - 5;
        boolean drawn = stones.isPresent() && spare >= 0 && picture.width() >= stairs.width() + 20;
        int top = drawn ? 2 + spare / 2 : 2;
        int beside = drawn ? stairs.widthOf(BESIDE) + 4 : 0;
        int width = Math.min(WIDEST_TEXT, picture.width() - beside - 4);
        int left = Math.max(2, (picture.width() - beside - width) / 2);
        picture.centred(
                top - 2, words.say("summary.title." + key(summary.day()), Words.isolated(child.name())), Ink.STRONG);
        if (drawn) {
            stairs.draw(left, top, stones.get()::stones);
            if (stones.get().isWhole() && !stones.get().isMoving()) {
                stairs.capstone(left, top);
            }
        }
        int rows = drawn ? (stairs.height() * BESIDE) / 10 : picture.height() - top - 4;
        int y = top;
        for (String line : fitted(sentences(summary), width, rows)) {
            picture.text(left + beside, y, line, y == top || line.startsWith("  ") ? Ink.STRONG : Ink.PLAIN);
            y++;
        }
        int below = drawn ? top + stairs.height() : picture.height() - 3;
        if (drawn) {
            boolean whole = stones.get().isWhole();
            picture.centred(below, words.say(whole ? "summary.whole" : "summary.stone"), whole ? Ink.PLAIN : Ink.QUIET);
        }
        String next = next(summary);
        picture.centred(below + 1, next, Ink.PLAIN);
    }

    private static String key(Enum<?> one) {
        return one.name().toLowerCase(Locale.ROOT);
    }

    /** As many sentences as there is room for; what matters least goes first. */
    private static List<String> fitted(List<String> sentences, int width, int rows) {
        List<String> kept = new ArrayList<>(sentences);
        List<String> lines = wrapped(kept, width);
        while (lines.size() > rows && kept.size() > 1) {
            kept.remove(kept.size() - 1);
            lines = wrapped(kept, width);
        }
        return lines;
    }

    private static List<String> wrapped(List<String> sentences, int width) {
        List<String> lines = new ArrayList<>();
        sentences.forEach(sentence -> lines.addAll(Wrapping.lines(sentence, width)));
        return lines;
    }

    /** Everything there is to tell, the sentence to read aloud first. */
    private List<String> sentences(Summary summary) {
        if (summary.day().isAtRest()) {
            return List.of(words.say(summary.day().why()));
        }
        List<String> told = new ArrayList<>();
        boolean last = stones.filter(TodaysStones::areTheLast).isPresent();
        told.add(words.say("summary.read", last ? words.say("summary.aloud.whole") : aloud(words, summary)));
        summary.timing().ifPresent(t -> told.add(timed(t)));
        int laid = stones.map(s -> s.laid().size()).orElse(0);
        if (laid > 0) {
            told.add(words.counted("summary.laid", laid, laid));
        }
        List<Family> met = summary.changes().met();
        if (!met.isEmpty() && met.size() <= MOST_NAMES && !(met.size() == 1 && isTold(summary))) {
            told.add(words.say("summary.met", words.names(met, MOST_NAMES)));
        }
        if (summary.day() == Day.GOOD) {
            told.add(words.say(
                    "summary.right",
                    summary.answers().right(),
                    summary.answers().asked()));
        }
        told.add(words.say("summary.practised", words.minutes(summary.practised())));
        if (summary.enough()) {
            told.add(words.say("summary.enough"));
        }
        return told;
    }

    /** Whether the one family that was met is the gain that is told. */
    private static boolean isTold(Summary summary) {
        return summary.gain().filter(g -> g.kind() == Gain.Kind.MET).isPresent();
    }

    private String next(Summary summary) {
        if (summary.day().isAtRest()) {
            return "";
        }
        List<Family> again = summary.changes().again();
        if (!again.isEmpty()) {
            return words.say("summary.again", words.names(again, MOST_NAMES));
        }
        return summary.changes()
                .next()
                .map(f -> words.say("summary.next", words.name(f)))
                .orElseGet(() -> words.say("summary.goon"));
    }

    private String timed(Summary.Timed timed) {
        String key = timed.operation() == Operation.MULTIPLY ? "summary.timed.products" : "summary.timed.quotients";
        return words.say(
                key,
                Math.round(timed.rates().factsPerMinute()),
                Math.round(timed.rates().digitsPerMinute()));
    }

    /** One sentence a child can read aloud to a parent: the gain most worth telling. */
    static String aloud(Words words, Summary summary) {
        if (summary.gain().isEmpty()) {
            return summary.day() == Day.GOOD
                    ? words.say(
                            "summary.aloud.right",
                            summary.answers().right(),
                            summary.answers().asked())
                    : words.say("summary.aloud." + key(summary.day()));
        }
        Gain gain = summary.gain().get();
        String name = words.name(gain.family());
        return switch (gain.kind()) {
            case TABLE -> words.say("summary.aloud.table", gain.number());
            case RECALLED -> words.say("summary.aloud.recalled", name, gain.number());
            case MET -> words.say("summary.aloud.met", name, gain.family().product());
            case FLUENT, FIRMER, QUICKER -> words.say("summary.aloud." + key(gain.kind()), name);
        };
    }
}
