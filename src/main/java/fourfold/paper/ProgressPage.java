package fourfold.paper;

import fourfold.facts.Families;
import fourfold.facts.Family;
import fourfold.facts.Operation;
import fourfold.insight.DrillRates;
import fourfold.insight.LifetimeProgress;
import fourfold.insight.PageContent;
import fourfold.insight.TableCount;
import fourfold.insight.Weeks;
import fourfold.progress.Mastery;
import fourfold.progress.Rates;
import fourfold.words.Stones;
import fourfold.words.Words;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Where the child stands, on one page: the stairs, the rates, the tables, the weeks and the last look ahead. */
final class ProgressPage {
    private static final int WEEKS = 12;

    private final HtmlPage page;
    private final Words words;

    private ProgressPage(HtmlPage page, Words words) {
        this.page = page;
        this.words = words;
    }

    static String html(PageContent.Report report, Paper paper, Words words) {
        HtmlPage page = new HtmlPage(words, paper, words.say("paper.progress.title", report.name()));
        new ProgressPage(page, words).body(report);
        return page.closed();
    }

    private void body(PageContent.Report report) {
        page.add("<section>\n").element("h1", report.name() + ", " + words.shortDate(report.day()));
        page.add("\n");
        stairs(report.stones());
        rates(report.drills());
        tables(report.tables());
        weeks(report.weeks());
        report.forecast().ifPresent(f -> page.element("p", forecast(f)).add("\n"));
        page.add("<p class=\"foot\">").add(HtmlPage.escaped(words.say("paper.progress.foot")));
        page.add("</p>\n</section>\n");
    }

    private void picture(String viewBox, String label) {
        page.add("<svg viewBox=\"" + viewBox + "\" role=\"img\" aria-label=\"")
                .add(HtmlPage.escaped(label))
                .add("\">\n");
    }

    private void stairs(LifetimeProgress stones) {
        picture("0 0 520 265", words.say("paper.progress.stairs"));
        for (Family family : Families.all()) {
            int x = 24 + (family.low() - 1) * 36;
            int y = (family.high() - 1) * 26;
            page.add(String.format(
                    Locale.ROOT,
                    "<text x=\"%d\" y=\"%d\" font-size=\"11\" text-anchor=\"end\">%d</text>\n",
                    x + 17,
                    y + 16,
                    family.product()));
            square(x + 19, y + 4, stones.highest(family));
        }
        for (int n = 1; n <= Families.LARGEST_FACTOR; n++) {
            page.add(String.format(
                    Locale.ROOT, "<text x=\"4\" y=\"%d\" font-size=\"11\">%d</text>\n", (n - 1) * 26 + 16, n));
        }
        for (Mastery level : Mastery.values()) {
            int y = 4 + level.ordinal() * 24;
            square(392, y, level);
            page.add(String.format(
                    Locale.ROOT,
                    "<text x=\"414\" y=\"%d\" font-size=\"12\">%s: %d</text>\n",
                    y + 12,
                    HtmlPage.escaped(words.level(level)),
                    stones.count(level)));
        }
        page.add("</svg>\n").element("p", words.say("grid.meaning")).add("\n");
    }

    /** Four places for stones, laid from the lower left as on the screen. */
    private void square(int x, int y, Mastery level) {
        for (boolean upper : new boolean[] {false, true}) {
            for (boolean right : new boolean[] {false, true}) {
                page.add(String.format(
                        Locale.ROOT,
                        "<rect x=\"%d\" y=\"%d\" width=\"7\" height=\"7\" fill=\"%s\" stroke=\"#000\""
                                + " stroke-width=\"0.5\"/>\n",
                        x + (right ? 8 : 0),
                        y + (upper ? 0 : 8),
                        Stones.isLaid(level.ordinal(), upper, right) ? "#000" : "#fff"));
            }
        }
    }

    /** Digits correct a minute by drill: products as full dots, quotients as rings. */
    private void rates(List<DrillRates.OfDrill> drills) {
        double most = drills.stream()
                .flatMap(d -> Stream.of(d.products(), d.quotients()))
                .flatMap(Optional::stream)
                .mapToDouble(Rates::digitsPerMinute)
                .max()
                .orElse(0);
        if (most == 0) {
            return;
        }
        page.element("p", words.say("paper.progress.rates")).add("\n");
        picture("0 0 520 110", words.say("more.rates"));
        page.add("<line x1=\"30\" y1=\"100\" x2=\"515\" y2=\"100\" stroke=\"#000\"/>\n");
        page.add(String.format(
                Locale.ROOT,
                "<text x=\"0\" y=\"14\" font-size=\"10\">%.0f</text><text x=\"0\" y=\"104\" font-size=\"10\">0</text>\n",
                most));
        long first = drills.get(0).localDay();
        double days = Math.max(1, drills.get(drills.size() - 1).localDay() - first);
        for (DrillRates.OfDrill drill : drills) {
            double x = 36 + 474 * (drill.localDay() - first) / days;
            for (Operation operation : Operation.values()) {
                drill.of(operation)
                        .ifPresent(r -> page.add(String.format(
                                Locale.ROOT,
                                "<circle cx=\"%.1f\" cy=\"%.1f\" r=\"2.4\" stroke=\"#000\" fill=\"%s\"/>\n",
                                x,
                                100 - 90 * r.digitsPerMinute() / most,
                                operation == Operation.MULTIPLY ? "#000" : "#fff")));
            }
        }
        page.add("</svg>\n");
    }

    private void tables(List<TableCount> tables) {
        page.add("<table class=\"small\">\n<tr>");
        for (String key :
                List.of("plan.head.table", "grid.family", "plan.head.met", "plan.head.accurate", "plan.head.fluent")) {
            page.element("th", words.say(key));
        }
        page.add("</tr>\n");
        for (TableCount table : tables) {
            page.add("<tr>");
            for (int number :
                    new int[] {table.table(), table.families(), table.met(), table.accurate(), table.fluent()}) {
                page.element("td", Integer.toString(number));
            }
            page.add("</tr>\n");
        }
        page.add("</table>\n<p></p>\n");
    }

    private void weeks(Weeks weeks) {
        String last = weeks.newest(WEEKS).stream()
                .map(week -> words.shortDate(LocalDate.ofEpochDay(week.monday())) + ": " + week.done())
                .collect(Collectors.joining("; "));
        page.element("p", words.say("paper.progress.weeks", last)).add("\n");
    }

    private String forecast(PageContent.Forecast forecast) {
        return forecast.late().isEmpty()
                ? words.say(
                        "paper.progress.forecast.open",
                        Families.COUNT,
                        words.shortDate(forecast.made()),
                        words.shortDate(forecast.until()))
                : words.say(
                        "paper.progress.forecast",
                        Families.COUNT,
                        words.shortDate(forecast.made()),
                        words.shortDate(forecast.middle().orElseThrow()),
                        words.shortDate(forecast.early().orElseThrow()),
                        words.shortDate(forecast.late().orElseThrow()));
    }
}
