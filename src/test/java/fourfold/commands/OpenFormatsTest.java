// SPDX-License-Identifier: Apache-2.0
package fourfold.commands;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import fourfold.log.Answer;
import fourfold.store.Store;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** Guards against records that leave the program in another form than is written down. */
class OpenFormatsTest {
    private static final JsonMapper JSON = new JsonMapper();

    @TempDir
    private Path folder;

    private static Schema schema(String resource) throws IOException {
        try (InputStream in = Objects.requireNonNull(OpenFormatsTest.class.getResourceAsStream(resource), resource)) {
            return SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                    .getSchema(in);
        }
    }

    private static void fits(Schema schema, JsonNode json) {
        assertEquals(List.of(), schema.validate(json), json.toString());
    }

    private static String ok(CommandRun run) {
        assertEquals("", run.err());
        assertEquals(0, run.code());
        return run.out();
    }

    @ParameterizedTest
    @CsvSource({
        "grid, grid",
        "family 6x7, family",
        "family 9x9, family",
        "plan --runs 1, plan",
        "rates, rates",
        "year, year",
        "today, today",
        "print report, report"
    })
    void theJsonOfACommandIsAsItsSchemaSays(String command, String schema) throws IOException {
        Path sample = folder.resolve("sample.db");
        Sample.fill(sample);
        Schema wanted = schema("/fourfold/records/" + schema + ".schema.json");
        fits(wanted, JSON.readTree(ok(CommandRun.of(sample, (command + " --json").split(" ")))));
        assertFalse(wanted.validate(JSON.readTree("{\"child\": 1}")).isEmpty(), "the schema refuses something");
    }

    @Test
    void theJsonOfAChildWhoHasHardlyBegunFitsToo() throws IOException {
        Path file = Practised.once(folder);
        for (String command : List.of("grid", "family", "plan", "rates", "year", "today", "report")) {
            String words = command.equals("family")
                    ? "family 6x7 --json"
                    : (command.equals("report") ? "print report" : command) + " --json";
            fits(
                    schema("/fourfold/records/" + command + ".schema.json"),
                    JSON.readTree(ok(CommandRun.of(file, words.split(" ")))));
        }
    }

    @Test
    void theHistoryAsJsonTellsEachActAndWhatWasTakenBack() throws IOException {
        Path file = Practised.once(folder);
        for (String command : List.of(
                "focus 6x7",
                "hold 9",
                "reset 2x2",
                "focus 2x2 --end",
                "settings --order 2,1,5,10,3,4,8,6,9,7",
                "settings minutes 6")) {
            ok(CommandRun.of(file, command.split(" ")));
        }
        try (Journey journey = new Journey(file, Instant.parse("2030-03-02T16:00:00Z"), 80, 24, true)) {
            journey.keys("3 o c u");
        }
        JsonNode history = JSON.readTree(ok(CommandRun.of(file, "history", "--json")));
        Schema wanted = schema("/fourfold/records/history.schema.json");
        fits(wanted, history);
        assertFalse(wanted.validate(JSON.readTree("{\"child\": \"Mina\"}")).isEmpty());
        List<JsonNode> actions = new ArrayList<>();
        history.get("acts").forEach(actions::add);
        assertEquals(1 + 10 + 1 + 1 + 1 + 1 + 3, actions.size());
        assertEquals(
                Rows.column(file, "SELECT kind FROM act ORDER BY made_at, id"),
                actions.stream().map(a -> a.get("action").asString()).toList());
        JsonNode undo = actions.get(actions.size() - 1);
        assertEquals("undo", undo.get("action").asString());
        assertEquals(
                List.of(undo.get("act").asString()),
                actions.stream()
                        .filter(a -> a.path("taken_back").asBoolean())
                        .map(a -> a.get("id").asString())
                        .toList());
    }

    /** IEEE 9274.1.1-2023; the schema holds what it says of the parts of a statement that are used. */
    @Test
    void everyAnswerToAQuestionIsAStatementOfTheStandard() throws IOException {
        Path file = Practised.once(folder);
        Schema schema = schema("/schema/statement.json");
        List<String> lines =
                ok(CommandRun.of(file, "export", "statements")).lines().toList();
        try (Store store = Store.open(file)) {
            List<Answer> answers = store.answers(store.children().get(0).id()).stream()
                    .filter(a -> a.question().isPresent())
                    .toList();
            assertEquals(answers.size(), lines.size());
            for (int i = 0; i < lines.size(); i++) {
                JsonNode statement = JSON.readTree(lines.get(i));
                fits(schema, statement);
                assertEquals(answers.get(i).id().toString(), statement.get("id").stringValue());
                assertEquals(
                        answers.get(i).isCorrect(),
                        statement.at("/result/success").booleanValue());
                assertEquals(
                        answers.get(i).whole().map(Object::toString).orElse(""),
                        statement.at("/result/duration").asString());
            }
            assertEquals(
                    lines.size(),
                    lines.stream()
                            .map(l -> l.substring(0, 46))
                            .collect(Collectors.toSet())
                            .size());
        }
        assertTrue(lines.size() > 3);
        Path made = folder.resolve("statements.jsonl");
        ok(CommandRun.of(file, "export", "statements", made.toString()));
        assertEquals(lines, Files.readAllLines(made));
        assertEquals(
                1, CommandRun.of(file, "export", "statements", made.toString()).code(), "never over a file");
    }

    @Test
    void anExportThatIsImportedAndExportedAgainIsTheSameByteForByte() throws IOException {
        Path file = folder.resolve("sample.db");
        Sample.fill(file);
        String first = ok(CommandRun.of(file, "export", "answers"));
        Path csv = Files.writeString(folder.resolve("answers.csv"), first);
        Path fresh = folder.resolve("fresh.db");
        ok(CommandRun.of(fresh, "import", "answers", csv.toString(), "--yes"));
        assertEquals(first, ok(CommandRun.of(fresh, "export", "answers")));
    }
}
