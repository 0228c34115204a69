// SPDX-License-Identifier: Apache-2.0
package fourfold.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.log.Answer;
import fourfold.log.Child;
import fourfold.log.DrillSession;
import fourfold.log.Problem;
import fourfold.log.Reason;
import fourfold.log.RecordsFailure;
import java.nio.ByteBuffer;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Guards against a value of an answer that became another possible one, and is believed. */
class AnswerValuesTest {
    private static final Child ANA = Invented.child(1, "Ana");
    private static final DrillSession SESSION = Invented.session(ANA, 1);

    @TempDir
    private Path folder = Path.of("");

    /** The sum of the written form, bit by bit with the reversed polynomial 82f63b78 (RFC 3720, section 12.1). */
    private static int sum(byte... bytes) {
        int sum = -1;
        for (byte one : bytes) {
            sum ^= one & 0xff;
            for (int bit = 0; bit < 8; bit++) {
                sum = (sum >>> 1) ^ (0x82f63b78 & -(sum & 1));
            }
        }
        return ~sum;
    }

    @Test
    void theChecksumIsThatOfTheWrittenForm() {
        // RFC 3720, appendix B.4: 32 bytes of zeroes, and 32 bytes from 0 to 31.
        assertEquals(0x8a9136aa, sum(new byte[32]));
        ByteBuffer rising = ByteBuffer.allocate(32);
        for (byte i = 0; i < 32; i++) {
            rising.put(i);
        }
        assertEquals(0x46dd794e, sum(rising.array()));
        UUID drill = new UUID(0x0123456789abcdefL, 0xfedcba9876543210L);
        AnswerValues values = new AnswerValues("42", 3, 1_700_000_000_000L, -210, 2, 1, 6, 7, 900, 1200, 1, 2, -1);
        ByteBuffer form = ByteBuffer.allocate(16 + 12 * 8 + 2);
        form.putLong(0x0123456789abcdefL).putLong(0xfedcba9876543210L);
        for (long number : new long[] {3, 1_700_000_000_000L, -210, 2, 1, 6, 7, 900, 1200, 1, 2, -1}) {
            form.putLong(number);
        }
        form.put((byte) '4').put((byte) '2');
        assertEquals(sum(form.array()), values.checksum(drill));
        assertNotEquals(values.checksum(drill), values.checksum(new UUID(0, 0)));
    }

    private Store filled() {
        Store store = Store.open(MadeOnce.EMPTY.at(folder.resolve("family.db")));
        store.add(ANA);
        store.keepAll(
                List.of(SESSION, Invented.session(ANA, 2)),
                List.of(
                        Invented.answer(SESSION, 1),
                        Invented.answer(SESSION, 2),
                        Invented.answer(SESSION, 3),
                        Invented.answer(SESSION, 7)));
        return store;
    }

    private static boolean change(Connection connection, String sql) throws SQLException {
        Connections.run(connection, sql);
        return true;
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "position = 9",
                "asked_at = asked_at + 1",
                "zone_offset_min = zone_offset_min + 60",
                "purpose = 4",
                "operation = 3 - operation, left_number = 6, right_number = 3",
                "left_number = CASE operation WHEN 1 THEN 11 - left_number ELSE right_number END",
                "typed = '12'",
                "typed = NULL",
                "first_key_ms = 777",
                "whole_ms = 7777",
                "erasures = erasures + 1",
                "surface = 4",
                "drill_nr = 2",
                "checksum = checksum + 1"
            })
    void anyOtherValueThatIsPossibleIsRefused(String set) {
        try (Store store = filled()) {
            store.database()
                    .write(
                            RecordsFailure.Task.KEEP_ANSWER,
                            c -> change(c, "UPDATE answer SET " + set + " WHERE drill_nr = 1 AND position = 2"));
            RecordsFailure told = assertThrows(RecordsFailure.class, () -> store.answers(ANA.id()));
            assertEquals(Reason.ANSWER_CHANGED, told.problem().reason());
        }
    }

    @Test
    void aPaceThatBecameAnotherIsRefusedAndARowOfAnEarlierProgramIsTaken() {
        try (Store store = filled()) {
            Set<Answer> all = new HashSet<>(store.answers(ANA.id()));
            store.database()
                    .write(RecordsFailure.Task.KEEP_ANSWER, c -> change(c, "UPDATE answer SET checksum = NULL"));
            assertEquals(all, new HashSet<>(store.answers(ANA.id())));
        }
        try (Store store = Store.open(folder.resolve("family.db"))) {
            store.keep(Invented.answer(SESSION, 15));
            store.database()
                    .write(
                            RecordsFailure.Task.KEEP_ANSWER,
                            c -> change(c, "UPDATE answer SET pace = 3 - pace WHERE position = 15"));
            assertThrows(RecordsFailure.class, () -> store.answers(ANA.id()));
        }
    }

    /** What SQLite's check of the pages says, with its numbers of errors (sqlite.org/rescode.html). */
    @ParameterizedTest
    @CsvSource({
        "Tree 5 page 7: unable to get the page. error code=266, true",
        "Tree 5 page 7: unable to get the page. error code=10, true",
        "Tree 5 page 7: unable to get the page. error code=522, false",
        "Tree 5 page 7: unable to get the page. error code=11, false",
        "Tree 5 page 7: btreeInitPage() returns error code 11, false"
    })
    void aPageThatCannotBeReadIsTheDisksFaultAndNoDamage(String line, boolean unread) {
        Optional<Problem> told = Failure.unread(List.of("*** in database main ***\n" + line));
        assertEquals(unread, told.isPresent());
        assertTrue(told.stream().allMatch(p -> p.reason() == Reason.DISK_FAULT));
    }
}
