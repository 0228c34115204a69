// SPDX-License-Identifier: Apache-2.0
package fourfold.commands;

import java.io.IOException;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;

/** The ways in which a family meets its answers again, each from what lies in a folder, through the program's own commands. */
enum Way {
    /** The program is opened and closed again; what it leaves is the file with what still stands beside it. */
    START,
    VERIFY,
    EXPORT,
    MERGE,
    SALVAGE,
    BACKUP,
    RESTORE,
    /** A copy for safekeeping. */
    COPY;

    /** The command refused, or told of something that is not well. */
    static final class NoWay extends RuntimeException {
        private static final long serialVersionUID = 1L;

        NoWay(String said) {
            super(said);
        }
    }

    /**
     * Goes this way on a file and what stands beside it.
     *
     * @param scratch an empty folder
     * @return a line for each answer found: its drill, its place in it, what was asked and what was typed
     * @throws NoWay if the way is barred
     */
    List<String> found(Path file, Path scratch) {
        switch (this) {
            case START -> {
                run(file, "children");
                return logged(file);
            }
            case VERIFY -> {
                String said = run(file, "verify");
                if (!said.contains(": all is well.")) {
                    throw new NoWay(said);
                }
                return logged(file);
            }
            case EXPORT -> {
                return exported(run(file, "export", "answers"));
            }
            case MERGE -> {
                Path other = scratch.resolve("other.db");
                run(other, "merge", "--yes", file.toString());
                return logged(alone(other, scratch));
            }
            case SALVAGE -> {
                Path saved = scratch.resolve("saved.db");
                run(file, "salvage", saved.toString());
                return logged(alone(saved, scratch));
            }
            case BACKUP -> {
                return logged(alone(backup(file), scratch));
            }
            case RESTORE -> {
                run(file, "restore", "--yes", backup(file).toString());
                return logged(file);
            }
            case COPY -> {
                Path copy = scratch.resolve("copy.db");
                run(file, "backup", "--to", copy.toString());
                return logged(alone(copy, scratch));
            }
        }
        throw new AssertionError(this);
    }

    private static String run(Path file, String... arguments) {
        CommandRun run = CommandRun.of(file, arguments);
        if (run.code() != 0) {
            throw new NoWay((run.out() + run.err()).strip());
        }
        return run.out();
    }

    private static Path backup(Path file) {
        return Path.of(run(file, "backup").strip().split("  ", 2)[1]);
    }

    /** One file taken away from all that stands beside it. */
    private static Path alone(Path file, Path scratch) {
        try {
            return Files.copy(file, scratch.resolve("alone.db"));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** What plain SQL finds in a file. */
    static List<String> logged(Path file) {
        return Rows.column(
                file,
                "SELECT drill || ' ' || position || ': ' || asked || ' -> ' || COALESCE(typed, '') FROM answer_log"
                        + " ORDER BY drill, position");
    }

    private static List<String> exported(String csv) {
        try (Stream<CSVRecord> records =
                CSVFormat.RFC4180
                        .builder()
                        .setHeader()
                        .setSkipHeaderRecord(true)
                        .get()
                        .parse(new StringReader(csv))
                        .stream()) {
            return records.map(
                            r -> r.get("drill") + " " + r.get("position") + ": " + asked(r) + " -> " + r.get("typed"))
                    .sorted()
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static String asked(CSVRecord record) {
        String left = record.get("left");
        String right = record.get("right");
        return switch (record.get("operation")) {
            case "multiply" -> left + " x " + right;
            case "divide" -> left + " / " + right;
            case "factor" -> right + " x ? = " + left;
            default -> "copy " + left;
        };
    }
}
