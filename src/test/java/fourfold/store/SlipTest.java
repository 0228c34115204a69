package fourfold.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.facts.Answer;
import fourfold.facts.Child;
import fourfold.facts.Moment;
import fourfold.facts.Sitting;
import java.io.BufferedReader;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** Guards against an answer that was kept on a slip and never comes into the file, comes twice, or comes changed. */
class SlipTest {
    private static final Duration SHORT = Duration.ofMillis(50);
    private static final Child MINA = Invented.child(1, "Mina");
    private static final Sitting DRILL = Invented.sitting(MINA, 1);

    @TempDir
    private Path folder;

    private Path file() {
        return folder.resolve("family.db");
    }

    @BeforeEach
    void addMina() {
        try (Store store = Store.open(file())) {
            store.add(MINA);
        }
    }

    private static List<Answer> answers(int from, int to) {
        return IntStream.rangeClosed(from, to)
                .mapToObj(position -> Answers.asKept(Invented.answer(DRILL, position)))
                .toList();
    }

    private List<Answer> inTheFile() {
        try (Store store = Store.open(file())) {
            return store.answers(MINA.id());
        }
    }

    private List<String> slips() throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.map(p -> p.getFileName().toString())
                    .filter(name -> name.contains("slip"))
                    .toList();
        }
    }

    @Test
    void anyAnswerComesBackFromItsRowAsItWas() {
        for (Answer answer : answers(1, 3_000)) {
            assertEquals(Optional.of(answer), SlipRow.read(SlipRow.of(answer)));
        }
    }

    @Test
    void aRowOfWhichAnyBitIsWrongIsNoRow() {
        byte[] row = SlipRow.of(answers(7, 7).get(0)).array();
        for (int bit = 0; bit < 8 * row.length; bit++) {
            row[bit / 8] ^= (byte) (1 << bit % 8);
            assertEquals(Optional.empty(), SlipRow.read(ByteBuffer.wrap(row)), "bit " + bit);
            row[bit / 8] ^= (byte) (1 << bit % 8);
        }
        assertEquals(Optional.empty(), SlipRow.read(ByteBuffer.allocate(SlipRow.LENGTH)));
        assertEquals(Optional.empty(), SlipRow.read(ByteBuffer.wrap(row, 0, 100)));
    }

    @Test
    void whatIsKeptIsOnTheSlipAndThenInTheFileAndTheSlipIsTakenAway() throws IOException {
        try (Store store = Store.open(file())) {
            store.beginAtTheKeyboard(DRILL);
            answers(1, 3).forEach(store::keep);
            assertEquals(List.of("family.db-slip-" + DRILL.id()), slips());
            assertEquals(List.of(), inTheFile(), "what is on a living slip is its own program's business");
            store.settle();
            assertEquals(answers(1, 3), inTheFile());
            store.keep(answers(4, 4).get(0));
            assertEquals(answers(1, 4), store.answers(MINA.id()), "who reads sees everything");
            store.endDrill();
            assertEquals(List.of(), slips());
        }
        assertEquals(answers(1, 4), inTheFile());
    }

    @Test
    void closingPutsEverythingIntoTheFile() throws IOException {
        try (Store store = Store.open(file())) {
            store.beginAtTheKeyboard(DRILL);
            answers(1, 2).forEach(store::keep);
        }
        assertEquals(List.of(), slips());
        assertEquals(answers(1, 2), inTheFile());
    }

    @Test
    void moreThanASlipHoldsGoesIntoTheFileInOrder() {
        List<Answer> many = answers(1, 3 * SlipFile.ROWS + 5);
        try (Store store = Store.open(file())) {
            store.beginAtTheKeyboard(DRILL);
            many.forEach(store::keep);
        }
        assertEquals(many, inTheFile());
    }

    @Test
    void aProgramThatIsKilledLeavesASlipAndTheNextStartPutsItIn() throws IOException, InterruptedException {
        Process other = OwnProcess.of(Practising.class, file().toString()).start();
        try (BufferedReader said = other.inputReader(StandardCharsets.US_ASCII)) {
            assertEquals("kept", said.readLine());
            assertEquals(List.of(), inTheFile(), "the other program lives and will put them in itself");
            assertEquals(1, slips().size());
            other.toHandle().destroyForcibly();
            assertTrue(other.waitFor(10, TimeUnit.SECONDS));
        }
        assertEquals(answers(1, 3), inTheFile());
        assertEquals(List.of(), slips());
        assertEquals(answers(1, 3), inTheFile(), "and once only");
    }

    /** A program of its own that keeps three answers on a slip and stays until it is killed. */
    static final class Practising {
        private Practising() {}

        public static void main(String[] arguments) throws IOException {
            Store store = Store.open(Path.of(arguments[0]));
            store.beginAtTheKeyboard(DRILL);
            answers(1, 3).forEach(store::keep);
            System.out.println("kept");
            int end = System.in.read();
            System.exit(end);
        }
    }

    /** What a program leaves that is killed or loses its power, here with the last row cut short on its way. */
    private void leave(int answers) throws IOException {
        SlipFile slip = SlipFile.make(file(), DRILL.id());
        for (Answer answer : answers(1, answers)) {
            slip.write(answer.position() - 1, answer);
        }
        slip.leave();
    }

    private Path slip() {
        return folder.resolve("family.db-slip-" + DRILL.id());
    }

    @Test
    void aRowThatWasNotWrittenToItsEndWasNeverSaidToBeKept() throws IOException {
        try (Store store = Store.open(file())) {
            store.begin(DRILL);
        }
        leave(3);
        byte[] bytes = Files.readAllBytes(slip());
        // The third row is behind the head and two rows; its second half never came.
        java.util.Arrays.fill(bytes, 3 * SlipRow.LENGTH + 40, 4 * SlipRow.LENGTH, (byte) 0);
        Files.write(slip(), bytes);
        assertEquals(answers(1, 2), inTheFile());
        assertEquals(List.of(), slips());
    }

    @Test
    void rowsThatAreInTheFileAlreadyChangeNothing() throws IOException {
        try (Store store = Store.open(file())) {
            store.begin(DRILL);
            answers(1, 3).forEach(store::keep);
        }
        leave(2);
        assertEquals(answers(1, 3), inTheFile());
        assertEquals(List.of(), slips());
    }

    @Test
    void aSlipOfADrillThatTheFileDoesNotKnowWaitsUntilItDoes() throws IOException {
        leave(2);
        assertEquals(List.of(), inTheFile());
        assertEquals(1, slips().size(), "an older backup was put in place: nothing is thrown away");
        try (Store store = Store.open(file())) {
            store.begin(DRILL);
        }
        assertEquals(answers(1, 2), inTheFile());
        assertEquals(List.of(), slips());
    }

    @Test
    void aFileOfThatNameThatIsNoSlipIsLeftAsItIs() throws IOException {
        Files.writeString(slip(), "bread, milk");
        assertEquals(List.of(), inTheFile());
        assertEquals("bread, milk", Files.readString(slip()));
        try (Store store = Store.open(file())) {
            store.beginAtTheKeyboard(DRILL);
            answers(1, 2).forEach(store::keep);
        }
        assertEquals(answers(1, 2), inTheFile(), "a drill without a slip keeps its answers in the file");
        assertEquals("bread, milk", Files.readString(slip()));
    }

    @Test
    void aSlipThatWasBarelyBegunIsTakenAway() throws IOException {
        Files.createFile(slip());
        assertEquals(List.of(), inTheFile());
        assertEquals(List.of(), slips());
    }

    /** Does something while another program is writing to the file. */
    private void whileHeld(Runnable work) throws SQLException {
        try (Connection other = ReadOnly.checking(file());
                Statement statement = other.createStatement()) {
            statement.execute("PRAGMA query_only = 0");
            statement.execute("BEGIN IMMEDIATE");
            work.run();
            statement.execute("ROLLBACK");
        }
    }

    @Test
    void aFileThatAnotherProgramHoldsKeepsNoAnswerWaiting() throws SQLException, IOException {
        try (Store store = Store.open(file(), SHORT)) {
            store.beginAtTheKeyboard(DRILL);
            whileHeld(() -> {
                store.keep(answers(1, 1).get(0));
                String words = String.valueOf(
                        assertThrows(StoreException.class, store::settle).getMessage());
                assertTrue(words.startsWith("could not keep the answer in " + file() + ": "), words);
            });
            store.keep(answers(2, 2).get(0));
        }
        assertEquals(answers(1, 2), inTheFile());
        assertEquals(List.of(), slips());
    }

    @Test
    void whatCanNotBePutInAtTheEndIsSaidToStandOnTheSlip() throws SQLException, IOException {
        Store store = Store.open(file(), SHORT);
        store.beginAtTheKeyboard(DRILL);
        whileHeld(() -> {
            store.keep(answers(1, 1).get(0));
            String words = String.valueOf(
                    assertThrows(StoreException.class, store::close).getMessage());
            assertTrue(
                    words.endsWith("the last answers stand on " + slip() + " and go into the file at the next start"),
                    words);
        });
        assertEquals(1, slips().size());
        assertEquals(answers(1, 1), inTheFile());
        assertEquals(List.of(), slips());
    }

    @Test
    void theSameAnswerTwiceChangesNothingAndAnotherInItsPlaceIsRefused() {
        try (Store store = Store.open(file())) {
            store.beginAtTheKeyboard(DRILL);
            Answer first = answers(1, 1).get(0);
            store.keep(first);
            store.keep(first);
            Answer other = Invented.answer(Invented.sitting(MINA, 1), 1 + 35);
            Answer inItsPlace = new Answer(
                    new Answer.Place(other.child(), other.drill(), 1),
                    other.asked(),
                    other.purpose(),
                    other.prompt(),
                    other.typing(),
                    other.surface());
            assertThrows(StoreException.class, () -> store.keep(inItsPlace));
            assertEquals(List.of(first), store.answers(MINA.id()));
        }
    }

    @Test
    void anAnswerOfAFileThatWasMovedIsRefusedAsWithoutASlip() throws IOException {
        try (Store store = Store.open(file())) {
            store.beginAtTheKeyboard(DRILL);
            Files.move(file(), folder.resolve("elsewhere.db"));
            StoreException refused = assertThrows(
                    StoreException.class, () -> store.keep(answers(1, 1).get(0)));
            assertTrue(String.valueOf(refused.getMessage()).contains("the file was moved, removed or replaced"));
            Files.move(folder.resolve("elsewhere.db"), file());
        }
    }

    @Test
    void aChildThatIsRemovedLeavesNoAnswerOnASlip() throws IOException {
        Child ivo = Invented.child(2, "Ivo");
        Sitting his = Invented.sitting(ivo, 2);
        try (Store store = Store.open(file())) {
            // What was left of drills that this file does not know: one of hers, and one of his.
            leave(2);
            SlipFile other = SlipFile.make(file(), his.id());
            other.write(0, Answers.asKept(Invented.answer(his, 1)));
            other.leave();
            store.beginAtTheKeyboard(Invented.sitting(MINA, 3));
            store.keep(Answers.asKept(Invented.answer(Invented.sitting(MINA, 3), 1)));
            store.remove(MINA.id(), Instant.EPOCH);
            assertEquals(List.of("family.db-slip-" + his.id()), slips());
        }
        leave(1);
        assertEquals(List.of(), inTheFile(), "nor does she come back by one that turns up later");
        assertEquals(List.of("family.db-slip-" + his.id()), slips());
    }

    @Test
    void aSlipThatSomebodyDeletedIsNotWrittenTo() throws IOException {
        try (Store store = Store.open(file())) {
            store.beginAtTheKeyboard(DRILL);
            store.keep(answers(1, 1).get(0));
            store.settle();
            Files.delete(slip());
            store.keep(answers(2, 2).get(0));
            assertEquals(answers(1, 2), inTheFile(), "it went into the file at once");
        }
    }

    @Test
    void anAnswerThatTheFileCanNotHoldNeverStandsInTheWayOfTheOthers() {
        Answer first = answers(1, 1).get(0);
        Answer second = answers(2, 2).get(0);
        Answer ofNoTime = new Answer(
                new Answer.Place(second.child(), second.drill(), 2),
                new Moment(Instant.ofEpochMilli(-1), second.zoneOffsetMinutes()),
                second.purpose(),
                second.prompt(),
                second.typing(),
                second.surface());
        try (Store store = Store.open(file())) {
            store.beginAtTheKeyboard(DRILL);
            store.keep(first);
            assertThrows(StoreException.class, () -> store.keep(ofNoTime));
            store.keep(second);
        }
        assertEquals(List.of(first, second), inTheFile());
    }

    @Test
    @DisabledOnOs(OS.WINDOWS)
    void aSlipIsFoundByWhateverNameTheFileIsOpened() throws IOException {
        Path other = Files.createDirectory(folder.resolve("elsewhere")).resolve("ours.db");
        Files.createSymbolicLink(other, file());
        try (Store store = Store.open(file())) {
            store.begin(DRILL);
        }
        leave(2);
        try (Store store = Store.open(other)) {
            assertEquals(answers(1, 2), store.answers(MINA.id()));
        }
        assertEquals(List.of(), slips());
    }

    @Test
    void aCopyOfTheOneFileHoldsEveryAnswerThatWasSettled() throws IOException {
        Path copy = folder.resolve("copy.db");
        try (Store store = Store.open(file())) {
            store.beginAtTheKeyboard(DRILL);
            answers(1, 5).forEach(store::keep);
            store.settle();
            Files.copy(file(), copy);
        }
        try (Store store = Store.open(copy)) {
            assertEquals(answers(1, 5), store.answers(MINA.id()));
        }
    }
}
