// SPDX-License-Identifier: Apache-2.0
package fourfold.commands;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.records.AnswersCsv;
import java.io.IOException;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import java.util.UUID;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Guards against an export that other programs cannot read, or that loses something. Read by Apache Commons CSV. */
class ExportAnswersTest {
    private static final String COLUMNS = "id,child,drill,position,asked_at,zone_offset_min,purpose,operation,left,"
            + "right,typed,correct,first_key_ms,whole_ms,erasures,surface,pace";

    @TempDir
    private Path folder;

    @Test
    void anIndependentReaderFindsTheSeventeenColumns() throws IOException {
        CommandRun run = CommandRun.of(Practised.once(folder), "export", "answers");
        assertEquals(0, run.code());
        assertTrue(run.out().startsWith(COLUMNS + "\r\n") && run.out().endsWith("\r\n"), run.out());
        // RFC 4180, section 2: lines end with CRLF; nothing here has a line break inside a field.
        assertEquals(16, run.out().split("\r\n", -1).length - 1);
        assertFalse(run.out().replace("\r\n", "").contains("\n"));
        try (CSVParser parser = CSVParser.parse(
                run.out(),
                CSVFormat.RFC4180
                        .builder()
                        .setHeader()
                        .setSkipHeaderRecord(true)
                        .get())) {
            List<CSVRecord> rows = parser.getRecords();
            assertEquals(15, rows.size());
            assertEquals(
                    List.of(
                            Practised.answers().get(0).id().toString(),
                            "Mina",
                            "00000000-0000-0008-0000-000000000001",
                            "1",
                            "2026-03-01T08:00:00.000Z",
                            "60",
                            "copy",
                            "",
                            "3",
                            "",
                            "3",
                            "1",
                            "600",
                            "900",
                            "0",
                            "terminal",
                            ""),
                    rows.get(0).toList());
            CSVRecord division = rows.get(13);
            assertEquals("divide", division.get("operation"));
            assertEquals("42", division.get("left"));
            assertEquals("7", division.get("right"));
            assertEquals("8", division.get("typed"));
            assertEquals("0", division.get("correct"));
            CSVRecord missing = rows.get(14);
            assertEquals("", missing.get("typed"));
            assertEquals("", missing.get("first_key_ms"));
            assertEquals("20000", missing.get("whole_ms"));
        }
    }

    @Test
    void whatTheProgramReadsBackIsWhatItKept() {
        String csv = CommandRun.of(Practised.once(folder), "export", "answers").out();
        assertEquals(Practised.answers(), AnswersCsv.read(new StringReader(csv), name -> new UUID(7, 0)));
    }

    @Test
    void aFileHoldsTheSameAsTheOutput() throws IOException {
        Path file = Practised.once(folder);
        Path csv = folder.resolve("answers.csv");
        CommandRun run = CommandRun.of(file, "export", "answers", csv.toString());
        assertEquals("", run.out() + run.err());
        assertEquals(CommandRun.of(file, "export", "answers").out(), Files.readString(csv, StandardCharsets.UTF_8));
        if (csv.getFileSystem().supportedFileAttributeViews().contains("posix")) {
            assertEquals("rw-------", PosixFilePermissions.toString(Files.getPosixFilePermissions(csv)));
        }
    }

    @Test
    void withoutAnAnswerThereIsTheHeaderOnly() {
        Path file = Practised.children(folder, "Mina");
        assertEquals(COLUMNS + "\r\n", CommandRun.of(file, "export", "answers").out());
    }

    @Test
    void oneChildCanBeTakenAlone() {
        Path file = Practised.once(folder);
        assertEquals(0, CommandRun.of(file, "children", "--add", "Ivo").code());
        assertEquals(
                COLUMNS + "\r\n",
                CommandRun.of(file, "export", "answers", "--child", "Ivo").out());
        assertEquals(
                16,
                CommandRun.of(file, "export", "answers", "--child", "Mina")
                        .out()
                        .lines()
                        .count());
    }
}
