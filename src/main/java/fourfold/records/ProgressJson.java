package fourfold.records;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.json.JsonWriteFeature;
import fourfold.facts.Family;
import fourfold.facts.Question;
import fourfold.facts.Trace;
import fourfold.insight.FamilyRecord;
import fourfold.insight.Grid;
import fourfold.insight.LifetimeProgress;
import fourfold.insight.TraceRecord;
import fourfold.progress.FactMastery;
import fourfold.progress.Progress;
import java.io.IOException;
import java.io.StringWriter;
import java.io.Writer;
import java.time.LocalDate;

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
    public static String family(String name, Family family, Progress progress, FamilyRecord record) throws IOException {
        Writer writer = new StringWriter();
        try (JsonGenerator json = JSON.createGenerator(writer).useDefaultPrettyPrinter()) {
            json.writeStartObject();
            json.writeStringField("child", name);
            json.writeStringField("family", family.toString());
            json.writeStringField("level", progress.level(family).word());
            json.writeBooleanField("focus", progress.isFocused(family));
            json.writeBooleanField("hold", progress.isHeld(family));
            json.writeArrayFieldStart("traces");
            for (Trace trace : family.traces()) {
                trace(json, trace, progress.mastery(trace), record.trace(trace));
            }
            json.writeEndArray();
            json.writeEndObject();
        }
        return writer + "\n";
    }

    private static void trace(JsonGenerator json, Trace trace, FactMastery mastery, TraceRecord record)
            throws IOException {
        json.writeStartObject();
        json.writeArrayFieldStart("questions");
        for (Question question : trace.questions()) {
            json.writeString(question.left() + "" + question.operation().plainSign() + question.right());
        }
        json.writeEndArray();
        json.writeStringField("level", mastery.level().word());
        json.writeNumberField("asked", mastery.asked());
        json.writeNumberField("right", mastery.right());
        if (mastery.medianThinking().isPresent()) {
            json.writeNumberField(
                    "median_thinking_ms", mastery.medianThinking().get().toMillis());
        }
        if (mastery.lastDay().isPresent()) {
            json.writeStringField(
                    "last_asked", LocalDate.ofEpochDay(mastery.lastDay().get()).toString());
        }
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
