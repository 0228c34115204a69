// SPDX-License-Identifier: Apache-2.0
package fourfold.store;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.flywaydb.core.api.FlywayException;

/**
 * The tables, indexes and views that a file of ours has, each with the words that make it. The history of migrations says
 * which a file should have; only a look at each says that it has them, and no trigger beside them that would quietly undo
 * what is kept.
 */
public final class SchemaObjects {
    private static final String HISTORY = "flyway_schema_history";
    private static final Set<String> KINDS = Set.of("TABLE", "INDEX", "VIEW");

    private static final Pattern AS = Pattern.compile("\\bAS\\b", Pattern.CASE_INSENSITIVE);

    /** More than this many are not looked at: no file of ours has so many. */
    private static final int MOST = 200;

    /** What an object of a file is: its kind, its name, the table it belongs to, and the words that made it. */
    private record Found(String kind, String name, String table, String words) {}

    private final Map<String, String> words;

    private SchemaObjects(Map<String, String> words) {
        this.words = words;
    }

    /** Those of today's schema, as {@code db/schema.sql} has them. */
    static SchemaObjects today() {
        try (InputStream in = SchemaObjects.class.getResourceAsStream("/db/schema.sql")) {
            if (in == null) {
                throw new IllegalStateException("the program is not complete: db/schema.sql");
            }
            String all = new String(in.readAllBytes(), StandardCharsets.UTF_8);
            Map<String, String> words = new HashMap<>();
            for (String part : all.split(";\n")) {
                String made = oneLine(part.substring(Math.max(0, part.indexOf("CREATE "))));
                if (!made.isEmpty()) {
                    words.put(name(made), made);
                }
            }
            return new SchemaObjects(words);
        } catch (IOException e) {
            throw new IllegalStateException("db/schema.sql", e);
        }
    }

    /** Those that the first so many steps of a schema make, found out by making them in a file for a moment. */
    static SchemaObjects madeBy(Schema schema, int steps) throws SQLException {
        try {
            Path folder = Files.createTempDirectory("fourfold-schema");
            Path file = folder.resolve("schema.db");
            try {
                Migration.upTo(
                        Connections.writing(file, StoreFile.PATIENCE, false),
                        schema,
                        schema.steps().get(steps - 1).version());
                try (Connection connection = Connections.plain(file)) {
                    return new SchemaObjects(found(connection).stream()
                            .filter(f -> !f.words().isEmpty() && !f.table().equals(HISTORY))
                            .collect(Collectors.toMap(Found::name, Found::words)));
                }
            } finally {
                Files.deleteIfExists(file);
                Files.deleteIfExists(folder);
            }
        } catch (IOException | FlywayException e) {
            throw new SQLException("no room for a file for a moment", e);
        }
    }

    private static String name(String statement) {
        List<String> words =
                List.of(statement.replace("CREATE UNIQUE", "CREATE").split(" ", 4));
        if (words.size() < 3 || !words.get(0).equals("CREATE") || !KINDS.contains(words.get(1))) {
            throw new IllegalStateException("db/schema.sql makes something else: " + statement);
        }
        return words.get(2).replace("\"", "");
    }

    /** In one line, with single blanks. By hand, as every start needs it: patterns are slow until they are compiled. */
    private static String oneLine(String text) {
        StringBuilder line = new StringBuilder(text.length());
        boolean blank = false;
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if (c == ' ' || (c >= '\t' && c <= '\r')) {
                blank = !line.isEmpty();
            } else {
                if (blank) {
                    line.append(' ');
                    blank = false;
                }
                line.append(c);
            }
        }
        return line.toString();
    }

    private static List<Found> found(Connection connection) throws SQLException {
        return Database.query(
                connection,
                "SELECT type, name, tbl_name, COALESCE(sql, '') FROM sqlite_schema"
                        + " WHERE name NOT IN ('sqlite_stat1', 'sqlite_stat4', 'sqlite_sequence') LIMIT " + MOST,
                none -> {},
                row -> new Found(row.getString(1), row.getString(2), row.getString(3), oneLine(row.getString(4))));
    }

    /**
     * The name of an object that is missing or not as it should be, or of a trigger, an index or a virtual table that is one
     * too many: those would be run by what we do. Tables and views of somebody else's that touch none of ours are passed over.
     */
    Optional<String> changed(Connection connection) throws SQLException {
        return changed(found(connection), false);
    }

    /** The same where nothing else may be at all, as in a file from elsewhere. */
    Optional<String> strange(Connection connection) throws SQLException {
        return changed(found(connection), true);
    }

    private Optional<String> changed(List<Found> there, boolean alone) {
        Set<String> missing = new HashSet<>(words.keySet());
        for (Found found : there) {
            boolean known = found.words().equals(words.get(found.name())) || ofItself(found) || ofHistory(found);
            boolean harmless = Set.of("table", "view").contains(found.kind())
                    && !words.containsKey(found.name())
                    && !found.words().startsWith("CREATE VIRTUAL");
            if (!known && (alone || !harmless)) {
                return Optional.of(Failure.oneLine(found.name()));
            }
            missing.remove(found.name());
        }
        return missing.isEmpty() ? Optional.empty() : Optional.of(new TreeSet<>(missing).first());
    }

    /** An index that a table makes for its own keys. */
    private static boolean ofItself(Found found) {
        return found.kind().equals("index") && found.words().isEmpty();
    }

    /** Flyway makes its own table, each version in its own words. */
    private static boolean ofHistory(Found found) {
        return found.table().equals(HISTORY)
                && (found.kind().equals("index") || (found.kind().equals("table") && isPlainHistory(found.words())));
    }

    /** Whether a table of the history computes nothing and is no other program's. */
    static boolean isPlainHistory(String words) {
        return words.startsWith("CREATE TABLE ") && !AS.matcher(words).find();
    }
}
