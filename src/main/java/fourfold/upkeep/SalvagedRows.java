package fourfold.upkeep;

import fourfold.log.ActionRecord;
import fourfold.log.Answer;
import fourfold.log.Child;
import fourfold.log.DrillSession;
import fourfold.store.ActionText;
import fourfold.store.AnswerValues;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.TreeMap;
import java.util.UUID;
import java.util.function.LongFunction;

/** The rows that could be made out in a file, by the numbers by which they refer to each other. */
final class SalvagedRows {
    private static final int ANSWER_COLUMNS = 15;
    private static final int EARLIER_ANSWER_COLUMNS = 13;

    private final Map<Long, Child> children = new TreeMap<>();
    private final Map<Long, LeafPages.Row> drills = new TreeMap<>();
    private final List<LeafPages.Row> answers = new ArrayList<>();
    private final List<LeafPages.Row> actions = new ArrayList<>();
    private int impossible;

    private SalvagedRows() {}

    static SalvagedRows of(Path file) throws IOException {
        SalvagedRows rows = new SalvagedRows();
        LeafPages.read(file, rows::take);
        return rows;
    }

    /** Our tables are distinguished by their number of columns and the values in them. */
    private void take(LeafPages.Row row) {
        List<Optional<Object>> values = row.values();
        try {
            if (values.size() == 4) {
                children.put(row.number(), child(row));
            } else if (values.size() == 7 && values.get(6).orElse("") instanceof Long) {
                UUID.fromString(text(row, 1));
                drills.put(row.number(), row);
            } else if (values.size() == 7) {
                actions.add(row);
            } else if (values.size() == ANSWER_COLUMNS || values.size() == EARLIER_ANSWER_COLUMNS) {
                answers.add(row);
            }
        } catch (RuntimeException e) {
            impossible++;
        }
    }

    /** What a good backup knows of children and drills whose rows are gone here. */
    void fillFrom(SalvagedRows backup) {
        backup.children.forEach((number, child) -> {
            if (children.values().stream().noneMatch(c -> c.id().equals(child.id()))) {
                children.putIfAbsent(number, child);
            }
        });
        backup.drills.forEach((number, drill) -> {
            String id = text(drill, 1);
            if (drills.values().stream().noneMatch(d -> text(d, 1).equals(id))) {
                drills.putIfAbsent(number, drill);
            }
        });
    }

    /** A name for each child that drills belong to and that is gone. */
    void nameTheNameless(LongFunction<String> nameless) {
        for (LeafPages.Row drill : drills.values()) {
            long number = number(drill, 2);
            children.computeIfAbsent(number, n -> nameless(nameless.apply(n), drill));
        }
    }

    private static Child nameless(String name, LeafPages.Row drill) {
        UUID id = UUID.nameUUIDFromBytes(
                ("child of " + text(drill, 1)).getBytes(java.nio.charset.StandardCharsets.UTF_8));
        return new Child(id, name, Instant.ofEpochMilli(number(drill, 3)));
    }

    List<Child> children() {
        return List.copyOf(children.values());
    }

    /** How many rows were there and made no sense. */
    int impossible() {
        return impossible;
    }

    List<DrillSession> sessions() {
        List<DrillSession> sessions = new ArrayList<>();
        drills.values().forEach(row -> session(row).ifPresent(sessions::add));
        return sessions;
    }

    /** The answers whose drill is known; the others are counted among the impossible. */
    List<Answer> answers() {
        List<Answer> all = new ArrayList<>();
        for (LeafPages.Row row : answers) {
            try {
                DrillSession session = Optional.ofNullable(drills.get(number(row, 0)))
                        .flatMap(this::session)
                        .orElseThrow(() -> new IllegalArgumentException("its drill is gone"));
                all.add(answer(row, session));
            } catch (RuntimeException e) {
                impossible++;
            }
        }
        return all;
    }

    List<ActionRecord> actions() {
        List<ActionRecord> all = new ArrayList<>();
        for (LeafPages.Row row : actions) {
            try {
                Child child = Optional.ofNullable(children.get(number(row, 2)))
                        .orElseThrow(() -> new IllegalArgumentException("its child is gone"));
                all.add(new ActionRecord(
                        UUID.fromString(text(row, 1)),
                        child.id(),
                        Instant.ofEpochMilli(number(row, 3)),
                        small(row, 4),
                        new ActionText(text(row, 5), text(row, 6)).action()));
            } catch (RuntimeException e) {
                impossible++;
            }
        }
        return all;
    }

    private static Child child(LeafPages.Row row) {
        return new Child(UUID.fromString(text(row, 1)), text(row, 2), Instant.ofEpochMilli(number(row, 3)));
    }

    private Optional<DrillSession> session(LeafPages.Row row) {
        try {
            return Optional.ofNullable(children.get(number(row, 2)))
                    .map(child -> new DrillSession(
                            UUID.fromString(text(row, 1)),
                            child.id(),
                            Instant.ofEpochMilli(number(row, 3)),
                            small(row, 4),
                            Duration.ofSeconds(number(row, 5)),
                            number(row, 6)));
        } catch (RuntimeException e) {
            return Optional.empty();
        }
    }

    /** A row of an earlier program has neither a pace nor a checksum. */
    private static Answer answer(LeafPages.Row row, DrillSession session) {
        int last = ANSWER_COLUMNS - 1;
        boolean earlier = row.values().size() == EARLIER_ANSWER_COLUMNS;
        OptionalLong kept =
                earlier || row.values().get(last).isEmpty() ? OptionalLong.empty() : OptionalLong.of(number(row, last));
        return AnswerValues.of(row.values().subList(1, earlier ? EARLIER_ANSWER_COLUMNS : last))
                .answer(session.child(), session.id(), kept);
    }

    private static long number(LeafPages.Row row, int column) {
        return (Long) row.values().get(column).orElseThrow();
    }

    private static int small(LeafPages.Row row, int column) {
        return Math.toIntExact(number(row, column));
    }

    private static String text(LeafPages.Row row, int column) {
        return (String) row.values().get(column).orElseThrow();
    }
}
