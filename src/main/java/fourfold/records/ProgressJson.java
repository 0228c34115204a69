// SPDX-License-Identifier: Apache-2.0
package fourfold.records;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.json.JsonWriteFeature;
import fourfold.facts.Question;
import fourfold.insight.FamilyReport;
import fourfold.insight.Grid;
import fourfold.insight.LifetimeProgress;
import fourfold.insight.TraceRecord;
import java.io.IOException;
import java.io.StringWriter;
import java.io.Writer;
import java.time.LocalDate;
import java.util.Optional;

/** The grid and a family as JSON (RFC 8259). Times are in milliseconds, days as ISO 8601 dates. All of it is ASCII. */
public final class ProgressJson {
    private static final JsonFactory JSON =
            JsonFactory.builder().enable(JsonWriteFeature.ESCAPE_NON_ASCII).build();

    private ProgressJson() {}

    /** The grid: {@code child}, and {@code families} with one object each. */
    public static String grid(String name, Grid grid, LifetimeProgress stones) throws IOException {
        Writer writer = new StringWriter();
        try (JsonGenerator json = JSON.createGenerator(writer).useDefaultPrettyPrinter()) {
            json.writeStartObject();
            json.writeStringField("child", name);
            json.writeArrayFieldStart("families");
            for (Grid.Cell cell : grid.cells()) {
                json.writeStartObject();
                json.writeStringField("family", cell.family().toString());
                json.writeNumberField("product", cell.family().product());
                json.writeNumberField("stones", stones.stones(cell.family()));
                json.writeStringField("level", cell.level().word());
                json.writeStringField("products", cell.products().word());
                json.writeStringField("quotients", cell.quotients().word());
                json.writeBooleanField("focus", cell.focused());
                json.writeBooleanField("hold", cell.held());
                json.writeBooleanField("due_again", cell.fading());
                json.writeBooleanField("known_by_trial", cell.knownByTrial());
                json.writeNumberField("asked", cell.asked());
                json.writeNumberField("right", cell.right());
                json.writeEndObject();
            }
            json.writeEndArray();
            json.writeEndObject();
        }
        return writer + "\n";
    }

    /** One family: its level and {@code traces}, each with its questions, how it stands, and the wrong answers given. */
    public static String family(String name, FamilyReport report) throws IOException {
        Writer writer = new StringWriter();
        try (JsonGenerator json = JSON.createGenerator(writer).useDefaultPrettyPrinter()) {
            json.writeStartObject();
            json.writeStringField("child", name);
            json.writeStringField("family", report.family().toString());
            json.writeNumberField("stones", report.highest().ordinal());
            json.writeStringField("level", report.cell().level().word());
            json.writeBooleanField("focus", report.cell().focused());
            json.writeBooleanField("hold", report.cell().held());
            json.writeBooleanField("due_again", report.cell().fading());
            json.writeBooleanField("known_by_trial", report.cell().knownByTrial());
            day(json, "begun_again", report.begunAgain());
            json.writeArrayFieldStart("traces");
            for (FamilyReport.OfTrace trace : report.traces()) {
                trace(json, trace);
            }
            json.writeEndArray();
            json.writeEndObject();
        }
        return writer + "\n";
    }

    private static void day(JsonGenerator json, String field, Optional<Long> day) throws IOException {
        if (day.isPresent()) {
            json.writeStringField(field, LocalDate.ofEpochDay(day.get()).toString());
        }
    }

    private static void trace(JsonGenerator json, FamilyReport.OfTrace told) throws IOException {
        TraceRecord record = told.record();
        json.writeStartObject();
        json.writeArrayFieldStart("questions");
        for (Question question : told.trace().questions()) {
            json.writeString(question.left() + "" + question.operation().plainSign() + question.right());
        }
        json.writeEndArray();
        json.writeStringField("level", told.level().word());
        json.writeNumberField("stones", told.highest().ordinal());
        json.writeNumberField("asked", record.asked());
        json.writeNumberField("right", record.right());
        if (told.median().isPresent()) {
            json.writeNumberField("median_thinking_ms", told.median().get().toMillis());
        }
        day(json, "last_asked", told.lastDay());
        day(json, "due", told.dueDay());
        json.writeArrayFieldStart("quick_now_week_month_percent");
        for (int chance : told.chances()) {
            json.writeNumber(chance);
        }
        json.writeEndArray();
        json.writeNumberField("missing", record.missing());
        json.writeNumberField("mended", record.mended());
        json.writeArrayFieldStart("wrong");
        for (TraceRecord.Wrong wrong : record.wrong()) {
            json.writeStartObject();
            json.writeNumberField("typed", wrong.answer().typed());
            json.writeStringField("kind", wrong.answer().kind().key());
            json.writeNumberField("times", wrong.times());
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeEndObject();
    }
}
