// SPDX-License-Identifier: Apache-2.0
package fourfold.commands;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.home.ImportedAnswers;
import fourfold.log.Child;
import fourfold.log.InvalidValue;
import fourfold.store.Store;
import fourfold.words.Words;
import java.io.IOException;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Guards against an import that takes half a file, changes what was kept, or falls over what it reads. */
class ImportAnswersTest {
    /** More with {@code -Dfourfold.imports=100000}. */
    private static final int MUTATIONS = Integer.getInteger("fourfold.imports", 3000);

    @TempDir
    private Path folder;

    private Path exported() throws IOException {
        Path from = Files.createDirectories(folder.resolve("from"));
        return Files.writeString(
                folder.resolve("answers.csv"),
                CommandRun.of(Practised.once(from), "export", "answers").out(),
                StandardCharsets.UTF_8);
    }

    private Path fresh() {
        return Practised.children(folder);
    }

    @Test
    void aPreviewChangesNothingAndASecondExportIsTheSameByteForByte() throws IOException {
        Path csv = exported();
        Path file = fresh();
        byte[] before = Files.readAllBytes(file);
        CommandRun preview = CommandRun.of(file, "import", "answers", csv.toString());
        assertEquals(
                csv + ": new answers: 15, in new drills: 1; here already: 0.\nNew children: Mina\n"
                        + "Nothing was changed. Add --yes to do it.\n",
                preview.out());
        assertArrayEquals(before, Files.readAllBytes(file));
        assertEquals(
                0,
                CommandRun.of(file, "import", "answers", "--yes", csv.toString())
                        .code());
        assertEquals(
                Files.readString(csv), CommandRun.of(file, "export", "answers").out());
        CommandRun again = CommandRun.of(file, "import", "answers", "--yes", csv.toString());
        assertTrue(again.out().contains("new answers: 0, in new drills: 0; here already: 15"), again.out());
        assertEquals(
                Files.readString(csv), CommandRun.of(file, "export", "answers").out());
    }

    @Test
    void manyDrillsOfTheDemoComeBackByteForByte() throws IOException {
        String demo = CommandRun.of(fresh(), "--demo", "export", "answers").out();
        Path csv = Files.writeString(folder.resolve("demo.csv"), "\uFEFF" + demo, StandardCharsets.UTF_8);
        Path file = fresh();
        assertEquals(
                0,
                CommandRun.of(file, "import", "answers", "--yes", csv.toString())
                        .code());
        assertEquals(demo, CommandRun.of(file, "export", "answers").out());
    }

    @Test
    void aPartOfAnExportIsNotTakenForAWholeDrill() throws IOException {
        List<String> lines = Files.readAllLines(exported());
        for (int left : new int[] {1, 4, 14}) {
            List<String> part = new ArrayList<>(lines);
            part.remove(left);
            Path csv = Files.write(folder.resolve("part" + left + ".csv"), part);
            Path file = fresh();
            CommandRun run = CommandRun.of(file, "import", "answers", "--yes", csv.toString());
            assertEquals(2, run.code(), run.err());
            assertTrue(
                    run.err().contains("has no answer at position " + left + " here; take the whole export"),
                    run.err());
            assertEquals(0, CommandRun.of(file, "verify").code());
        }
        Path beginning = Files.write(folder.resolve("beginning.csv"), lines.subList(0, 6));
        Path file = fresh();
        assertEquals(
                0,
                CommandRun.of(file, "import", "answers", "--yes", beginning.toString())
                        .code());
        assertEquals(0, CommandRun.of(file, "verify").code());
    }

    @Test
    void aLongFieldIsNotRepeatedWhole() throws IOException {
        Path csv = exported();
        Files.writeString(csv, Files.readString(csv).replaceFirst("copy", "c".repeat(100_000)));
        CommandRun run = CommandRun.of(fresh(), "import", "answers", csv.toString());
        assertTrue(run.err().contains("c".repeat(80) + "…"), run.err());
        assertTrue(run.err().length() < 500, run.err());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "3|,copy,|,copied,|line 3: purpose must be",
                "4|T08|T28|line 4: asked_at is like",
                "5|2026|1026|line 5: asked_at is not before 1970",
                "9|,0,terminal|,-1,terminal|line 9: erasures",
                "2|Mina|Mi\u0007na|line 2: a name holds no control characters",
                "16|,terminal|,terminal,,more|line 16: 17 fields are needed, not 19",
                "7|,60,|,99999999999,|line 7: zone_offset_min is no whole number"
            })
    void theFirstWrongLineIsNamedAndNothingIsTaken(int line, String from, String to, String told) throws IOException {
        List<String> lines =
                new ArrayList<>(List.of(Files.readString(exported()).split("\r\n")));
        lines.set(line - 1, lines.get(line - 1).replace(from, to));
        Path csv = Files.writeString(folder.resolve("wrong.csv"), String.join("\r\n", lines) + "\r\n");
        Path file = fresh();
        byte[] before = Files.readAllBytes(file);
        CommandRun run = CommandRun.of(file, "import", "answers", "--yes", csv.toString());
        assertEquals(2, run.code());
        assertTrue(run.err().startsWith("fourfold: " + csv + ", " + told), run.err());
        assertTrue(run.err().contains("Nothing was changed."), run.err());
        assertArrayEquals(before, Files.readAllBytes(file));
    }

    @Test
    void anAnswerThatDiffersFromTheOneKeptIsTold() throws IOException {
        Path csv = exported();
        Path file = fresh();
        assertEquals(
                0,
                CommandRun.of(file, "import", "answers", "--yes", csv.toString())
                        .code());
        Files.writeString(csv, Files.readString(csv).replace(",600,900,", ",600,901,"));
        CommandRun run = CommandRun.of(file, "import", "answers", "--yes", csv.toString());
        assertEquals(2, run.code());
        assertTrue(run.err().contains("line 2: there is another answer at position 1"), run.err());
    }

    /** A device gives as much as one asks for, and a pipe nothing at all. */
    @Test
    @DisabledOnOs(OS.WINDOWS)
    void whatIsNoOrdinaryFileDoesNotComeIn() {
        CommandRun run = CommandRun.of(fresh(), "import", "answers", "/dev/zero");
        assertEquals(1, run.code());
        assertTrue(run.err().contains("The file /dev/zero can't be read."), run.err());
    }

    @Test
    void whatIsNoTextOrNoFileIsTold() throws IOException {
        Path file = fresh();
        Path latin = Files.write(folder.resolve("latin.csv"), new byte[] {'Z', 'o', (byte) 0xeb});
        assertTrue(
                CommandRun.of(file, "import", "answers", latin.toString()).err().contains("is no text in UTF-8"));
        assertTrue(CommandRun.of(file, "import", "answers", folder.toString())
                .err()
                .contains("can't be read"));
        assertTrue(
                CommandRun.of(file, "import", "answers", folder + "/none").err().contains("There is no file"));
    }

    /** A formula in a cell could run a program on the parent's computer (OWASP, CSV Injection, from memory). */
    @ParameterizedTest
    @CsvSource(
            quoteCharacter = '"',
            value = {
                "=1+1,'=1+1",
                "+Mia,'+Mia",
                "-Mia,'-Mia",
                "@Mia,'@Mia",
                "'=Mia,''=Mia",
                "O'Neil,O'Neil",
                "'Mia,'Mia"
            })
    void aNameThatASpreadsheetWouldTakeForAFormulaIsMadeTextAndComesBack(String name, String cell) throws IOException {
        String text = Files.readString(exported()).replace(",Mina,", "," + cell + ",");
        Path csv = Files.writeString(folder.resolve("named.csv"), text);
        Path file = fresh();
        assertEquals(
                0,
                CommandRun.of(file, "import", "answers", "--yes", csv.toString())
                        .code());
        try (Store store = Store.open(file)) {
            assertEquals(
                    List.of(name), store.children().stream().map(Child::name).toList());
        }
        assertEquals(text, CommandRun.of(file, "export", "answers").out());
    }

    /** Bytes flipped, doubled, cut, moved, and pieces of CSV put in: what is read is whole, or told with its line or drill. */
    @Test
    void mutatedFilesGiveClearErrorsOnly() throws IOException {
        byte[] whole = Files.readAllBytes(exported());
        Path file = fresh();
        SplittableRandom random = new SplittableRandom(31);
        int taken = 0;
        try (Store store = Store.open(file)) {
            for (int i = 0; i < MUTATIONS; i++) {
                String text = new String(mutated(whole, random), StandardCharsets.UTF_8);
                try {
                    ImportedAnswers.read(store, new StringReader(text), Instant.EPOCH);
                    taken++;
                } catch (InvalidValue e) {
                    String told = Words.english().problem(e.problem());
                    assertTrue(told.matches("(?s)line \\d+( or below)?: \\S.*|.*the drill [0-9a-f-]{36} .*"), told);
                    assertTrue(!told.contains("Exception") && !told.contains("null"), told);
                }
            }
            assertEquals(List.of(), store.allChildren());
        }
        assertTrue(taken < MUTATIONS / 2, taken + " of " + MUTATIONS + " were taken");
    }

    private static byte[] mutated(byte[] whole, SplittableRandom random) {
        byte[] bytes = whole.clone();
        String[] pieces = {"\"", ",", "\r\n", "\n", "\u0000", "-", "99999999999999999999", "÷", "\uD83D\uDE00", ",,,,"};
        for (int times = 1 + random.nextInt(3); times > 0; times--) {
            int at = random.nextInt(bytes.length);
            switch (random.nextInt(5)) {
                case 0 -> bytes[at] ^= (byte) (1 << random.nextInt(8));
                case 1 -> bytes = java.util.Arrays.copyOf(bytes, Math.max(1, at));
                case 2 -> {
                    byte[] piece = pieces[random.nextInt(pieces.length)].getBytes(StandardCharsets.UTF_8);
                    bytes = joined(java.util.Arrays.copyOf(bytes, at), piece, from(bytes, at));
                }
                case 3 -> bytes = joined(java.util.Arrays.copyOf(bytes, at), from(bytes, random.nextInt(bytes.length)));
                default -> bytes[at] = (byte) random.nextInt(256);
            }
        }
        return bytes;
    }

    private static byte[] from(byte[] bytes, int at) {
        return java.util.Arrays.copyOfRange(bytes, at, bytes.length);
    }

    private static byte[] joined(byte[]... parts) {
        java.io.ByteArrayOutputStream out = new java.io.ByteArrayOutputStream();
        for (byte[] part : parts) {
            out.writeBytes(part);
        }
        return out.toByteArray();
    }
}
