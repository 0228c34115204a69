// SPDX-License-Identifier: Apache-2.0
package fourfold.upkeep;

import fourfold.store.Journal;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.Arrays;
import java.util.BitSet;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import java.util.function.IntPredicate;
import org.jspecify.annotations.Nullable;

/**
 * Reads rows straight from a file's pages, each page for itself, so that one destroyed page costs only its own rows.
 *
 * <p>By the SQLite file format (sqlite.org/fileformat2.html, sections 1.3, 1.6 and 2.1): only leaf pages of tables hold
 * rows. No row of ours is long enough to run over to another page.
 */
final class LeafPages {
    /** Takes a row. */
    interface Each {
        void take(LeafRow row) throws SQLException;
    }

    private static final int USUAL_PAGE = 4096;
    private static final int FIRST_PAGE_STARTS_AT = 100;
    private static final int TABLE_LEAF = 13;
    private static final int LEAF_HEADER = 8;

    /** No table of ours has more; a row with more is passed over. */
    private static final int MOST_COLUMNS = 20;

    private static final int PAGE_SIZE_AT = 16;
    private static final int LOG_HEAD = 32;
    private static final int LOG_PAGE_SIZE_AT = 8;
    private static final int SALTS_AT = 16;
    private static final int FRAME_HEAD = 24;

    private final byte[] whole;
    private final byte[] log;

    /** Where in the log the last version of a page begins, by its number. */
    private final Map<Integer, Integer> newer;

    private final int size;
    private final BitSet met = new BitSet();

    private LeafPages(byte[] whole, byte[] log) {
        this.whole = whole;
        this.log = log;
        this.newer = newest(ByteBuffer.wrap(log));
        this.size = newer.isEmpty()
                ? pageSize(ByteBuffer.wrap(whole))
                : ByteBuffer.wrap(log).getInt(LOG_PAGE_SIZE_AT);
    }

    /** The pages of a file, each as the log beside the file has it last. */
    static LeafPages of(Path file) throws IOException {
        Path log = Journal.log(file);
        return new LeafPages(Files.readAllBytes(file), Journal.isHot(log) ? Files.readAllBytes(log) : new byte[0]);
    }

    /**
     * Hands over every row that can be made out.
     *
     * @param columns how many columns the wanted rows have
     */
    void read(IntPredicate columns, Advance advance, Each each) throws SQLException {
        int pages = (whole.length + size - 1) / size;
        int last = newer.keySet().stream().mapToInt(n -> n).max().orElse(0);
        OnePage page = new OnePage(columns, each);
        for (int number = 1; number <= Math.max(pages, last); number++) {
            Integer logged = newer.get(number);
            int at = (number - 1) * size;
            if (logged != null) {
                page.read(log, logged, number);
            } else if (number < pages) {
                page.read(whole, at, number);
            } else if (number == pages) {
                // The last may be cut off.
                page.read(Arrays.copyOfRange(whole, at, at + size), 0, number);
            }
            advance.to(number, Math.max(pages, last));
        }
    }

    /** Whether what was read so far holds a row of so many columns, wanted or not. */
    boolean met(int columns) {
        return met.get(columns);
    }

    /**
     * The last version of each page in a log (section 4): a head, and frames with the head's two salts, each a page with a
     * head of its own. Check sums are not asked: one wrong bit would cost all that came after it.
     */
    private static Map<Integer, Integer> newest(ByteBuffer log) {
        Map<Integer, Integer> newest = new TreeMap<>();
        Map<Integer, Integer> uncommitted = new TreeMap<>();
        int size = log.capacity() < LOG_HEAD ? 0 : log.getInt(LOG_PAGE_SIZE_AT);
        if (size < 512 || Integer.bitCount(size) != 1 || size > 65536) {
            return newest;
        }
        long salts = log.getLong(SALTS_AT);
        for (int at = LOG_HEAD; at + FRAME_HEAD + size <= log.capacity(); at += FRAME_HEAD + size) {
            if (log.getLong(at + 8) == salts) {
                uncommitted.put(log.getInt(at), at + FRAME_HEAD);
                if (log.getInt(at + 4) != 0) {
                    newest.putAll(uncommitted);
                    uncommitted.clear();
                }
            }
        }
        return newest;
    }

    private static int pageSize(ByteBuffer whole) {
        int said = whole.capacity() < PAGE_SIZE_AT + 2 ? 0 : whole.getShort(PAGE_SIZE_AT) & 0xffff;
        return said >= 512 && Integer.bitCount(said) == 1 ? said : USUAL_PAGE;
    }

    /** A place that moves on through one page at a time, and the rows in it. */
    private final class OnePage {
        private final IntPredicate columns;
        private final Each each;
        private final long[] kinds = new long[MOST_COLUMNS];
        private byte[] bytes = {};
        private int begin;
        private int at;

        OnePage(IntPredicate columns, Each each) {
            this.columns = columns;
            this.each = each;
        }

        /** Hands over the rows of the page with this number, which begins there. */
        void read(byte[] page, int from, int number) throws SQLException {
            bytes = page;
            begin = from;
            int start = number == 1 ? FIRST_PAGE_STARTS_AT : 0;
            if (at(start) != TABLE_LEAF) {
                return;
            }
            int cells = (at(start + 3) << 8) | at(start + 4);
            for (int i = 0; i < cells; i++) {
                int pointer = start + LEAF_HEADER + 2 * i;
                if (pointer + 2 > size) {
                    return;
                }
                @Nullable LeafRow row = null;
                try {
                    row = row((at(pointer) << 8) | at(pointer + 1));
                } catch (IndexOutOfBoundsException | IllegalArgumentException | CharacterCodingException e) {
                    // This row is destroyed; its neighbours may be whole.
                }
                if (row != null) {
                    each.take(row);
                }
            }
        }

        /** The byte at a place of the page. */
        private int at(int place) {
            if (place < 0 || place >= size) {
                throw new IndexOutOfBoundsException(place);
            }
            return bytes[begin + place] & 0xff;
        }

        /** A number of one to nine bytes, seven bits each but the ninth, which has eight. */
        private long varint() {
            long value = 0;
            for (int i = 0; i < 8; i++) {
                int next = at(at++);
                value = (value << 7) | (next & 0x7f);
                if (next < 0x80) {
                    return value;
                }
            }
            return (value << 8) | at(at++);
        }

        private long whole(int length) {
            long value = (byte) at(at++);
            for (int i = 1; i < length; i++) {
                value = (value << 8) | at(at++);
            }
            return value;
        }

        private String text(int length) throws CharacterCodingException {
            int first = begin + Objects.checkFromIndexSize(at, length, size);
            at += length;
            for (int i = first; i < first + length; i++) {
                if (bytes[i] < 0) {
                    return StandardCharsets.UTF_8
                            .newDecoder()
                            .decode(ByteBuffer.wrap(bytes, first, length))
                            .toString();
                }
            }
            return new String(bytes, first, length, StandardCharsets.US_ASCII);
        }

        /** The row that begins there; none if it has not as many columns as are wanted. */
        private @Nullable LeafRow row(int start) throws CharacterCodingException {
            at = start;
            long payload = varint();
            long number = varint();
            int first = at;
            if (payload < 1 || first + payload > size) {
                throw new IndexOutOfBoundsException("the row does not end in its page");
            }
            long headerEnd = first + varint();
            if (headerEnd > first + payload) {
                throw new IndexOutOfBoundsException("the row's head does not end in it");
            }
            int count = 0;
            while (at < headerEnd) {
                kinds[count++] = varint();
            }
            met.set(count);
            if (!columns.test(count)) {
                return null;
            }
            @Nullable Object[] values = new Object[count];
            for (int i = 0; i < count; i++) {
                values[i] = value(kinds[i]);
            }
            if (at != first + payload) {
                throw new IllegalArgumentException("the row's values do not fill it");
            }
            return new LeafRow(number, values);
        }

        private @Nullable Object value(long kind) throws CharacterCodingException {
            if (kind == 0) {
                return null;
            }
            if (kind == 8 || kind == 9) {
                return kind - 8;
            }
            if (kind >= 1 && kind <= 6) {
                return whole(kind <= 4 ? (int) kind : kind == 5 ? 6 : 8);
            }
            if (kind >= 13 && kind % 2 == 1 && kind < 2L * USUAL_PAGE * 16) {
                return text((int) (kind - 13) / 2);
            }
            throw new IllegalArgumentException("no table of ours holds such a value");
        }
    }
}
