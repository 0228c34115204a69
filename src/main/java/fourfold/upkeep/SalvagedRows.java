// SPDX-License-Identifier: Apache-2.0
package fourfold.upkeep;

import fourfold.log.ActionRecord;
import fourfold.log.Child;
import fourfold.log.DrillSession;
import fourfold.store.ActionText;
import fourfold.store.AnswerValues;
import fourfold.store.FittingRows;
import fourfold.store.Refusal;
import fourfold.upkeep.RowCounts.Kind;
import java.nio.charset.StandardCharsets;
import java.sql.SQLException;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import java.util.TreeMap;
import java.util.UUID;
import java.util.function.LongFunction;

/**
 * The rows that could be made out in a file, by the numbers by which they refer to each other. Children, drills and
 * actions are held; the answers, by far the most, go by one at a time.
 */
final class SalvagedRows {
    private static final int ANSWER_COLUMNS = 15;
    private static final int EARLIER_ANSWER_COLUMNS = 13;

    private final Map<Long, Child> children = new TreeMap<>();
    private final Map<Long, DrillRow> drills = new TreeMap<>();
    private final List<LeafRow> actions = new ArrayList<>();
    private final Map<Kind, Integer> saved = new EnumMap<>(Kind.class);
    private int impossible;

    /** A drill, in the place of its child only the number of the child's row. */
    private record DrillRow(DrillSession session, long child) {}

    private SalvagedRows() {}

    /**
     * All but the answers.
     *
     * @throws Refusal if there are more than any family has
     */
    static SalvagedRows of(LeafPages pages, Advance advance) throws SQLException {
        SalvagedRows rows = new SalvagedRows();
        pages.read(columns -> columns == 4 || columns == 7, advance, rows::take);
        return rows;
    }

    /** Our tables are distinguished by their number of columns and the values in them. */
    private void take(LeafRow row) {
        try {
            if (row.columns() == 4) {
                children.put(row.number(), child(row));
            } else if (row.isWhole(6)) {
                drills.put(row.number(), drill(row));
            } else {
                actions.add(row);
            }
        } catch (RuntimeException e) {
            impossible++;
        }
        ForeignRows.checkCount("child", children.size());
        ForeignRows.checkCount("drill", drills.size());
        ForeignRows.checkCount("act", actions.size());
    }

    /** What a good backup knows of children and drills whose rows are gone here. */
    void fillFrom(SalvagedRows backup) {
        Set<UUID> known = new HashSet<>();
        children.values().forEach(c -> known.add(c.id()));
        drills.values().forEach(d -> known.add(d.session().id()));
        backup.children.forEach((number, child) -> {
            if (!known.contains(child.id())) {
                children.putIfAbsent(number, child);
            }
        });
        backup.drills.forEach((number, drill) -> {
            if (!known.contains(drill.session().id())) {
                drills.putIfAbsent(number, drill);
            }
        });
    }

    /** A name for each child that drills belong to and that is gone. */
    void nameTheNameless(LongFunction<String> nameless) {
        for (DrillRow drill : drills.values()) {
            children.computeIfAbsent(drill.child(), n -> nameless(nameless.apply(n), drill.session()));
        }
    }

    private static Child nameless(String name, DrillSession drill) {
        UUID id = UUID.nameUUIDFromBytes(("child of " + drill.id()).getBytes(StandardCharsets.UTF_8));
        return new Child(id, name, drill.startedAt());
    }

    /** Writes all of them to a fresh file, the answers as they go by. */
    Salvage writeTo(FittingRows fresh, LeafPages pages, LongFunction<String> nameless, Advance advance)
            throws SQLException {
        for (Child child : children.values()) {
            count(Kind.CHILD, fresh.keep(child));
        }
        Map<Long, UUID> ids = new HashMap<>();
        for (Map.Entry<Long, DrillRow> drill : drills.entrySet()) {
            DrillSession session = session(drill.getValue());
            ids.put(drill.getKey(), session.id());
            count(Kind.DRILL, fresh.keep(session));
        }
        pages.read(n -> n == ANSWER_COLUMNS, advance.part(0, 80), row -> answer(row, ids, fresh));
        fresh.endAnswers();
        int lost = fresh.refusedAnswers();
        if (pages.met(EARLIER_ANSWER_COLUMNS)) {
            // What today's program has written anew may still stand as an earlier one's in pages that are free now.
            boolean stale = fresh.keptAnswers() > 0;
            pages.read(n -> n == EARLIER_ANSWER_COLUMNS, advance.part(80, 95), row -> answer(row, ids, fresh));
            fresh.endAnswers();
            lost = stale ? lost : fresh.refusedAnswers();
        }
        impossible += lost;
        saved.put(Kind.ANSWER, fresh.keptAnswers());
        Set<ActionRecord> all = actions();
        int refused = fresh.keepActions(all, nameless);
        saved.put(Kind.ACTION, all.size() - refused);
        RowCounts counts = RowCounts.NONE;
        for (Map.Entry<Kind, Integer> kind : saved.entrySet()) {
            counts = counts.plus(kind.getKey(), kind.getValue());
        }
        return new Salvage(counts, impossible + refused);
    }

    private void count(Kind kind, FittingRows.Fate fate) {
        if (fate == FittingRows.Fate.KEPT) {
            saved.merge(kind, 1, Integer::sum);
        } else {
            impossible++;
        }
    }

    /** An answer whose drill is gone, or that is not as it was kept, is refused. */
    private static void answer(LeafRow row, Map<Long, UUID> drills, FittingRows fresh) throws SQLException {
        // A row of an earlier program has neither a pace nor a checksum.
        int sum = row.columns() == EARLIER_ANSWER_COLUMNS ? EARLIER_ANSWER_COLUMNS : ANSWER_COLUMNS - 1;
        OptionalLong checksum = OptionalLong.empty();
        AnswerValues values;
        UUID drill;
        try {
            values = row.answer(1, sum);
            drill = Optional.ofNullable(drills.get(row.whole(0))).orElseThrow();
            if (!row.isNone(sum)) {
                checksum = OptionalLong.of(row.whole(sum));
            }
        } catch (RuntimeException e) {
            fresh.refuse();
            return;
        }
        fresh.keep(drill, values, checksum);
        ForeignRows.checkCount("answer", fresh.keptAnswers());
    }

    private Set<ActionRecord> actions() {
        Set<ActionRecord> all = new LinkedHashSet<>();
        for (LeafRow row : actions) {
            try {
                Child child = Optional.ofNullable(children.get(row.whole(2)))
                        .orElseThrow(() -> new IllegalArgumentException("its child is gone"));
                all.add(new ActionRecord(
                        UUID.fromString(row.text(1)),
                        child.id(),
                        Instant.ofEpochMilli(row.whole(3)),
                        Math.toIntExact(row.whole(4)),
                        new ActionText(row.text(5), row.text(6)).action()));
            } catch (RuntimeException e) {
                impossible++;
            }
        }
        return all;
    }

    private static Child child(LeafRow row) {
        return new Child(UUID.fromString(row.text(1)), row.text(2), Instant.ofEpochMilli(row.whole(3)));
    }

    private static DrillRow drill(LeafRow row) {
        UUID id = UUID.fromString(row.text(1));
        DrillSession session = new DrillSession(
                id,
                id,
                Instant.ofEpochMilli(row.whole(3)),
                Math.toIntExact(row.whole(4)),
                Duration.ofSeconds(row.whole(5)),
                row.whole(6));
        return new DrillRow(session, row.whole(2));
    }

    /** The drill of the child whose it is. */
    private DrillSession session(DrillRow row) {
        DrillSession drill = row.session();
        UUID child =
                Optional.ofNullable(children.get(row.child())).map(Child::id).orElse(drill.child());
        return new DrillSession(
                drill.id(), child, drill.startedAt(), drill.zoneOffsetMinutes(), drill.planned(), drill.seed());
    }
}
