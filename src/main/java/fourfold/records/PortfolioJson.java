// SPDX-License-Identifier: Apache-2.0
package fourfold.records;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.json.JsonWriteFeature;
import fourfold.insight.DrillRates;
import fourfold.insight.PageContent;
import fourfold.insight.Portfolio;
import fourfold.progress.Mastery;
import java.io.IOException;
import java.io.StringWriter;
import java.io.Writer;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/** A report as JSON (RFC 8259): the same numbers as on its printed page. Days are ISO 8601 dates. All of it is ASCII. */
public final class PortfolioJson {
    private static final JsonFactory JSON =
            JsonFactory.builder().enable(JsonWriteFeature.ESCAPE_NON_ASCII).build();

    private PortfolioJson() {}

    /** The whole report. */
    public static String portfolio(PageContent.Report report) throws IOException {
        Portfolio portfolio = report.portfolio();
        Writer writer = new StringWriter();
        try (JsonGenerator json = JSON.createGenerator(writer).useDefaultPrettyPrinter()) {
            json.writeStartObject();
            json.writeStringField("child", portfolio.name());
            json.writeStringField("made", report.day().toString());
            json.writeStringField("from", portfolio.period().first().toString());
            json.writeStringField("to", portfolio.period().last().toString());
            practice(json, portfolio.practice());
            families(json, portfolio.families());
            tables(json, portfolio.tables());
            rates(json, portfolio.rates());
            orientation(json);
            sample(json, portfolio.sample());
            forecast(json, report.forecast());
            json.writeEndObject();
        }
        return writer + "\n";
    }

    private static void practice(JsonGenerator json, Portfolio.Practice practice) throws IOException {
        json.writeNumberField("days", practice.days());
        json.writeNumberField("minutes", practice.spent().plusSeconds(30).toMinutes());
        count(json, "screen", practice.screen());
        count(json, "paper", practice.paper());
        count(json, "aloud", practice.aloud());
        json.writeArrayFieldStart("ticked");
        for (LocalDate day : practice.ticked()) {
            json.writeString(day.toString());
        }
        json.writeEndArray();
    }

    private static void count(JsonGenerator json, String field, Portfolio.Count count) throws IOException {
        json.writeObjectFieldStart(field);
        json.writeNumberField("drills", count.drills());
        json.writeNumberField("asked", count.asked());
        json.writeNumberField("right", count.right());
        json.writeEndObject();
    }

    private static void families(JsonGenerator json, List<Portfolio.OfFamily> families) throws IOException {
        json.writeArrayFieldStart("families");
        for (Portfolio.OfFamily one : families) {
            json.writeStartObject();
            json.writeStringField("family", one.family().toString());
            json.writeStringField("then", one.then().word());
            json.writeStringField("now", one.now().word());
            reached(json, one.reached());
            json.writeEndObject();
        }
        json.writeEndArray();
    }

    private static void reached(JsonGenerator json, List<Portfolio.Reached> reached) throws IOException {
        json.writeObjectFieldStart("reached");
        for (Portfolio.Reached one : reached) {
            json.writeStringField(one.level().word(), one.day().toString());
        }
        json.writeEndObject();
    }

    private static void tables(JsonGenerator json, List<Portfolio.OfTable> tables) throws IOException {
        json.writeArrayFieldStart("tables");
        for (Portfolio.OfTable table : tables) {
            json.writeStartObject();
            json.writeNumberField("table", table.table());
            for (int i = 0; i < table.levels().size(); i++) {
                json.writeNumberField(
                        Mastery.values()[i + 1].word(), table.levels().get(i));
            }
            reached(json, table.reached());
            json.writeEndObject();
        }
        json.writeEndArray();
    }

    private static void rates(JsonGenerator json, List<Portfolio.MonthRates> months) throws IOException {
        json.writeArrayFieldStart("rates");
        for (Portfolio.MonthRates month : months) {
            json.writeStartObject();
            json.writeStringField("month", month.month().toString());
            rate(json, "products", month.products());
            rate(json, "quotients", month.quotients());
            json.writeEndObject();
        }
        json.writeEndArray();
    }

    private static void rate(JsonGenerator json, String field, Optional<Double> rate) throws IOException {
        if (rate.isPresent()) {
            json.writeNumberField(field, Math.round(10 * rate.get()) / 10.0);
        }
    }

    /** The published ranges that stand beside the rates: digits correct a minute, written, by school years. */
    private static void orientation(JsonGenerator json) throws IOException {
        json.writeArrayFieldStart("orientation");
        for (DrillRates.Range range : DrillRates.WRITTEN) {
            json.writeStartObject();
            json.writeNumberField("firstYear", range.grades().first());
            json.writeNumberField("lastYear", range.grades().last());
            json.writeNumberField("low", range.low());
            json.writeNumberField("high", range.high());
            json.writeEndObject();
        }
        json.writeEndArray();
    }

    /** The look ahead; a day that lies beyond the last one looked at is left out. */
    private static void forecast(JsonGenerator json, Optional<PageContent.Forecast> told) throws IOException {
        if (told.isEmpty()) {
            return;
        }
        PageContent.Forecast forecast = told.get();
        json.writeObjectFieldStart("forecast");
        json.writeNumberField("families", Portfolio.all());
        json.writeStringField("made", forecast.made().toString());
        day(json, "early", forecast.early());
        day(json, "middle", forecast.middle());
        day(json, "late", forecast.late());
        json.writeStringField("until", forecast.until().toString());
        json.writeEndObject();
    }

    private static void day(JsonGenerator json, String field, Optional<LocalDate> day) throws IOException {
        if (day.isPresent()) {
            json.writeStringField(field, day.get().toString());
        }
    }

    private static void sample(JsonGenerator json, List<Portfolio.Sampled> sample) throws IOException {
        json.writeArrayFieldStart("sample");
        for (Portfolio.Sampled one : sample) {
            json.writeStartObject();
            json.writeStringField("question", one.prompt().toString());
            json.writeStringField("typed", one.typed());
            json.writeBooleanField("right", one.isRight());
            if (one.whole().isPresent()) {
                json.writeNumberField("milliseconds", one.whole().get().toMillis());
            }
            json.writeStringField("day", one.day().toString());
            json.writeEndObject();
        }
        json.writeEndArray();
    }
}
