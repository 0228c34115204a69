// SPDX-License-Identifier: Apache-2.0
package fourfold.upkeep;

import fourfold.log.ActionRecord;
import fourfold.log.Child;
import fourfold.log.ChildName;
import fourfold.log.ParentAction;
import fourfold.log.Problem;
import fourfold.log.Reason;
import fourfold.log.RecordsFailure;
import fourfold.log.RecordsFailure.Task;
import fourfold.store.Actions;
import fourfold.store.Children;
import fourfold.store.Connections;
import fourfold.store.Database;
import fourfold.store.Failure;
import fourfold.store.Refusal;
import fourfold.store.Removal;
import fourfold.store.SameChildren;
import fourfold.store.Store;
import fourfold.upkeep.RowCounts.Kind;
import java.io.IOException;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;

/**
 * The union of two files: of their children, drills, answers and actions, by their ids. Merging in any order, and merging
 * again, comes to the same; clocks that differ change nothing, because nothing is identified by its time.
 *
 * @param came what came from the other file
 * @param unsettled names that two different children have; the parent must say whether they are one
 * @param leftOut names of the other file's children that were removed on one of the computers; they are not brought back
 * @param removed names of children here that were removed on the other computer, and here now too
 */
public record Merge(RowCounts came, List<Clash> unsettled, List<String> leftOut, List<String> removed) {
    /** A name that a child here and another child of the other file have. */
    public record Clash(String name, Child here, Child there) {}

    /**
     * What the parent says of names that both files have.
     *
     * @param same names that mean one child
     * @param apart names that mean two children, and what the other file's child is to be called
     * @param back names of removed children whom the other file still has, and who are to come back
     * @param at when it was said
     * @param zoneOffsetMinutes minutes by which local time was ahead of UTC then
     */
    public record Said(
            Set<String> same, Map<String, String> apart, Set<String> back, Instant at, int zoneOffsetMinutes) {
        /** The same without anyone who comes back. */
        public Said(Set<String> same, Map<String, String> apart, Instant at, int zoneOffsetMinutes) {
            this(same, apart, Set.of(), at, zoneOffsetMinutes);
        }

        private Optional<String> newName(String name) {
            return apart.entrySet().stream()
                    .filter(e -> ChildName.same(e.getKey(), name))
                    .map(Map.Entry::getValue)
                    .findFirst();
        }

        private boolean isSame(String name) {
            return same.stream().anyMatch(s -> ChildName.same(s, name));
        }
    }

    private static final Map<Kind, String> TABLES =
            Map.of(Kind.CHILD, "child", Kind.DRILL, "drill", Kind.ANSWER, "answer", Kind.ACTION, "act");

    public Merge {
        unsettled = List.copyOf(unsettled);
        leftOut = List.copyOf(leftOut);
        removed = List.copyOf(removed);
    }

    /**
     * What merging would do; nothing is changed. It is tried in a copy, so that nobody who practises meanwhile is held up.
     */
    public static Merge preview(Store into, Path other, Said said) {
        return preview(into, other, said, Advance.UNSEEN);
    }

    /** The same, and tells how far it has come. */
    public static Merge preview(Store into, Path other, Said said, Advance advance) {
        Path file = into.file().orElseThrow(() -> new IllegalArgumentException("only a file can be merged into"));
        try (ForeignFile taken = ForeignFile.of(other, Task.MERGE, Reason.NOT_TO_MERGE, advance.part(0, 50));
                PrivateCopy copy = PrivateCopy.of(file, advance.part(50, 75));
                Store store = Store.open(copy.file())) {
            advance.to(80);
            List<Merge> done = new ArrayList<>();
            mergeInto(store, taken, said, false, done);
            return done.get(0);
        } catch (IOException e) {
            throw new RecordsFailure(Task.MERGE_FILES, Failure.shown(file), Failure.problem(e), e);
        } catch (SQLException e) {
            throw new RecordsFailure(Task.MERGE_FILES, Failure.shown(file), Failure.problem(e), e);
        }
    }

    /**
     * Merges the other file into this one, all of it or nothing. The other file is only read.
     *
     * @throws RecordsFailure if a name is unsettled, or if the same id means different things in the two files
     */
    public static Merge of(Store store, Path other, Said said) {
        return of(store, other, said, true);
    }

    /**
     * The same with what another computer laid in the folder where computers meet. An older program there could not read
     * what this one lays: until it is brought up to date, each passes the other's file over and says so.
     */
    public static Merge ofLaid(Store store, Path laid, Said said) {
        return of(store, laid, said, false);
    }

    private static Merge of(Store store, Path other, Said said, boolean olderToo) {
        List<Merge> done = new ArrayList<>();
        try (ForeignFile taken = ForeignFile.of(other, Task.MERGE, Reason.NOT_TO_MERGE)) {
            if (taken.isOlder() && !olderToo) {
                throw new RecordsFailure(Task.MERGE, Failure.shown(other), Problem.of(Reason.OLDER_PROGRAM));
            }
            mergeInto(store, taken, said, true, done);
        }
        if (done.get(0).removed().isEmpty()) {
            store.checkpoint();
        } else {
            store.overwriteLog();
        }
        return done.get(0);
    }

    private static void mergeInto(Store store, ForeignFile taken, Said said, boolean whole, List<Merge> done) {
        Database database = store.database();
        Set<UUID> removed = store.removedIds();
        database.read(Task.MERGE_FILES, c -> {
            BroughtBack.in(taken.file(), said.back(), removed);
            Connections.run(c, "PRAGMA secure_delete = ON");
            return c;
        });
        database.read(Task.MERGE_FILES, c -> {
            taken.attachTo(c);
            return c;
        });
        try {
            database.write(Task.MERGE_FILES, c -> {
                Merge merge = merge(c, said);
                done.add(merge);
                if (whole && !merge.unsettled().isEmpty()) {
                    throw new Refusal(
                            Reason.NAME_CLASH, merge.unsettled().get(0).name());
                }
                return merge;
            });
        } finally {
            database.read(Task.MERGE_FILES, c -> run(c, "DETACH DATABASE other"));
        }
    }

    private static Merge merge(Connection c, Said said) throws SQLException {
        List<Children.Known> before = Children.all(c);
        MergedRows rows = new MergedRows(c);
        rows.refuseContradictions();
        Map<UUID, String> here = rows.names("main");
        Map<UUID, String> there = rows.names("other");
        Map<Kind, Long> last = new EnumMap<>(Kind.class);
        for (Map.Entry<Kind, String> table : TABLES.entrySet()) {
            last.put(table.getKey(), rows.last(table.getValue()));
        }
        rows.addRemovals();
        rows.addChildren();
        rows.addDrills();
        rows.addAnswers();
        rows.addActions();
        Removal.carryOut(c);
        rows.addPages();
        RowCounts came = RowCounts.NONE;
        for (Map.Entry<Kind, String> table : TABLES.entrySet()) {
            came = came.plus(table.getKey(), rows.added(table.getValue(), last.getOrDefault(table.getKey(), 0L)));
        }
        Set<UUID> now = rows.names("main").keySet();
        List<Clash> unsettled = new ArrayList<>();
        List<ActionRecord> settling = new ArrayList<>();
        for (Clash clash : clashes(before, Children.all(c))) {
            Optional<String> newName = said.newName(clash.name());
            if (said.isSame(clash.name())) {
                settling.add(SameChildren.joining(
                        clash.here().id(),
                        clash.here().since(),
                        clash.there().id(),
                        clash.there().since()));
            } else if (newName.isPresent()) {
                settling.add(new ActionRecord(
                        UUID.randomUUID(),
                        clash.there().id(),
                        said.at(),
                        said.zoneOffsetMinutes(),
                        new ParentAction.Choose(Children.NAME, newName.get())));
            } else {
                unsettled.add(clash);
            }
        }
        for (ActionRecord action : settling) {
            Actions.keep(c, action);
        }
        return new Merge(came, unsettled, without(there, here.keySet(), now), without(here, Set.of(), now));
    }

    /** The names of those who are not there now; those who were known here are told apart. */
    private static List<String> without(Map<UUID, String> names, Set<UUID> known, Set<UUID> now) {
        return names.entrySet().stream()
                .filter(e -> !now.contains(e.getKey()) && !known.contains(e.getKey()))
                .map(Map.Entry::getValue)
                .toList();
    }

    /** Children of one name: the first is the one that was here before. */
    private static List<Clash> clashes(List<Children.Known> before, List<Children.Known> now) {
        List<Clash> clashes = new ArrayList<>();
        for (int i = 0; i < now.size(); i++) {
            for (int j = i + 1; j < now.size(); j++) {
                Child one = now.get(i).child();
                Child other = now.get(j).child();
                if (ChildName.same(one.name(), other.name())) {
                    boolean wasHere =
                            before.stream().anyMatch(k -> k.child().id().equals(one.id()));
                    clashes.add(new Clash(one.name(), wasHere ? one : other, wasHere ? other : one));
                }
            }
        }
        return clashes;
    }

    private static boolean run(Connection connection, String sql) throws SQLException {
        Database.run(connection, sql, none -> {});
        return true;
    }
}
