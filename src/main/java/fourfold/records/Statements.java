// SPDX-License-Identifier: Apache-2.0
package fourfold.records;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.json.JsonWriteFeature;
import fourfold.facts.Question;
import fourfold.log.Answer;
import java.io.IOException;
import java.io.StringWriter;
import java.time.Duration;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Optional;

/**
 * Answers as learning-record statements: xAPI 2.0 (IEEE 9274.1.1-2023), one JSON object an answer. The verb and the type
 * of activity are those of the ADL vocabulary for interactions. Names of our own end in {@code .invalid}, a domain that
 * can belong to nobody (RFC 2606), so that no statement points anywhere.
 */
public final class Statements {
    private static final JsonFactory JSON =
            JsonFactory.builder().enable(JsonWriteFeature.ESCAPE_NON_ASCII).build();
    private static final String OURS = "https://fourfold.invalid/";
    private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("yyyy-MM-dd'T'HH:mm:ss.SSSXXX");

    private Statements() {}

    /**
     * The statement of one answer, in one line.
     *
     * @param answer an answer to a question
     * @param name the child's nickname
     * @throws IllegalArgumentException for a number that was only copied
     */
    public static String of(Answer answer, String name) throws IOException {
        Question question = answer.question()
                .orElseThrow(() -> new IllegalArgumentException("a number that was copied is no answer to a question"));
        StringWriter writer = new StringWriter();
        try (JsonGenerator json = JSON.createGenerator(writer)) {
            json.writeStartObject();
            json.writeStringField("id", answer.id().toString());
            actor(json, answer, name);
            json.writeObjectFieldStart("verb");
            json.writeStringField("id", "http://adlnet.gov/expapi/verbs/answered");
            text(json, "display", "answered");
            json.writeEndObject();
            object(json, answer, question);
            result(json, answer);
            context(json, answer);
            json.writeStringField(
                    "timestamp",
                    TIME.format(answer.askedAt().atOffset(ZoneOffset.ofTotalSeconds(60 * answer.zoneOffsetMinutes()))));
            json.writeStringField("version", "2.0.0");
            json.writeEndObject();
        }
        return writer.toString();
    }

    private static void actor(JsonGenerator json, Answer answer, String name) throws IOException {
        json.writeObjectFieldStart("actor");
        json.writeStringField("objectType", "Agent");
        json.writeStringField("name", name);
        json.writeObjectFieldStart("account");
        json.writeStringField("homePage", OURS);
        json.writeStringField("name", answer.child().toString());
        json.writeEndObject();
        json.writeEndObject();
    }

    private static void object(JsonGenerator json, Answer answer, Question question) throws IOException {
        json.writeObjectFieldStart("object");
        json.writeStringField("objectType", "Activity");
        json.writeStringField(
                "id",
                OURS + "question/" + question.left() + "-"
                        + question.operation().word() + "-" + question.right());
        json.writeObjectFieldStart("definition");
        text(json, "name", answer.prompt().toString());
        json.writeStringField("type", "http://adlnet.gov/expapi/activities/cmi.interaction");
        json.writeStringField("interactionType", "numeric");
        json.writeArrayFieldStart("correctResponsesPattern");
        json.writeString(Integer.toString(question.expected()));
        json.writeEndArray();
        json.writeEndObject();
        json.writeEndObject();
    }

    private static void result(JsonGenerator json, Answer answer) throws IOException {
        json.writeObjectFieldStart("result");
        json.writeBooleanField("success", answer.isCorrect());
        json.writeBooleanField("completion", !answer.isMissing());
        json.writeStringField("response", answer.typed());
        Optional<Duration> whole = answer.whole();
        if (whole.isPresent()) {
            json.writeStringField("duration", whole.get().toString());
        }
        json.writeObjectFieldStart("extensions");
        Optional<Duration> first = answer.firstKey();
        if (first.isPresent()) {
            json.writeNumberField(OURS + "first-key-ms", first.get().toMillis());
        }
        json.writeNumberField(OURS + "erasures", answer.erasures());
        if (answer.pace().isPresent()) {
            json.writeStringField(OURS + "pace", answer.pace().get().word());
        }
        json.writeEndObject();
        json.writeEndObject();
    }

    private static void context(JsonGenerator json, Answer answer) throws IOException {
        json.writeObjectFieldStart("context");
        json.writeStringField("registration", answer.drill().toString());
        json.writeStringField("platform", "Fourfold");
        json.writeObjectFieldStart("extensions");
        json.writeNumberField(OURS + "position", answer.position());
        json.writeStringField(OURS + "purpose", answer.purpose().word());
        json.writeStringField(OURS + "surface", answer.surface().word());
        json.writeEndObject();
        json.writeEndObject();
    }

    private static void text(JsonGenerator json, String field, String text) throws IOException {
        json.writeObjectFieldStart(field);
        json.writeStringField("en", text);
        json.writeEndObject();
    }
}
