// SPDX-License-Identifier: Apache-2.0
package fourfold.commands;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;

/** What must hold of the rows of one drill, looked at through the file's own view. */
final class DrillRows {
    private record Row(String purpose, String asked, String outcome) {
        boolean isFromMemory() {
            return List.of("practise", "again", "probe").contains(purpose);
        }

        /** Asked before it was taught, and not known: its inverse waits for the lesson. */
        boolean isTriedAndMissed() {
            return purpose.equals("probe") && !outcome.equals("right");
        }

        boolean isProduct() {
            return asked.contains(" x ");
        }

        /** The numbers of the fact, smallest first: the name of its family. */
        List<Integer> family() {
            String[] numbers = asked.split(" [x/] ");
            int left = Integer.parseInt(numbers[0]);
            int right = Integer.parseInt(numbers[1]);
            return isProduct()
                    ? List.of(Math.min(left, right), Math.max(left, right))
                    : List.of(Math.min(right, left / right), Math.max(right, left / right));
        }
    }

    private DrillRows() {}

    private static List<Row> rows(Path file) {
        return Rows.of(file, "SELECT purpose, asked, outcome FROM answer_log ORDER BY position").stream()
                .map(row -> new Row(row.get(0), row.get(1), row.get(2)))
                .toList();
    }

    /** Numbers to copy come first, what is in view is typed right, and a slip from memory is put right at once. */
    static void checkPurposes(Path file) {
        List<Row> rows = rows(file);
        int copies = 0;
        while (rows.get(copies).purpose().equals("copy")) {
            copies++;
        }
        assertTrue(copies >= 4, "copies: " + copies);
        assertTrue(rows.stream().skip(copies).noneMatch(r -> r.purpose().equals("copy")));
        assertTrue(rows.stream().anyMatch(Row::isFromMemory));
        for (int i = 0; i + 1 < rows.size(); i++) {
            Row row = rows.get(i);
            if (row.isFromMemory() && !row.outcome().equals("right")) {
                assertEquals(new Row("introduce", row.asked(), "right"), rows.get(i + 1));
            }
        }
    }

    /** Every product asked from memory, and not only tried, is followed by a division of its family, and never within two questions. */
    static void checkInverses(Path file) {
        List<Row> asked = rows(file).stream().filter(Row::isFromMemory).toList();
        for (int i = 0; i < asked.size(); i++) {
            Row product = asked.get(i);
            if (product.isProduct() && !product.isTriedAndMissed()) {
                int at = i;
                while (++at < asked.size()
                        && (asked.get(at).isProduct() || !asked.get(at).family().equals(product.family()))) {
                    // Looks on.
                }
                assertTrue(at < asked.size(), "no inverse of " + product + " in " + asked);
                assertTrue(at - i >= 3, "too soon after " + product + " in " + asked);
            }
        }
    }

    /** Times are those of a quick typist, and belong together. */
    static void checkTimes(Path file) {
        List<List<String>> times = Rows.of(file, "SELECT COALESCE(first_key_ms, whole_ms), whole_ms FROM answer_log");
        for (List<String> row : times) {
            int first = Integer.parseInt(row.get(0));
            int whole = Integer.parseInt(row.get(1));
            assertTrue(first >= 0 && first <= whole && whole < 20_000, "times " + row);
        }
        String none = "SELECT position FROM answer_log WHERE (typed IS NULL) <> (first_key_ms IS NULL)";
        assertEquals(List.of(), Rows.column(file, none));
        String showMe = "SELECT position FROM answer_log WHERE typed IS NULL AND whole_ms < 1500";
        assertEquals(List.of(), Rows.column(file, showMe));
    }
}
