// SPDX-License-Identifier: Apache-2.0
package fourfold.store;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.facts.Family;
import fourfold.log.Answer;
import fourfold.log.Child;
import fourfold.log.DrillSession;
import fourfold.log.ParentAction;
import fourfold.log.RecordsFailure;
import fourfold.upkeep.Merge;
import fourfold.upkeep.RowCounts;
import fourfold.upkeep.Verification;
import fourfold.words.InEnglish;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Guards against a new program that loses what an old one kept. For each version of the schema that ever was there is a
 * file that a program of that time wrote: {@code earlier/version-N.db}. Such files are never changed.
 */
class EarlierFilesTest {
    @TempDir
    private Path folder;

    static List<String> versions() {
        return Schema.TODAY.steps().stream().map(Schema.Step::version).toList();
    }

    private Path file(String version) throws IOException {
        Path file = folder.resolve("family.db");
        String name = "/fourfold/store/earlier/version-" + version + ".db";
        try (InputStream kept = Objects.requireNonNull(
                EarlierFilesTest.class.getResourceAsStream(name), "keep a file of this version: " + name)) {
            Files.copy(kept, file);
        }
        return file;
    }

    @ParameterizedTest
    @MethodSource("versions")
    void whatThatProgramKeptIsThere(String version) throws IOException {
        Child ana = new Child(Invented.id(1), "Anna", Invented.child(1, "Ana").since());
        Child bo = Invented.child(2, "Bo");
        try (Store store = Store.open(file(version))) {
            assertEquals(List.of(ana, bo), store.children());
            for (Child child : List.of(ana, bo)) {
                List<Answer> given = new ArrayList<>();
                for (int n = 0; n < 6; n++) {
                    if ((n % 3 == 0) == child.equals(bo)) {
                        DrillSession session = Invented.session(child, n);
                        for (int p = 1; p <= 12; p++) {
                            given.add(answer(version, session, p));
                        }
                    }
                }
                assertEquals(given, store.answers(child.id()));
            }
            assertEquals(
                    List.of(
                            Invented.action(ana, 1, new ParentAction.Focus(Family.of(6, 7))),
                            Invented.action(ana, 2, new ParentAction.Choose("name", "Anna"))),
                    store.actions(ana.id()));
        }
        assertEquals(List.of(), Verification.of(folder.resolve("family.db")));
    }

    private static Answer answer(String version, DrillSession session, int position) {
        return switch (version) {
            case "1" -> Invented.answerOfVersion1(session, position);
            case "2", "3" -> Invented.answerOfVersion3(session, position);
            default -> Invented.answer(session, position);
        };
    }

    @ParameterizedTest
    @MethodSource("versions")
    void aBackupOfThatTimeCanBeMergedWithoutTouchingIt(String version) throws IOException {
        Path old = file(version);
        byte[] before = Files.readAllBytes(old);
        List<Path> earlierCopies = copiesLeft();
        try (Store store = Store.open(folder.resolve("today.db"))) {
            Merge.Said nothing = new Merge.Said(java.util.Set.of(), java.util.Map.of(), Invented.MORNING, 0);
            assertEquals(72, Merge.of(store, old, nothing).came().of(RowCounts.Kind.ANSWER));
        }
        assertArrayEquals(before, Files.readAllBytes(old));
        assertEquals(earlierCopies, copiesLeft(), "a copy of the children's answers was left behind");
    }

    /** Copies made while another computer's old file was brought up to date, in the folder for temporary files. */
    private static List<Path> copiesLeft() throws IOException {
        try (Stream<Path> folders = Files.list(Path.of(System.getProperty("java.io.tmpdir")))) {
            return folders.filter(f -> String.valueOf(f.getFileName()).startsWith("fourfold-copy"))
                    .filter(f -> Files.exists(f.resolve("copy-before-4.db")))
                    .toList();
        }
    }

    @Test
    void aNewerFileIsNeitherOpenedNorMergedNorChanged() throws IOException {
        Path file = folder.resolve("newer.db");
        StoreFile.open(file, StoreFile.PATIENCE, Later.schema()).close();
        byte[] before = Files.readAllBytes(file);
        assertTrue(
                InEnglish.failure(() -> Store.open(file)).endsWith("it was written by a newer Fourfold; use that one"));
        try (Store store = Store.open(folder.resolve("today.db"))) {
            Merge.Said nothing = new Merge.Said(java.util.Set.of(), java.util.Map.of(), Invented.MORNING, 0);
            assertThrows(RecordsFailure.class, () -> Merge.of(store, file, nothing));
        }
        assertArrayEquals(before, Files.readAllBytes(file));
    }
}
