// SPDX-License-Identifier: Apache-2.0
package fourfold.store;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.Arrays;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.sqlite.SQLiteDataSource;

/** Guards against migrations that the program does not know of, and against a picture of the schema that is out of date. */
class SchemaTest {
    @TempDir
    private Path folder = Path.of("");

    @Test
    void theProgramKnowsExactlyTheMigrationsThatAreThere() {
        SQLiteDataSource source = new SQLiteDataSource();
        source.setUrl("jdbc:sqlite:" + folder.resolve("any.db"));
        List<Schema.Step> there = Arrays.stream(Migration.flyway(source, Schema.TODAY.locations(), "")
                        .info()
                        .all())
                .map(i -> new Schema.Step(i.getVersion().toString(), i.getChecksum()))
                .toList();
        assertEquals(there, Schema.TODAY.steps());
    }

    @Test
    void theSchemaOnPaperIsThatOfAFreshFile() throws IOException, SQLException {
        Path file = folder.resolve("fresh.db");
        Store.open(file).close();
        SQLiteDataSource source = new SQLiteDataSource();
        source.setUrl("jdbc:sqlite:" + file);
        String now;
        try (Connection connection = source.getConnection()) {
            now = Database.query(
                            connection,
                            "SELECT sql FROM sqlite_schema WHERE sql IS NOT NULL AND tbl_name <> 'flyway_schema_history'"
                                    + " ORDER BY rowid",
                            none -> {},
                            row -> row.getString(1))
                    .stream()
                    .map(sql -> sql + ";\n")
                    .collect(Collectors.joining("\n"));
        }
        Path paper = Path.of("db", "schema.sql");
        Path target = Files.createDirectories(Path.of("target")).resolve("schema.sql");
        String head =
                "-- The schema of a fresh SQLite file; a test compares the two. Change it by a new migration only.\n\n";
        Files.writeString(target, head + now);
        assertEquals(head + now, Files.readString(paper), "copy target/schema.sql to db/schema.sql");
    }

    @Test
    void theStoreOnlyEverAddsRows() throws IOException {
        try (Stream<Path> sources = Files.list(Path.of("src", "main", "java", "fourfold", "store"))) {
            for (Path source : sources.toList()) {
                // A child is removed in one place; what is remembered of the home and the gate are no records.
                boolean changes = Pattern.compile(
                                "\\b(UPDATE|REPLACE INTO|DROP)\\b|\\bDELETE FROM (?!home_setting\\b|gate\\b)")
                        .matcher(Files.readString(source))
                        .find();
                assertEquals(source.endsWith("Removal.java"), changes, source + " changes rows that were kept");
            }
        }
    }
}
