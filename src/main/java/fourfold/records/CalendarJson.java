// SPDX-License-Identifier: Apache-2.0
package fourfold.records;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.json.JsonWriteFeature;
import fourfold.facts.Operation;
import fourfold.log.AwayPractice;
import fourfold.progress.Calendar;
import fourfold.progress.CalendarEntries;
import fourfold.progress.DateSpan;
import fourfold.progress.Steering;
import fourfold.progress.TableLessons;
import java.io.IOException;
import java.io.StringWriter;
import java.io.Writer;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.Map;
import java.util.Set;

/** The home's calendar of a child as JSON (RFC 8259), days as RFC 3339 writes them. All of it is ASCII. */
public final class CalendarJson {
    private static final JsonFactory JSON =
            JsonFactory.builder().enable(JsonWriteFeature.ESCAPE_NON_ASCII).build();

    private CalendarJson() {}

    /** The calendar on a day. */
    public static String of(String name, Steering steering, LocalDate today) throws IOException {
        Calendar calendar = steering.calendar();
        Writer writer = new StringWriter();
        try (JsonGenerator json = JSON.createGenerator(writer).useDefaultPrettyPrinter()) {
            json.writeStartObject();
            json.writeStringField("child", name);
            day(json, "start", calendar.start().orElse(null));
            json.writeStringField("today", today.toString());
            json.writeObjectField("week", calendar.week(today).orElse(null));
            json.writeNumberField("days_a_week", steering.settings().days());
            json.writeArrayFieldStart("days");
            for (DayOfWeek day : calendar.days()) {
                json.writeString(CalendarEntries.name(day));
            }
            json.writeEndArray();
            json.writeArrayFieldStart("off");
            for (DateSpan span : calendar.off()) {
                json.writeStartObject();
                day(json, "first", span.first());
                day(json, "last", span.last());
                json.writeEndObject();
            }
            json.writeEndArray();
            json.writeArrayFieldStart("tables");
            for (int table : steering.order()) {
                json.writeStartObject();
                json.writeNumberField("table", table);
                lesson(json, calendar, table, Operation.MULTIPLY, today);
                lesson(json, calendar, table, Operation.DIVIDE, today);
                json.writeEndObject();
            }
            json.writeEndArray();
            notes(json, "weeks", calendar.weekLabels());
            notes(json, "notes", calendar.dayLabels());
            away(json, calendar.away());
            json.writeBooleanField("early", calendar.early());
            json.writeEndObject();
        }
        return writer + "\n";
    }

    private static void lesson(JsonGenerator json, Calendar calendar, int table, Operation operation, LocalDate today)
            throws IOException {
        int week = calendar.lessons(table).week(operation);
        json.writeObjectFieldStart(operation.word());
        json.writeStringField(
                "by",
                calendar.taught().containsKey(new Calendar.Lesson(table, operation))
                        ? "taught"
                        : week == TableLessons.WHEN_TAUGHT
                                ? "teaching"
                                : week == TableLessons.BY_PROGRESS ? "progress" : "week");
        json.writeObjectField("week", week > 0 ? week : null);
        day(json, "opens", calendar.opens(table, operation).orElse(null));
        json.writeBooleanField(
                "open",
                calendar.isByProgress(table, operation)
                        || calendar.opens(table, operation)
                                .filter(d -> !d.isAfter(today))
                                .isPresent());
        json.writeEndObject();
    }

    private static void notes(JsonGenerator json, String field, Map<LocalDate, String> notes) throws IOException {
        json.writeArrayFieldStart(field);
        for (Map.Entry<LocalDate, String> note : notes.entrySet()) {
            json.writeStartObject();
            day(json, "day", note.getKey());
            json.writeStringField("note", note.getValue());
            json.writeEndObject();
        }
        json.writeEndArray();
    }

    private static void away(JsonGenerator json, Map<LocalDate, Set<AwayPractice>> away) throws IOException {
        json.writeArrayFieldStart("away");
        for (Map.Entry<LocalDate, Set<AwayPractice>> one : away.entrySet()) {
            json.writeStartObject();
            day(json, "day", one.getKey());
            json.writeArrayFieldStart("practice");
            for (AwayPractice practice : one.getValue().stream().sorted().toList()) {
                json.writeString(practice.key());
            }
            json.writeEndArray();
            json.writeEndObject();
        }
        json.writeEndArray();
    }

    private static void day(JsonGenerator json, String field, @org.jspecify.annotations.Nullable LocalDate day)
            throws IOException {
        if (day == null) {
            json.writeNullField(field);
        } else {
            json.writeStringField(field, day.toString());
        }
    }
}
