// SPDX-License-Identifier: Apache-2.0
package fourfold.words;

import fourfold.facts.Families;
import fourfold.facts.Operation;
import fourfold.insight.YearView;
import java.time.LocalDate;
import java.util.Optional;

/** Where a child is in the school year, in words. */
public final class YearWords {
    private YearWords() {}

    /** Where we are: the week, the days done and missed, what is fluent, and what comes next. */
    public static String where(Words words, YearView year) {
        Optional<YearView.Week> week = year.thisWeek();
        String begin = week.isEmpty()
                ? words.say("year.where.before")
                : week.get()
                        .number()
                        .map(n -> words.say("year.where.week", n, year.schoolWeeks()))
                        .orElseGet(() -> words.say("year.where.off"));
        String where = words.say("year.where", begin, year.done(), year.missed(), year.fluent(), Families.COUNT);
        return year.next()
                .map(next -> where + " " + words.say("year.next", next.getValue(), words.date(next.getKey())))
                .orElse(where);
    }

    /** A table's dates and how many of its families are fluent, in one short line. */
    public static String table(Words words, YearView.OfTable table) {
        int number = table.count().table();
        int fluent = table.count().fluent();
        int families = table.count().families();
        if (table.multiply().isEmpty() && table.divide().isEmpty()) {
            return words.say("year.table.progress", number, fluent, families);
        }
        return number + ": " + words.sign(Operation.MULTIPLY) + " " + day(words, table.multiply()) + " "
                + words.sign(Operation.DIVIDE) + " " + day(words, table.divide()) + " " + fluent + "/" + families;
    }

    private static String day(Words words, Optional<LocalDate> day) {
        return day.map(words::dayOfYear).orElse("–");
    }
}
