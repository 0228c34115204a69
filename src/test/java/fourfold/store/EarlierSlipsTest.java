// SPDX-License-Identifier: Apache-2.0
package fourfold.store;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import fourfold.log.Answer;
import fourfold.log.Child;
import fourfold.log.DrillSession;
import fourfold.upkeep.Backups;
import fourfold.upkeep.Merge;
import fourfold.upkeep.Restoration;
import fourfold.upkeep.RowCounts;
import fourfold.upkeep.Salvage;
import fourfold.upkeep.Verification;
import fourfold.words.InEnglish;
import java.io.IOException;
import java.io.InputStream;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Guards against an answer that an earlier program left on a slip and that a new one loses. The files in
 * {@code earlier/slips} were written by the program of 26 November 2026: Ana has three answers of a drill in the file and
 * three more on its slip, and two on the slip of a drill that the file does not know; Bo was removed, and a slip of his is
 * still there.
 */
class EarlierSlipsTest {
    private static final Child ANA = Invented.child(1, "Ana");
    private static final DrillSession DRILL = Invented.session(ANA, 1);
    private static final String KNOWN = "family.db-slip-" + DRILL.id();
    private static final String UNKNOWN =
            "family.db-slip-" + Invented.session(ANA, 3).id();
    private static final String OF_BO = "family.db-slip-" + Invented.id(1_000_002);
    private static final Merge.Said NOTHING = new Merge.Said(Set.of(), Map.of(), Instant.EPOCH, 0);

    @TempDir
    private Path folder;

    private Path file() {
        return folder.resolve("family.db");
    }

    @BeforeEach
    void layOut() throws IOException {
        for (String name : List.of("family.db", KNOWN, UNKNOWN, OF_BO)) {
            try (InputStream kept = Objects.requireNonNull(
                    EarlierSlipsTest.class.getResourceAsStream("/fourfold/store/earlier/slips/" + name), name)) {
                Files.copy(kept, folder.resolve(name));
            }
        }
    }

    private List<String> slips() throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.map(p -> p.getFileName().toString())
                    .filter(name -> name.contains("slip"))
                    .sorted()
                    .toList();
        }
    }

    private static List<Answer> answers(int last) {
        return IntStream.rangeClosed(1, last)
                .mapToObj(position -> Invented.answer(DRILL, position))
                .toList();
    }

    private static List<Answer> in(Path file) {
        try (Store store = Store.open(file)) {
            return store.answers(ANA.id());
        }
    }

    @Test
    void theNextStartTakesInWhatStandsOnASlipAndTakesTheSlipAway() throws IOException {
        assertEquals(answers(6), in(file()));
        assertEquals(List.of(UNKNOWN), slips(), "of a drill that the file does not know nothing is thrown away");
        assertEquals(answers(6), in(file()), "and once only");
    }

    @Test
    void aDrillThatBecomesKnownLaterGetsItsAnswersThen() throws IOException {
        try (Store store = Store.open(file())) {
            store.begin(Invented.session(ANA, 3));
        }
        assertEquals(8, in(file()).size());
        assertEquals(List.of(), slips());
    }

    @Test
    void aChildWhoWasRemovedDoesNotComeBackByASlip() throws IOException {
        try (Store store = Store.open(file())) {
            assertEquals(List.of(ANA), store.allChildren());
            store.remove(ANA.id(), Instant.EPOCH);
            assertEquals(List.of(), slips(), "and a removal leaves no slip of the child");
        }
    }

    @Test
    void aRowThatWasNotWrittenToItsEndWasNeverSaidToBeKept() throws IOException {
        byte[] bytes = Files.readAllBytes(folder.resolve(KNOWN));
        // The third row is behind the head and two rows; its second half never came.
        Arrays.fill(bytes, 3 * 512 + 40, 4 * 512, (byte) 0);
        Files.write(folder.resolve(KNOWN), bytes);
        assertEquals(answers(5), in(file()));
    }

    @Test
    void aSlipThatIsStillPractisedOnIsLeftToItsProgram() throws IOException, InterruptedException {
        Process other =
                OwnProcess.of(Holding.class, folder.resolve(KNOWN).toString()).start();
        try {
            assertEquals('h', other.getInputStream().read());
            assertEquals(answers(3), in(file()));
            assertEquals(List.of(KNOWN, UNKNOWN), slips());
        } finally {
            other.toHandle().destroyForcibly();
            other.waitFor();
        }
        assertEquals(answers(6), in(file()));
    }

    /** A program of its own that holds a slip's lock until it is killed. */
    static final class Holding {
        private Holding() {}

        public static void main(String[] arguments) throws IOException {
            try (FileChannel channel = FileChannel.open(Path.of(arguments[0]), StandardOpenOption.WRITE);
                    FileLock lock = channel.lock()) {
                System.out.print(lock.isValid() ? 'h' : 'x');
                System.out.flush();
                System.exit(System.in.read());
            }
        }
    }

    @Test
    void aFileOfThatNameThatIsNoSlipIsLeftAsItIsAndAnEmptyOneGoes() throws IOException {
        Files.writeString(folder.resolve(KNOWN), "bread, milk");
        Files.write(folder.resolve(UNKNOWN), new byte[0]);
        assertEquals(answers(3), in(file()));
        assertEquals(List.of(KNOWN), slips());
        assertEquals("bread, milk", Files.readString(folder.resolve(KNOWN)));
    }

    @Test
    void verifySaysThatTheyAreThereAndLeavesThem() throws IOException {
        byte[] before = Files.readAllBytes(file());
        assertEquals(List.of(), Verification.of(file()));
        assertEquals(
                List.of("An earlier Fourfold left 3 slips with answers beside it; only all together are whole."
                        + " The next start takes them in, as fourfold children does."),
                InEnglish.problems(Verification.notes(file())));
        assertArrayEquals(before, Files.readAllBytes(file()));
        assertEquals(List.of(KNOWN, OF_BO, UNKNOWN), slips().stream().sorted().toList());
    }

    @Test
    void whoMergesTheFileGetsThemToo() throws IOException {
        Path other = folder.resolve("today.db");
        try (Store store = Store.open(other)) {
            assertEquals(6, Merge.of(store, file(), NOTHING).came().of(RowCounts.Kind.ANSWER));
        }
        assertEquals(answers(6), in(other));
        assertEquals(3, slips().size(), "the other file is only read");
    }

    @Test
    void whoSalvagesTheFileGetsThemToo() throws IOException {
        Path fresh = folder.resolve("saved.db");
        assertEquals(
                3,
                Salvage.of(file(), List.of(), fresh, n -> "Salvaged " + n)
                        .saved()
                        .of(RowCounts.Kind.ANSWER));
        assertFalse(FileHead.isLogged(fresh));
        assertEquals(answers(6), in(fresh));
    }

    @Test
    void whoRestoresABackupFindsThemAtTheNextStart() {
        Path backup = Backups.of(file()).named("by-hand").file();
        Restoration.of(file(), backup);
        assertEquals(answers(6), in(file()));
    }
}
