// SPDX-License-Identifier: Apache-2.0
package fourfold.plain;

import fourfold.insight.TableCount;
import fourfold.insight.Today;
import fourfold.insight.YearView;
import fourfold.words.SafeText;
import fourfold.words.TodayWords;
import fourfold.words.Words;
import fourfold.words.YearWords;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The school year in sentences: where we are, today, each week, each table. */
public final class YearText {
    private YearText() {}

    /** All of it, a sentence a line. */
    public static String sentences(Words words, String name, YearView year, Today today, boolean unicode) {
        List<String> told = new ArrayList<>();
        told.add(SafeText.safe(name) + ". " + YearWords.where(words, year));
        told.add(TodayWords.forParent(words, today));
        year.weeks().forEach(week -> told.add(week(words, week)));
        told.add(words.say("plain.year.end", words.date(year.end())));
        year.tables().forEach(table -> told.add(table(words, table)));
        return Spoken.lines(told, unicode);
    }

    private static String week(Words words, YearView.Week week) {
        String monday = words.date(week.monday());
        List<String> parts = new ArrayList<>();
        if (week.number().isPresent()) {
            parts.add(words.say("plain.year.planned", week.planned()));
        }
        add(words, parts, "plain.year.done", week.done());
        add(words, parts, "plain.year.away", week.count(YearView.Day.AWAY));
        add(words, parts, "plain.year.missed", week.missed());
        add(words, parts, "plain.year.off", week.count(YearView.Day.OFF));
        add(words, parts, "plain.year.ahead", week.count(YearView.Day.AHEAD));
        String head = week.number()
                .map(n -> words.say("plain.year.week", monday, n))
                .orElseGet(() -> words.say("plain.year.weekoff", monday));
        return head + " " + String.join(", ", parts) + "."
                + (week.note().isEmpty() ? "" : " " + SafeText.safe(week.note()));
    }

    private static void add(Words words, List<String> parts, String key, int count) {
        if (count > 0) {
            parts.add(words.say(key, count));
        }
    }

    private static String table(Words words, YearView.OfTable table) {
        TableCount count = table.count();
        return words.say(
                "plain.year.table",
                count.table(),
                opens(words, table.multiply()),
                opens(words, table.divide()),
                count.families(),
                count.met(),
                count.accurate(),
                count.fluent());
    }

    private static String opens(Words words, Optional<LocalDate> day) {
        return day.map(d -> words.say("plain.year.since", words.date(d))).orElseGet(() -> words.say("year.byprogress"));
    }
}
