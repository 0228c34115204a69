// SPDX-License-Identifier: Apache-2.0
package fourfold.records;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.json.JsonWriteFeature;
import fourfold.facts.Families;
import fourfold.facts.Family;
import fourfold.insight.DrillRates;
import fourfold.insight.TableCount;
import fourfold.insight.Trend;
import fourfold.insight.Weeks;
import fourfold.outlook.Change;
import fourfold.outlook.EarlierForecast;
import fourfold.outlook.Projection;
import fourfold.outlook.Within;
import fourfold.outlook.YearAhead;
import fourfold.progress.Rates;
import java.io.IOException;
import java.io.StringWriter;
import java.io.Writer;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** The plan and the rates as JSON (RFC 8259). Days are ISO 8601 dates. All of it is ASCII. */
public final class PlanJson {
    private static final JsonFactory JSON =
            JsonFactory.builder().enable(JsonWriteFeature.ESCAPE_NON_ASCII).build();

    private PlanJson() {}

    /** The plan: {@code weeks}, {@code tables}, and {@code ahead}, the look ahead, unless there are too few answers. */
    public static String plan(String name, Weeks weeks, List<TableCount> tables, Optional<YearAhead> ahead)
            throws IOException {
        Writer writer = new StringWriter();
        try (JsonGenerator json = JSON.createGenerator(writer).useDefaultPrettyPrinter()) {
            json.writeStartObject();
            json.writeStringField("child", name);
            json.writeNumberField("planned_days_a_week", weeks.planned());
            json.writeNumberField("usual_days_a_week", tenths(weeks.usualDays()));
            if (ahead.flatMap(YearAhead::projection).isPresent()) {
                ahead(json, ahead.get(), ahead.get().projection().get());
            }
            json.writeArrayFieldStart("tables");
            for (TableCount table : tables) {
                json.writeStartObject();
                json.writeNumberField("table", table.table());
                json.writeNumberField("families", table.families());
                json.writeNumberField("met", table.met());
                json.writeNumberField("accurate", table.accurate());
                json.writeNumberField("fluent", table.fluent());
                json.writeEndObject();
            }
            json.writeEndArray();
            json.writeArrayFieldStart("weeks");
            for (Weeks.Week week : weeks.weeks()) {
                json.writeStartObject();
                json.writeStringField(
                        "monday", LocalDate.ofEpochDay(week.monday()).toString());
                json.writeArrayFieldStart("days");
                for (boolean done : week.days()) {
                    json.writeBoolean(done);
                }
                json.writeEndArray();
                json.writeEndObject();
            }
            json.writeEndArray();
            json.writeEndObject();
        }
        return writer + "\n";
    }

    private static void ahead(JsonGenerator json, YearAhead ahead, Projection projection) throws IOException {
        json.writeObjectFieldStart("ahead");
        json.writeStringField("outcome", projection.outcome().name().toLowerCase(Locale.ROOT));
        json.writeStringField("until", projection.until().toString());
        json.writeNumberField("days_a_week", tenths(projection.daysAWeek()));
        json.writeNumberField("minutes", ahead.minutes());
        range(json, projection);
        json.writeArrayFieldStart("within_reach");
        for (Within within : ahead.within()) {
            json.writeStartObject();
            if (within.change() instanceof Change.MoreDays more) {
                json.writeNumberField("days_a_week", more.aWeek());
            } else if (within.change() instanceof Change.FocusOn focus) {
                json.writeNumberField("focus_on_table", focus.table());
            } else if (within.change() instanceof Change.FewerTables fewer) {
                json.writeArrayFieldStart("left_out");
                for (Family family : fewer.families()) {
                    json.writeString(family.toString());
                }
                json.writeEndArray();
                json.writeNumberField(
                        "families", Families.COUNT - fewer.families().size());
            }
            range(json, within.projection());
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeArrayFieldStart("earlier");
        for (EarlierForecast earlier : ahead.earlier()) {
            json.writeStartObject();
            json.writeStringField("made", earlier.made().toString());
            json.writeNumberField("low", earlier.low());
            json.writeNumberField("high", earlier.high());
            json.writeNumberField("came", earlier.came());
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeEndObject();
    }

    private static void range(JsonGenerator json, Projection projection) throws IOException {
        if (projection.isClosed()) {
            json.writeStringField("p10", projection.early().orElseThrow().toString());
            json.writeStringField("p50", projection.middle().orElseThrow().toString());
            json.writeStringField("p90", projection.late().orElseThrow().toString());
        }
    }

    /** The rates: {@code drills}, oldest first, and the trends in digits a minute for a week. */
    public static String rates(String name, List<DrillRates.OfDrill> drills) throws IOException {
        Writer writer = new StringWriter();
        try (JsonGenerator json = JSON.createGenerator(writer).useDefaultPrettyPrinter()) {
            json.writeStartObject();
            json.writeStringField("child", name);
            json.writeArrayFieldStart("drills");
            for (DrillRates.OfDrill drill : drills) {
                json.writeStartObject();
                json.writeStringField(
                        "day", LocalDate.ofEpochDay(drill.localDay()).toString());
                rate(json, "products", drill.products());
                rate(json, "quotients", drill.quotients());
                json.writeEndObject();
            }
            json.writeEndArray();
            trend(json, "products_trend", DrillRates.digitsTrend(drills, fourfold.facts.Operation.MULTIPLY));
            trend(json, "quotients_trend", DrillRates.digitsTrend(drills, fourfold.facts.Operation.DIVIDE));
            json.writeEndObject();
        }
        return writer + "\n";
    }

    private static void rate(JsonGenerator json, String field, Optional<Rates> rates) throws IOException {
        if (rates.isPresent()) {
            json.writeObjectFieldStart(field);
            json.writeNumberField("digits_a_minute", tenths(rates.get().digitsPerMinute()));
            json.writeNumberField("facts_a_minute", tenths(rates.get().factsPerMinute()));
            json.writeNumberField("answers", rates.get().answers());
            json.writeEndObject();
        }
    }

    private static void trend(JsonGenerator json, String field, Optional<Trend> trend) throws IOException {
        if (trend.isPresent()) {
            json.writeObjectFieldStart(field);
            json.writeNumberField("a_week", tenths(trend.get().slope()));
            json.writeNumberField("low", tenths(trend.get().interval().low()));
            json.writeNumberField("high", tenths(trend.get().interval().high()));
            json.writeEndObject();
        }
    }

    private static double tenths(double number) {
        return Math.round(10 * number) / 10.0;
    }
}
