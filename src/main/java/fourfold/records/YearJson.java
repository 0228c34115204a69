// SPDX-License-Identifier: Apache-2.0
package fourfold.records;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.json.JsonWriteFeature;
import fourfold.insight.Today;
import fourfold.insight.YearView;
import fourfold.log.AwayPractice;
import java.io.IOException;
import java.io.StringWriter;
import java.io.Writer;
import java.time.LocalDate;
import java.util.Locale;
import java.util.Optional;

/** The school year and today as JSON (RFC 8259). Days are ISO 8601 dates. All of it is ASCII. */
public final class YearJson {
    private static final JsonFactory JSON =
            JsonFactory.builder().enable(JsonWriteFeature.ESCAPE_NON_ASCII).build();

    private YearJson() {}

    /** The year: {@code weeks} and {@code tables}, and where the child is in it. */
    public static String year(String name, YearView year) throws IOException {
        Writer writer = new StringWriter();
        try (JsonGenerator json = JSON.createGenerator(writer).useDefaultPrettyPrinter()) {
            json.writeStartObject();
            json.writeStringField("child", name);
            json.writeStringField("today", year.today().toString());
            json.writeNumberField("school_weeks", year.schoolWeeks());
            json.writeNumberField("done", year.done());
            json.writeNumberField("missed", year.missed());
            json.writeNumberField("fluent", year.fluent());
            json.writeStringField("end", year.end().toString());
            json.writeArrayFieldStart("weeks");
            for (YearView.Week week : year.weeks()) {
                week(json, week);
            }
            json.writeEndArray();
            json.writeArrayFieldStart("tables");
            for (YearView.OfTable table : year.tables()) {
                json.writeStartObject();
                json.writeNumberField("table", table.count().table());
                day(json, "multiply_from", table.multiply());
                day(json, "divide_from", table.divide());
                json.writeNumberField("families", table.count().families());
                json.writeNumberField("met", table.count().met());
                json.writeNumberField("accurate", table.count().accurate());
                json.writeNumberField("fluent", table.count().fluent());
                json.writeEndObject();
            }
            json.writeEndArray();
            json.writeEndObject();
        }
        return writer + "\n";
    }

    private static void week(JsonGenerator json, YearView.Week week) throws IOException {
        json.writeStartObject();
        json.writeStringField("monday", week.monday().toString());
        if (week.number().isPresent()) {
            json.writeNumberField("number", week.number().get());
        }
        json.writeNumberField("planned", week.planned());
        json.writeNumberField("done", week.done());
        json.writeNumberField("missed", week.missed());
        if (!week.note().isEmpty()) {
            json.writeStringField("note", week.note());
        }
        json.writeArrayFieldStart("days");
        for (YearView.Day day : week.days()) {
            json.writeString(day.name().toLowerCase(Locale.ROOT));
        }
        json.writeEndArray();
        json.writeEndObject();
    }

    private static void day(JsonGenerator json, String field, Optional<LocalDate> day) throws IOException {
        if (day.isPresent()) {
            json.writeStringField(field, day.get().toString());
        }
    }

    /** Today: what is planned and what was done. */
    public static String today(String name, LocalDate day, Today today) throws IOException {
        Writer writer = new StringWriter();
        try (JsonGenerator json = JSON.createGenerator(writer).useDefaultPrettyPrinter()) {
            json.writeStartObject();
            json.writeStringField("child", name);
            json.writeStringField("today", day.toString());
            json.writeStringField("plan", today.plan().name().toLowerCase(Locale.ROOT));
            if (today.away().isPresent()) {
                json.writeStringField("away", today.away().get().key());
            }
            json.writeBooleanField("drilled", today.drilled());
            json.writeArrayFieldStart("practised_away");
            for (AwayPractice kind : today.ticked().stream().sorted().toList()) {
                json.writeString(kind.key());
            }
            json.writeEndArray();
            json.writeEndObject();
        }
        return writer + "\n";
    }
}
