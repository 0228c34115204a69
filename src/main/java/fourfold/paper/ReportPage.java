// SPDX-License-Identifier: Apache-2.0
package fourfold.paper;

import fourfold.facts.Operation;
import fourfold.insight.PageContent;
import fourfold.insight.Portfolio;
import fourfold.progress.Mastery;
import fourfold.words.Words;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.List;
import java.util.Optional;

/** A period of practice for whoever asks for a report: two sheets; every number is one of the portfolio's. */
final class ReportPage {
    private static final int COLUMNS = 2;

    private final HtmlPage page;
    private final Words words;
    private final PageContent.Report report;
    private final Portfolio portfolio;

    ReportPage(HtmlPage page, Words words, PageContent.Report report) {
        this.page = page;
        this.words = words;
        this.report = report;
        this.portfolio = report.portfolio();
    }

    void draw() {
        opening();
        page.add("<div class=\"beside\"><div>");
        stairs(portfolio.period().first().minusDays(1), Portfolio.OfFamily::then);
        page.add("</div><div>");
        stairs(portfolio.period().last(), Portfolio.OfFamily::now);
        page.add("</div></div>\n");
        practice();
        tables();
        rates();
        page.foot(words.say("paper.report.caution"), "1 / 2");
        opening();
        families();
        sample();
        levels();
        page.foot(words.say("paper.report.caution"), "2 / 2");
    }

    private void opening() {
        page.sheet("report").head(words.say("paper.report.title"), portfolio.name(), words.date(report.day()), 0);
        String first = words.date(portfolio.period().first());
        page.element(
                        "p",
                        words.say(
                                "paper.period",
                                first,
                                words.date(portfolio.period().last())))
                .add("\n");
    }

    private void stairs(LocalDate day, java.util.function.Function<Portfolio.OfFamily, Mastery> level) {
        String label = words.say("paper.report.stairs", words.date(day));
        page.element("h3", label);
        StairsDrawing.draw(page, portfolio, level, label);
    }

    private void practice() {
        Portfolio.Practice practice = portfolio.practice();
        page.element("h3", words.say("paper.report.practice")).add("<ul>");
        page.element(
                "li",
                words.say(
                        "paper.report.days",
                        practice.days(),
                        practice.spent().plusSeconds(30).toMinutes()));
        count("paper.report.screen", practice.screen());
        count("paper.report.paper", practice.paper());
        count("paper.report.aloud", practice.aloud());
        page.element("li", words.say("paper.report.ticked", practice.ticked().size()));
        page.add("</ul>\n");
    }

    private void count(String key, Portfolio.Count count) {
        page.element("li", words.say(key, count.drills(), count.asked(), count.right()));
    }

    private void tables() {
        page.element("h3", words.say("paper.report.tables"));
        head(List.of(
                words.say("plan.head.table"),
                words.level(Mastery.ACQUIRING),
                words.level(Mastery.ACCURATE),
                words.level(Mastery.FLUENT),
                words.level(Mastery.LASTING),
                words.say("paper.report.all.accurate"),
                words.say("paper.report.all.fluent")));
        for (Portfolio.OfTable table : portfolio.tables()) {
            page.add("<tr>").element("td", Integer.toString(table.table()));
            table.levels().forEach(count -> page.element("td", Integer.toString(count)));
            page.element("td", day(table.reached(), Mastery.ACCURATE));
            page.element("td", day(table.reached(), Mastery.FLUENT)).add("</tr>\n");
        }
        page.add("</table>\n").element("p", words.say("paper.report.tables.how"));
        report.forecast().ifPresent(f -> page.element("p", forecast(f)));
    }

    private String forecast(PageContent.Forecast forecast) {
        return words.say(
                "paper.report.forecast",
                Portfolio.all(),
                words.shortDate(forecast.made()),
                later(forecast.middle()),
                later(forecast.early()),
                later(forecast.late()));
    }

    private String later(Optional<LocalDate> day) {
        return day.map(words::shortDate).orElseGet(() -> words.say("plan.later"));
    }

    private void head(List<String> names) {
        head("small", names);
    }

    private void head(String kind, List<String> names) {
        page.add("<table class=\"" + kind + "\">\n<tr>");
        names.forEach(name -> page.element("th", name));
        page.add("</tr>\n");
    }

    private String day(List<Portfolio.Reached> reached, Mastery level) {
        return reached.stream()
                .filter(r -> r.level() == level)
                .findFirst()
                .map(r -> words.shortDate(r.day()))
                .orElse("–");
    }

    private void rates() {
        page.element("h3", words.say("paper.report.rates"));
        if (!portfolio.rates().isEmpty()) {
            page.add("<table class=\"small\">\n");
            page.add("<tr>").element("th", words.say("paper.report.month"));
            portfolio.rates().forEach(r -> page.element("td", month(r.month())));
            page.add("</tr>\n");
            for (Operation operation : Operation.values()) {
                page.add("<tr>")
                        .element("th", words.say(operation == Operation.MULTIPLY ? "grid.products" : "grid.quotients"));
                portfolio.rates().forEach(r -> page.element("td", number(r.of(operation))));
                page.add("</tr>\n");
            }
            page.add("</table>\n");
        }
        page.ranges();
    }

    private String month(YearMonth month) {
        return words.say("date.months").split(" ", -1)[month.getMonthValue() - 1] + " " + month.getYear();
    }

    private String number(Optional<Double> rate) {
        return rate.map(words::number).orElse("–");
    }

    private void levels() {
        page.element("h3", words.say("paper.report.levels")).add("<ul>");
        for (Mastery level : Mastery.values()) {
            page.element("li", words.level(level) + ": " + words.say("paper.level." + level.word()));
        }
        page.add("</ul>\n");
    }

    /** Every family with the days on which it reached each level, side by side in columns. */
    private void families() {
        page.element("h3", words.say("paper.report.families")).add("<div class=\"beside\">");
        List<Portfolio.OfFamily> all = portfolio.families();
        int rows = (all.size() + COLUMNS - 1) / COLUMNS;
        for (int column = 0; column < COLUMNS; column++) {
            page.add("<div>");
            head(
                    "narrow",
                    List.of(
                            words.say("paper.report.family"),
                            words.level(Mastery.ACCURATE),
                            words.level(Mastery.FLUENT),
                            words.level(Mastery.LASTING)));
            for (Portfolio.OfFamily one : all.subList(column * rows, Math.min(all.size(), (column + 1) * rows))) {
                page.add("<tr>").element("td", words.name(one.family()));
                for (Mastery level : List.of(Mastery.ACCURATE, Mastery.FLUENT, Mastery.LASTING)) {
                    page.element("td", day(one.reached(), level));
                }
                page.add("</tr>\n");
            }
            page.add("</table></div>");
        }
        page.add("</div>\n");
    }

    private void sample() {
        page.element("h3", words.say("paper.report.sample"));
        head(List.of(
                words.say("paper.report.question"),
                words.say("paper.report.answer"),
                words.say("paper.report.right"),
                words.say("paper.report.seconds"),
                words.say("paper.report.day")));
        for (Portfolio.Sampled one : portfolio.sample()) {
            page.add("<tr>").element("td", words.asked(one.prompt()));
            page.element("td", one.typed().isEmpty() ? "–" : one.typed());
            page.element("td", words.say(one.isRight() ? "paper.report.yes" : "paper.report.no"));
            page.element("td", one.whole().map(words::seconds).orElse("–"));
            page.element("td", words.shortDate(one.day())).add("</tr>\n");
        }
        page.add("</table>\n").element("p", words.say("paper.report.sample.how"));
    }
}
