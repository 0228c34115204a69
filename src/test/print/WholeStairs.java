// SPDX-License-Identifier: Apache-2.0
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.LinkedHashSet;
import java.util.Set;
import java.util.UUID;

/**
 * Prints the answers of an invented child whose stairs are whole, as {@code fourfold import answers} reads them: every
 * question of every family three times on the first day, twice on the second, once on the third, and once after a week's
 * rest, all right and quick.
 */
final class WholeStairs {
    private static final int[] DAYS = {0, 0, 0, 1, 1, 2, 10};
    private static final long FIRST = Instant.parse("2026-03-02T08:00:00Z").getEpochSecond();
    private static final int LARGEST = 10;

    private static int last = -1;
    private static int position;

    private WholeStairs() {}

    public static void main(String[] words) {
        System.out.print("id,child,drill,position,asked_at,zone_offset_min,purpose,operation,left,right,typed,correct,"
                + "first_key_ms,whole_ms,erasures,surface,pace\r\n");
        for (int day : DAYS) {
            for (int low = 1; low <= LARGEST; low++) {
                for (int high = low; high <= LARGEST; high++) {
                    family(day, low, high);
                }
            }
        }
    }

    private static void family(int day, int low, int high) {
        Set<String> asked = new LinkedHashSet<>();
        asked.add("multiply," + low + "," + high + "," + low * high);
        asked.add("multiply," + high + "," + low + "," + low * high);
        asked.add("divide," + low * high + "," + low + "," + high);
        asked.add("divide," + low * high + "," + high + "," + low);
        asked.forEach(question -> answer(day, question));
    }

    private static void answer(int day, String question) {
        position = day == last ? position + 1 : 1;
        last = day;
        UUID drill = new UUID(2, day);
        UUID id = UUID.nameUUIDFromBytes((drill + "/" + position).getBytes(StandardCharsets.UTF_8));
        Instant at = Instant.ofEpochSecond(FIRST + day * 86_400L + 4L * position);
        System.out.printf(
                "%s,Pip,%s,%d,%s.000Z,0,practise,%s,1,1000,1500,0,terminal,\r\n",
                id, drill, position, at.toString().replace("Z", ""), question);
    }
}
