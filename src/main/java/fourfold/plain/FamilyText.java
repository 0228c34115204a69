// SPDX-License-Identifier: Apache-2.0
package fourfold.plain;

import fourfold.facts.Family;
import fourfold.insight.FamilyReport;
import fourfold.insight.Grid;
import fourfold.insight.TraceRecord;
import fourfold.progress.Steering;
import fourfold.words.AdviceWords;
import fourfold.words.CalendarWords;
import fourfold.words.SafeText;
import fourfold.words.Stones;
import fourfold.words.Words;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** One family as plain text: its facts, and how each trace stands. */
public final class FamilyText {
    private FamilyText() {}

    /**
     * The family as a table.
     *
     * @param words the language
     * @param name the child's nickname
     * @param report what is told of it
     * @param steering what the parent's acts come to
     * @param unicode false to use no signs beyond ASCII
     */
    public static String table(Words words, String name, FamilyReport report, Steering steering, boolean unicode) {
        Family family = report.family();
        StringBuilder text = new StringBuilder(words.say(
                "plain.family.title",
                SafeText.safe(name),
                family.low(),
                family.high(),
                family.product(),
                Stones.of(report.highest(), unicode).strip() + " "
                        + words.level(report.cell().level())));
        text.append(states(words, report, steering)).append("\n\n");
        TextTable table = new TextTable(false, 18, 10, 12, 10, 1, 1, 1);
        table.row(List.of(
                words.say("plain.family.question"),
                words.say("family.level"),
                words.say("family.right"),
                words.say("family.thinking"),
                words.say("family.last"),
                words.say("family.due"),
                words.say("family.ahead")));
        for (FamilyReport.OfTrace trace : report.traces()) {
            table.row(row(words, trace, Stones.of(trace.highest(), unicode)));
        }
        return Signs.printable(text.append(table.lines()).toString(), unicode);
    }

    /** The family in sentences, each of which makes sense when heard alone. */
    public static String sentences(Words words, String name, FamilyReport report, Steering steering, boolean unicode) {
        Family family = report.family();
        List<String> told = new ArrayList<>();
        told.add(words.say(
                        "plain.family.title",
                        SafeText.safe(name),
                        family.low(),
                        family.high(),
                        family.product(),
                        words.level(report.cell().level()))
                + states(words, report, steering)
                + ".");
        told.add(words.say(
                "plain.family.level",
                words.level(report.cell().level()),
                report.highest().ordinal()));
        report.begunAgain()
                .ifPresent(day -> told.add(words.say("family.since", words.date(LocalDate.ofEpochDay(day)))));
        for (FamilyReport.OfTrace trace : report.traces()) {
            told.add(trace(words, trace));
            for (TraceRecord.Wrong wrong : trace.record().wrong()) {
                told.add(words.say(
                        "plain.family.wrong",
                        wrong.answer().typed(),
                        Spoken.asked(words, wrong.answer().question()),
                        wrong.times(),
                        words.say("wrong." + wrong.answer().kind().key())));
            }
        }
        told.add(AdviceWords.told(words, report, q -> words.say("plain.is", Spoken.asked(words, q), q.expected())));
        told.addAll(CalendarWords.taught(words, steering.calendar(), family));
        return Spoken.lines(told, unicode);
    }

    private static String trace(Words words, FamilyReport.OfTrace trace) {
        String asked = trace.trace().questions().stream()
                .map(q -> Spoken.asked(words, q))
                .reduce((one, other) -> words.say("plain.and", one, other))
                .orElseThrow();
        TraceRecord record = trace.record();
        List<String> parts = new ArrayList<>();
        parts.add(words.level(trace.level()));
        parts.add(words.say("plain.family.stones", trace.highest().ordinal()));
        if (record.asked() == 0) {
            parts.add(words.say("plain.family.never"));
        } else {
            parts.add(words.say("plain.family.right", record.right(), record.asked()));
            parts.add(words.say("plain.family.missing", record.missing()));
            parts.add(words.say("plain.family.mended", record.mended()));
        }
        trace.median().ifPresent(m -> parts.add(words.say("plain.family.usual", words.seconds(m))));
        trace.lastDay()
                .ifPresent(d -> parts.add(words.say("plain.family.lastasked", words.date(LocalDate.ofEpochDay(d)))));
        trace.dueDay().ifPresent(d -> parts.add(words.say("plain.family.dueon", words.date(LocalDate.ofEpochDay(d)))));
        if (!trace.chances().isEmpty()) {
            parts.add(words.say("plain.family.chances", trace.chances().toArray()));
        }
        return Spoken.sentence(words, asked) + ": " + String.join("; ", parts) + ".";
    }

    private static String states(Words words, FamilyReport report, Steering steering) {
        Grid.Cell cell = report.cell();
        return (cell.focused() ? ", " + words.say("grid.focused") : "")
                + (cell.held() ? ", " + words.say("grid.held") : "")
                + tables(words, "grid.opened", report.family(), Set.copyOf(steering.opened()))
                + tables(words, "grid.closed", report.family(), steering.closed())
                + (cell.knownByTrial() ? ", " + words.say("grid.trial") : "")
                + (cell.fading() ? ", " + words.say("plain.grid.fading") : "");
    }

    private static String tables(Words words, String key, Family family, Set<Integer> tables) {
        return Stream.of(family.low(), family.high())
                .distinct()
                .filter(tables::contains)
                .map(table -> ", " + words.say(key, table))
                .collect(Collectors.joining());
    }

    private static List<String> row(Words words, FamilyReport.OfTrace trace, String stones) {
        return List.of(
                stones + " "
                        + trace.trace().questions().stream().map(words::asked).collect(Collectors.joining(", ")),
                words.level(trace.level()),
                trace.record().asked() == 0
                        ? "-"
                        : words.say(
                                "drills.of",
                                trace.record().right(),
                                trace.record().asked()),
                trace.median().map(words::seconds).orElse("-"),
                day(words, trace.lastDay()),
                day(words, trace.dueDay()),
                trace.chances().isEmpty()
                        ? "-"
                        : trace.chances().stream().map(String::valueOf).collect(Collectors.joining("/")) + " %");
    }

    private static String day(Words words, Optional<Long> day) {
        return day.map(d -> words.shortDate(LocalDate.ofEpochDay(d))).orElse("-");
    }
}
