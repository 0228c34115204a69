package fourfold.upkeep;

import fourfold.store.Journal;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.IntPredicate;

/**
 * Reads rows straight from a file's pages, each page for itself, so that one destroyed page costs only its own rows.
 *
 * <p>By the SQLite file format (sqlite.org/fileformat2.html, sections 1.3, 1.6 and 2.1): only leaf pages of tables hold
 * rows. No row of ours is long enough to run over to another page.
 */
final class LeafPages {
    /**
     * A row as it stands in its page.
     *
     * @param number its number in the table
     * @param values a Long or a String each, or nothing
     */
    record Row(long number, List<Optional<Object>> values) {}

    /** Takes a row. */
    interface Each {
        void take(Row row) throws SQLException;
    }

    private static final int USUAL_PAGE = 4096;
    private static final int FIRST_PAGE_STARTS_AT = 100;
    private static final int TABLE_LEAF = 13;
    private static final int LEAF_HEADER = 8;
    private static final int PAGE_SIZE_AT = 16;
    private static final int LOG_HEAD = 32;
    private static final int SALTS_AT = 16;
    private static final int FRAME_HEAD = 24;

    private final ByteBuffer whole;
    private final Map<Integer, ByteBuffer> newer;
    private final int size;

    private LeafPages(ByteBuffer whole, Map<Integer, ByteBuffer> newer) {
        this.whole = whole;
        this.newer = newer;
        this.size = newer.values().stream()
                .mapToInt(ByteBuffer::capacity)
                .findFirst()
                .orElse(pageSize(whole));
    }

    /** The pages of a file, each as the log beside the file has it last. */
    static LeafPages of(Path file) throws IOException {
        Path log = Journal.log(file);
        return new LeafPages(
                ByteBuffer.wrap(Files.readAllBytes(file)),
                Journal.isHot(log) ? newest(ByteBuffer.wrap(Files.readAllBytes(log))) : Map.of());
    }

    /**
     * Hands over every row that can be made out.
     *
     * @param columns how many columns the wanted rows have
     */
    void read(IntPredicate columns, Advance advance, Each each) throws SQLException {
        int pages = (whole.capacity() + size - 1) / size;
        int last = newer.keySet().stream().mapToInt(n -> n).max().orElse(0);
        for (int number = 1; number <= Math.max(pages, last); number++) {
            ByteBuffer page = newer.get(number);
            if (page == null && number <= pages) {
                int at = (number - 1) * size;
                page = ByteBuffer.allocate(size);
                page.put(0, whole, at, Math.min(size, whole.capacity() - at));
            }
            if (page != null) {
                new OnePage(page, columns).rows(number == 1 ? FIRST_PAGE_STARTS_AT : 0, each);
            }
            advance.to(number, Math.max(pages, last));
        }
    }

    /**
     * The last version of each page in a log (section 4): a head, and frames with the head's two salts, each a page with a
     * head of its own. Check sums are not asked: one wrong bit would cost all that came after it.
     */
    private static Map<Integer, ByteBuffer> newest(ByteBuffer log) {
        Map<Integer, ByteBuffer> newest = new TreeMap<>();
        Map<Integer, ByteBuffer> uncommitted = new TreeMap<>();
        int size = log.capacity() < LOG_HEAD ? 0 : log.getInt(8);
        if (size < 512 || Integer.bitCount(size) != 1 || size > 65536) {
            return newest;
        }
        long salts = log.getLong(SALTS_AT);
        for (int at = LOG_HEAD; at + FRAME_HEAD + size <= log.capacity(); at += FRAME_HEAD + size) {
            if (log.getLong(at + 8) == salts) {
                uncommitted.put(log.getInt(at), log.slice(at + FRAME_HEAD, size));
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

    /** One page, and the rows in it. */
    private static final class OnePage {
        private final ByteBuffer page;
        private final IntPredicate columns;

        OnePage(ByteBuffer page, IntPredicate columns) {
            this.page = page;
            this.columns = columns;
        }

        void rows(int start, Each each) throws SQLException {
            if (page.get(start) != TABLE_LEAF) {
                return;
            }
            int cells = page.getShort(start + 3) & 0xffff;
            for (int i = 0; i < cells; i++) {
                int pointer = start + LEAF_HEADER + 2 * i;
                if (pointer + 2 > page.capacity()) {
                    return;
                }
                try {
                    Optional<Row> row = row(page.getShort(pointer) & 0xffff);
                    if (row.isPresent()) {
                        each.take(row.get());
                    }
                } catch (IndexOutOfBoundsException | IllegalArgumentException | CharacterCodingException e) {
                    // This row is destroyed; its neighbours may be whole.
                }
            }
        }

        /** A place that moves on through the page. */
        private final class Reader {
            private int at;

            Reader(int at) {
                this.at = at;
            }

            /** A number of one to nine bytes, seven bits each but the ninth, which has eight. */
            long varint() {
                long value = 0;
                for (int i = 0; i < 8; i++) {
                    byte next = page.get(at++);
                    value = (value << 7) | (next & 0x7f);
                    if (next >= 0) {
                        return value;
                    }
                }
                return (value << 8) | (page.get(at++) & 0xff);
            }

            long whole(int bytes) {
                long value = page.get(at);
                for (int i = 0; i < bytes; i++) {
                    value = i == 0 ? page.get(at++) : (value << 8) | (page.get(at++) & 0xff);
                }
                return value;
            }

            String text(int length) throws CharacterCodingException {
                String text = StandardCharsets.UTF_8
                        .newDecoder()
                        .decode(page.slice(at, length))
                        .toString();
                at += length;
                return text;
            }
        }

        private Optional<Row> row(int start) throws CharacterCodingException {
            Reader reader = new Reader(start);
            long payload = reader.varint();
            long number = reader.varint();
            int begin = reader.at;
            if (payload < 1 || begin + payload > page.capacity()) {
                throw new IndexOutOfBoundsException("the row does not end in its page");
            }
            long headerEnd = begin + reader.varint();
            if (headerEnd > begin + payload) {
                throw new IndexOutOfBoundsException("the row's head does not end in it");
            }
            List<Long> kinds = new ArrayList<>();
            while (reader.at < headerEnd) {
                kinds.add(reader.varint());
            }
            if (!columns.test(kinds.size())) {
                return Optional.empty();
            }
            List<Optional<Object>> values = new ArrayList<>(kinds.size());
            for (long kind : kinds) {
                values.add(value(reader, kind));
            }
            if (reader.at != begin + payload) {
                throw new IllegalArgumentException("the row's values do not fill it");
            }
            return Optional.of(new Row(number, values));
        }

        private static Optional<Object> value(Reader reader, long kind) throws CharacterCodingException {
            if (kind == 0) {
                return Optional.empty();
            }
            if (kind == 8 || kind == 9) {
                return Optional.of(kind - 8);
            }
            if (kind >= 1 && kind <= 6) {
                return Optional.of(reader.whole(kind <= 4 ? (int) kind : kind == 5 ? 6 : 8));
            }
            if (kind >= 13 && kind % 2 == 1 && kind < 2L * USUAL_PAGE * 16) {
                return Optional.of(reader.text((int) (kind - 13) / 2));
            }
            throw new IllegalArgumentException("no table of ours holds such a value");
        }
    }
}
