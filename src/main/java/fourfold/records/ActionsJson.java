package fourfold.records;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.json.JsonWriteFeature;
import fourfold.log.ActionRecord;
import fourfold.log.ParentAction;
import java.io.IOException;
import java.io.StringWriter;
import java.io.Writer;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;

/** A parent's acts as JSON (RFC 8259), oldest first, times as RFC 3339 with the zone offset of then. All of it is ASCII. */
public final class ActionsJson {
    private static final JsonFactory JSON =
            JsonFactory.builder().enable(JsonWriteFeature.ESCAPE_NON_ASCII).build();
    private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("uuuu-MM-dd'T'HH:mm:ss.SSSXXX");

    private ActionsJson() {}

    /** The acts: {@code child}, and {@code acts} with one object each, those that were taken back too. */
    public static String of(String name, List<ActionRecord> acts) throws IOException {
        Set<UUID> inForce =
                ActionRecord.inForce(acts).stream().map(ActionRecord::id).collect(Collectors.toSet());
        Writer writer = new StringWriter();
        try (JsonGenerator json = JSON.createGenerator(writer).useDefaultPrettyPrinter()) {
            json.writeStartObject();
            json.writeStringField("child", name);
            json.writeArrayFieldStart("acts");
            for (ActionRecord act : acts.stream().sorted(ActionRecord.IN_ORDER).toList()) {
                json.writeStartObject();
                json.writeStringField("id", act.id().toString());
                json.writeStringField(
                        "at", TIME.format(act.at().atOffset(ZoneOffset.ofTotalSeconds(60 * act.zoneOffsetMinutes()))));
                deed(json, act.deed());
                if (!(act.deed() instanceof ParentAction.Undo)) {
                    json.writeBooleanField("taken_back", !inForce.contains(act.id()));
                }
                json.writeEndObject();
            }
            json.writeEndArray();
            json.writeEndObject();
        }
        return writer + "\n";
    }

    private static void deed(JsonGenerator json, ParentAction deed) throws IOException {
        if (deed instanceof ParentAction.Focus focus) {
            said(json, "focus", "family", focus.family().toString());
        } else if (deed instanceof ParentAction.Hold hold) {
            said(json, "hold", "family", hold.family().toString());
        } else if (deed instanceof ParentAction.Release release) {
            said(json, "release", "family", release.family().toString());
        } else if (deed instanceof ParentAction.Reset reset) {
            said(json, "reset", "family", reset.family().toString());
        } else if (deed instanceof ParentAction.OpenTable open) {
            json.writeStringField("deed", "open");
            json.writeNumberField("table", open.table());
        } else if (deed instanceof ParentAction.CloseTable close) {
            json.writeStringField("deed", "close");
            json.writeNumberField("table", close.table());
        } else if (deed instanceof ParentAction.Order order) {
            json.writeStringField("deed", "order");
            json.writeArrayFieldStart("tables");
            for (int table : order.tables()) {
                json.writeNumber(table);
            }
            json.writeEndArray();
        } else if (deed instanceof ParentAction.Choose choose) {
            said(json, "choose", "setting", choose.setting());
            json.writeStringField("value", choose.chosen());
        } else if (deed instanceof ParentAction.Undo undo) {
            said(json, "undo", "act", undo.act().toString());
        }
    }

    private static void said(JsonGenerator json, String deed, String name, String value) throws IOException {
        json.writeStringField("deed", deed);
        json.writeStringField(name, value);
    }
}
