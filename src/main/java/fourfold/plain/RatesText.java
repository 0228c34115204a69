// SPDX-License-Identifier: Apache-2.0
package fourfold.plain;

import fourfold.facts.Operation;
import fourfold.insight.DrillRates;
import fourfold.progress.Rates;
import fourfold.words.SafeText;
import fourfold.words.Words;
import java.io.IOException;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/** The rates as plain text. */
public final class RatesText {
    private RatesText() {}

    /**
     * Writes a line for each drill, oldest first, then the trends and published ranges.
     *
     * @param out where to
     * @param words the language
     * @param name the child's nickname
     * @param unicode false to use no signs beyond ASCII
     */
    public static void write(Appendable out, Words words, String name, List<DrillRates.OfDrill> drills, boolean unicode)
            throws IOException {
        out.append(words.say("plain.rates.title", SafeText.safe(name))).append("\n\n");
        TextTable table = new TextTable(false, 11, 17, 9);
        table.row(List.of(words.say("rates.head"), words.say("rates.products"), words.say("rates.quotients")));
        for (DrillRates.OfDrill drill : drills) {
            table.row(List.of(
                    words.shortDate(LocalDate.ofEpochDay(drill.localDay())),
                    rates(words, drill.products(), unicode),
                    rates(words, drill.quotients(), unicode)));
        }
        out.append(table.lines()).append('\n').append(ends(words, drills));
    }

    /** A sentence for each drill, oldest first, then as {@link #write}; each on a line of its own. */
    public static String sentences(Words words, String name, List<DrillRates.OfDrill> drills) {
        StringBuilder out = new StringBuilder(words.say("plain.rates.title", SafeText.safe(name))).append('\n');
        for (DrillRates.OfDrill drill : drills) {
            String day = words.date(LocalDate.ofEpochDay(drill.localDay()));
            for (Operation operation : Operation.values()) {
                Optional<Rates> rates = drill.of(operation);
                if (rates.isPresent()) {
                    out.append(words.say(
                                    "plain.rates.drill",
                                    day,
                                    name(words, operation),
                                    words.number(rates.get().digitsPerMinute()),
                                    words.number(rates.get().factsPerMinute()),
                                    rates.get().answers()))
                            .append('\n');
                }
            }
        }
        return out.append(ends(words, drills)).toString();
    }

    private static String name(Words words, Operation operation) {
        return words.say(operation == Operation.MULTIPLY ? "rates.products" : "rates.quotients");
    }

    private static String ends(Words words, List<DrillRates.OfDrill> drills) {
        StringBuilder out = new StringBuilder();
        for (Operation operation : Operation.values()) {
            String which = Spoken.sentence(words, name(words, operation));
            out.append(DrillRates.digitsTrend(drills, operation)
                            .map(t -> words.say(
                                    "plain.rates.trend",
                                    which,
                                    words.change(t.slope()),
                                    words.change(t.interval().low()),
                                    words.change(t.interval().high())))
                            .orElseGet(() -> words.say("plain.rates.notrend", which)))
                    .append('\n');
        }
        for (DrillRates.Range range : DrillRates.WRITTEN) {
            out.append(words.say(
                            "plain.rates.range",
                            range.grades().first(),
                            range.grades().last(),
                            range.low(),
                            range.high()))
                    .append('\n');
        }
        return out.append(words.say("plain.rates.source")).append('\n').toString();
    }

    private static String rates(Words words, Optional<Rates> rates, boolean unicode) {
        return rates.map(words::rates).orElse(unicode ? "    –" : "    -");
    }
}
