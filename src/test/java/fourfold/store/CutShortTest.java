// SPDX-License-Identifier: Apache-2.0
package fourfold.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Guards against four faults that disks have and that cost a family its file, or went by untold. */
class CutShortTest {
    private static final int PAGE = 4096;
    private static final int SECTOR = 512;
    private static final int NONCE = 77;

    @TempDir
    private Path folder = Path.of("");

    private Path file() {
        return folder.resolve("family.db");
    }

    /** A rollback journal (sqlite.org/fileformat2.html, section 3) that was forced when the power went. */
    private void layJournal(int pagesBefore, byte[]... firstPage) throws IOException {
        ByteBuffer journal = ByteBuffer.allocate(SECTOR + firstPage.length * (PAGE + 8));
        journal.putLong(0xd9d505f920a163d7L).putInt(firstPage.length).putInt(NONCE);
        journal.putInt(pagesBefore).putInt(SECTOR).putInt(PAGE);
        journal.position(SECTOR);
        for (byte[] page : firstPage) {
            int sum = NONCE;
            for (int i = PAGE - 200; i > 0; i -= 200) {
                sum += page[i] & 0xff;
            }
            journal.putInt(1).put(page).putInt(sum);
        }
        Files.write(Journal.rollback(file()), journal.array());
    }

    @Test
    void aFirstStartThatIsCutShortIsBegunAnewAndTheFileIsMarkedAsOurs() throws IOException, SQLException {
        try (Connection connection = Connections.plain(file())) {
            Connections.mark(connection);
        }
        assertEquals(FileHead.OURS, FileHead.of(file()));
        layJournal(0);
        for (int start = 1; start <= 2; start++) {
            try (Store store = Store.open(file())) {
                assertEquals(List.of(), store.children(), "start " + start);
            }
            assertEquals(FileHead.OURS, FileHead.of(file()), "start " + start);
        }
    }

    @Test
    void aFirstPageThatWasHalfWrittenIsMadeWholeFromTheJournalBesideIt() throws IOException {
        MadeOnce.EMPTY.at(file());
        try (Store store = Store.open(file())) {
            store.add(Invented.child(1, "Ana"));
        }
        byte[] whole = Files.readAllBytes(file());
        layJournal(whole.length / PAGE, Arrays.copyOf(whole, PAGE));
        Arrays.fill(whole, 0, SECTOR, (byte) 0);
        Files.write(file(), whole);
        assertEquals(FileHead.NO_DATABASE, FileHead.of(file()));
        try (Store store = Store.open(file())) {
            assertEquals(List.of(Invented.child(1, "Ana")), store.children());
        }
    }

    @Test
    void aFolderThatCannotBeForcedIsTold() {
        assertThrows(
                IOException.class,
                () -> DatabaseCopy.forceFolder(folder.resolve("gone").resolve("family.db")));
    }

    @Test
    void tablesThatCannotBeMadeForAMomentAreToldAsTheDatabasesFailure() {
        Schema nowhere = new Schema(List.of("classpath:fourfold/nowhere"), Schema.TODAY.steps());
        assertThrows(SQLException.class, () -> SchemaObjects.madeBy(nowhere, 1));
    }
}
