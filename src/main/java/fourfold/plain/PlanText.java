// SPDX-License-Identifier: Apache-2.0
package fourfold.plain;

import fourfold.insight.TableCount;
import fourfold.insight.Weeks;
import fourfold.outlook.YearAhead;
import fourfold.words.AheadWords;
import fourfold.words.SafeText;
import fourfold.words.Words;
import java.io.IOException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** The plan as plain text: the days planned, when all may be fluent, the tables and the weeks. */
public final class PlanText {
    private PlanText() {}

    /**
     * Writes the plan.
     *
     * @param out where to
     * @param words the language
     * @param name the child's nickname
     * @param acts what of the parent's acts holds now, a sentence each
     * @param ahead the look ahead, played to its end, if it is to be told
     * @param unicode false to use no signs beyond ASCII
     */
    public static void write(
            Appendable out,
            Words words,
            String name,
            Weeks weeks,
            List<String> acts,
            List<TableCount> tables,
            Optional<YearAhead> ahead,
            boolean unicode)
            throws IOException {
        out.append(words.say("plain.plan.title", SafeText.safe(name))).append("\n\n");
        out.append(words.counted("plain.plan.days", weeks.planned(), weeks.planned(), words.number(weeks.usualDays())))
                .append('\n');
        for (String act : acts) {
            out.append(Signs.printable(act, unicode)).append('\n');
        }
        for (String line : ahead.map(a -> AheadWords.told(words, a)).orElse(List.of())) {
            out.append(Signs.printable(line, unicode)).append('\n');
        }
        out.append('\n');
        out.append(counts(words, tables)).append('\n');
        TextTable calendar = new TextTable(false, 11, 13);
        calendar.row(List.of(words.say("plain.plan.week"), words.say("plain.plan.practised")));
        for (Weeks.Week week : weeks.weeks()) {
            StringBuilder days = new StringBuilder();
            week.days().forEach(done -> days.append(done ? unicode ? "■ " : "# " : unicode ? "· " : ". "));
            calendar.row(List.of(words.shortDate(LocalDate.ofEpochDay(week.monday())), days.toString()));
        }
        out.append(calendar.lines());
    }

    private static String counts(Words words, List<TableCount> tables) {
        TextTable table = new TextTable(true, 5, 9, 4, 9, 7);
        table.row(Stream.of("plan.head.table", "grid.family", "plan.head.met", "plan.head.accurate", "plan.head.fluent")
                .map(words::say)
                .toList());
        for (TableCount t : tables) {
            table.row(Stream.of(t.table(), t.families(), t.met(), t.accurate(), t.fluent())
                    .map(String::valueOf)
                    .toList());
        }
        return table.lines();
    }

    /** The plan in sentences; days and weeks are told by the year. */
    public static String sentences(
            Words words,
            String name,
            Weeks weeks,
            List<String> acts,
            List<TableCount> tables,
            Optional<YearAhead> ahead,
            boolean unicode) {
        List<String> told = new ArrayList<>();
        told.add(words.say("plain.plan.title", SafeText.safe(name)) + ".");
        told.add(words.counted("plain.plan.days", weeks.planned(), weeks.planned(), words.number(weeks.usualDays()))
                + ".");
        told.addAll(acts);
        ahead.ifPresent(a -> told.addAll(AheadWords.told(words, a)));
        tables.forEach(t ->
                told.add(words.say("plain.tablecount", t.table(), t.families(), t.met(), t.accurate(), t.fluent())));
        return Spoken.lines(told, unicode);
    }
}
