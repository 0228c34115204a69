package fourfold.plain;

import fourfold.facts.Families;
import fourfold.insight.TableCount;
import fourfold.insight.Weeks;
import fourfold.outlook.Projection;
import fourfold.words.SafeText;
import fourfold.words.Words;
import java.io.IOException;
import java.time.LocalDate;
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
     * @param projection when all may be fluent; empty if there are too few answers to guess from
     * @param unicode false to use no signs beyond ASCII
     */
    public static void write(
            Appendable out,
            Words words,
            String name,
            Weeks weeks,
            List<String> acts,
            List<TableCount> tables,
            Optional<Projection> projection,
            boolean unicode)
            throws IOException {
        out.append(words.say("plain.plan.title", SafeText.safe(name))).append("\n\n");
        out.append(words.counted("plain.plan.days", weeks.planned(), weeks.planned(), words.number(weeks.usualDays())))
                .append('\n');
        for (String act : acts) {
            out.append(Signs.printable(act, unicode)).append('\n');
        }
        out.append(projection
                        .map(p -> words.say(
                                "plain.plan.projected",
                                Families.COUNT,
                                day(words, p.middle()),
                                day(words, p.early()),
                                day(words, p.late())))
                        .orElseGet(() -> words.say("plain.plan.few", Families.COUNT)))
                .append("\n\n");
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

    private static String day(Words words, Optional<LocalDate> day) {
        return day.map(words::shortDate).orElseGet(() -> words.say("plan.later"));
    }
}
