package fourfold.records;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.json.JsonWriteFeature;
import fourfold.insight.DrillRates;
import fourfold.insight.TableCount;
import fourfold.insight.Trend;
import fourfold.insight.Weeks;
import fourfold.outlook.Projection;
import fourfold.progress.Rates;
import java.io.IOException;
import java.io.StringWriter;
import java.io.Writer;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/** The plan and the rates as JSON (RFC 8259). Days are ISO 8601 dates. All of it is ASCII. */
public final class PlanJson {
    private static final JsonFactory JSON =
            JsonFactory.builder().enable(JsonWriteFeature.ESCAPE_NON_ASCII).build();

    private PlanJson() {}

    /** The plan: {@code weeks}, {@code tables}, and {@code projection} unless there are too few answers. */
    public static String plan(String name, Weeks weeks, List<TableCount> tables, Optional<Projection> projection)
            throws IOException {
        Writer writer = new StringWriter();
        try (JsonGenerator json = JSON.createGenerator(writer).useDefaultPrettyPrinter()) {
            json.writeStartObject();
            json.writeStringField("child", name);
            json.writeNumberField("planned_days_a_week", weeks.planned());
            json.writeNumberField("usual_days_a_week", tenths(weeks.usualDays()));
            if (projection.isPresent()) {
                json.writeObjectFieldStart("projection");
                day(json, "p10", projection.get().early());
                day(json, "p50", projection.get().middle());
                day(json, "p90", projection.get().late());
                json.writeNumberField("runs", projection.get().runs());
                json.writeEndObject();
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

    private static void day(JsonGenerator json, String field, Optional<LocalDate> day) throws IOException {
        if (day.isPresent()) {
            json.writeStringField(field, day.get().toString());
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
