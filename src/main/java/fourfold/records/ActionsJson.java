// SPDX-License-Identifier: Apache-2.0
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

/** A parent's actions as JSON (RFC 8259), oldest first, times as RFC 3339 with the zone offset of then. All of it is ASCII. */
public final class ActionsJson {
    private static final JsonFactory JSON =
            JsonFactory.builder().enable(JsonWriteFeature.ESCAPE_NON_ASCII).build();
    private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("uuuu-MM-dd'T'HH:mm:ss.SSSXXX");

    private ActionsJson() {}

    /** The actions: {@code child}, and {@code actions} with one object each, those that were taken back too. */
    public static String of(String name, List<ActionRecord> actions) throws IOException {
        Set<UUID> inForce =
                ActionRecord.inForce(actions).stream().map(ActionRecord::id).collect(Collectors.toSet());
        Writer writer = new StringWriter();
        try (JsonGenerator json = JSON.createGenerator(writer).useDefaultPrettyPrinter()) {
            json.writeStartObject();
            json.writeStringField("child", name);
            json.writeArrayFieldStart("acts");
            for (ActionRecord action :
                    actions.stream().sorted(ActionRecord.IN_ORDER).toList()) {
                json.writeStartObject();
                json.writeStringField("id", action.id().toString());
                json.writeStringField(
                        "at",
                        TIME.format(action.at().atOffset(ZoneOffset.ofTotalSeconds(60 * action.zoneOffsetMinutes()))));
                action(json, action.action());
                if (!(action.action() instanceof ParentAction.Undo)) {
                    json.writeBooleanField("taken_back", !inForce.contains(action.id()));
                }
                json.writeEndObject();
            }
            json.writeEndArray();
            json.writeEndObject();
        }
        return writer + "\n";
    }

    private static void action(JsonGenerator json, ParentAction action) throws IOException {
        if (action instanceof ParentAction.Focus focus) {
            said(json, "focus", "family", focus.family().toString());
        } else if (action instanceof ParentAction.Hold hold) {
            said(json, "hold", "family", hold.family().toString());
        } else if (action instanceof ParentAction.Release release) {
            said(json, "release", "family", release.family().toString());
        } else if (action instanceof ParentAction.Reset reset) {
            said(json, "reset", "family", reset.family().toString());
        } else if (action instanceof ParentAction.OpenTable open) {
            json.writeStringField("action", "open");
            json.writeNumberField("table", open.table());
        } else if (action instanceof ParentAction.CloseTable close) {
            json.writeStringField("action", "close");
            json.writeNumberField("table", close.table());
        } else if (action instanceof ParentAction.Order order) {
            json.writeStringField("action", "order");
            json.writeArrayFieldStart("tables");
            for (int table : order.tables()) {
                json.writeNumber(table);
            }
            json.writeEndArray();
        } else if (action instanceof ParentAction.Choose choose) {
            said(json, "choose", "setting", choose.setting());
            json.writeStringField("value", choose.chosen());
        } else if (action instanceof ParentAction.CalendarEntry entry) {
            said(json, "calendar", "part", entry.part());
            json.writeStringField("value", entry.text());
        } else if (action instanceof ParentAction.Taught taught) {
            said(json, "taught", "operation", taught.operation().word());
            json.writeNumberField("table", taught.table());
        } else if (action instanceof ParentAction.Away away) {
            said(json, "away", "day", away.day().toString());
            json.writeStringField("practice", away.practice().key());
        } else if (action instanceof ParentAction.Undo undo) {
            said(json, "undo", "act", undo.action().toString());
        }
    }

    private static void said(JsonGenerator json, String action, String name, String value) throws IOException {
        json.writeStringField("action", action);
        json.writeStringField(name, value);
    }
}
