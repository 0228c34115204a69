// SPDX-License-Identifier: Apache-2.0
package fourfold.upkeep;

import fourfold.log.Child;
import fourfold.log.DrillSession;
import fourfold.log.Problem;
import fourfold.log.Reason;
import fourfold.log.RecordsFailure;
import fourfold.log.RecordsFailure.Task;
import fourfold.store.Actions;
import fourfold.store.Answers;
import fourfold.store.Children;
import fourfold.store.Connections;
import fourfold.store.Database;
import fourfold.store.DrillSessions;
import fourfold.store.EarlierSlips;
import fourfold.store.Failure;
import fourfold.store.FileHead;
import fourfold.store.Journal;
import fourfold.store.Refusal;
import fourfold.store.Schema;
import fourfold.store.Store;
import fourfold.store.Ticks;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Looks into every corner of a file without changing it: every page, every reference, every value, and the order of the
 * answers.
 */
public final class Verification {
    private static final int MOST_LINES = 50;

    /** The look at the pages takes two thirds of the time, and that at the rows the rest. */
    private static final int PAGES_DONE = 67;

    private static final Pattern TREE = Pattern.compile("Tree (\\d+)");

    private final List<Problem> findings = new ArrayList<>();

    private final Advance advance;

    private Verification(Advance advance) {
        this.advance = advance;
    }

    /**
     * What is wrong with the file, at most fifty things; nothing if all is well.
     *
     * @throws RecordsFailure if the file can't be read at all
     */
    public static List<Problem> of(Path file) {
        return of(file, Advance.UNSEEN);
    }

    /** The same, and tells how far it has come. */
    public static List<Problem> of(Path file, Advance advance) {
        Verification verification = new Verification(advance);
        try {
            verification.look(file.toAbsolutePath().normalize());
        } catch (IOException e) {
            throw new RecordsFailure(Task.VERIFY, Failure.shown(file), Failure.problem(e), e);
        }
        return List.copyOf(verification.findings.subList(0, Math.min(MOST_LINES, verification.findings.size())));
    }

    /**
     * The same of a file that this program has open: of a copy of it, for a look at the file itself would give the
     * library's locks away.
     */
    public static List<Problem> ofOpen(Path file, Advance advance) {
        try (PrivateCopy copy = PrivateCopy.of(file)) {
            return of(copy.file(), advance);
        } catch (IOException e) {
            throw new RecordsFailure(Task.VERIFY, Failure.shown(file), Failure.problem(e), e);
        } catch (SQLException e) {
            throw new RecordsFailure(Task.VERIFY, Failure.shown(file), Failure.problem(e), e);
        }
    }

    /**
     * What a grown-up should know of how the file is kept. That it is whole by itself is said only of a file of which that
     * is true: not beside slips of an earlier program, nor beside a write that was cut short.
     *
     * @throws RecordsFailure if the file can't be read at all
     */
    public static List<Problem> notes(Path file) {
        try {
            if (FileHead.of(file) != FileHead.OURS) {
                return List.of();
            }
            List<Problem> notes = new ArrayList<>();
            int slips = EarlierSlips.beside(file).size();
            if (FileHead.isLogged(file)) {
                notes.add(Problem.of(Reason.KEPT_WITH_LOG));
            } else if (slips == 0 && !Journal.unfinishedWrite(file)) {
                notes.add(Problem.of(Reason.KEPT_WITH_JOURNAL));
            }
            if (slips > 0) {
                notes.add(Problem.of(slips == 1 ? Reason.SLIP_LEFT : Reason.SLIPS_LEFT, slips));
            }
            return notes;
        } catch (IOException e) {
            throw new RecordsFailure(Task.VERIFY, Failure.shown(file), Failure.problem(e), e);
        }
    }

    private void look(Path file) throws IOException {
        switch (FileHead.of(file)) {
            case EMPTY -> found(Reason.EMPTY);
            case NO_DATABASE -> found(Reason.HEAD_DESTROYED);
            case OTHER_DATABASE -> found(Reason.HEAD_OF_OTHER_PROGRAM);
            case OURS -> look(file, Journal.unfinishedWrite(file));
        }
    }

    private void look(Path file, boolean unfinished) throws IOException {
        if (unfinished) {
            found(Reason.WRITE_CUT_SHORT);
        }
        try {
            if (unfinished || Journal.isHot(Journal.log(file)) || !Files.isWritable(file.resolveSibling(""))) {
                try (PrivateCopy copy = PrivateCopy.of(file)) {
                    lookInto(copy.file());
                }
            } else {
                lookInto(file);
            }
        } catch (SQLException e) {
            found(Failure.problem(e));
        }
    }

    private void lookInto(Path file) throws IOException, SQLException {
        TimeLimit limit = new TimeLimit(Files.size(file));
        long expected = Ticks.ofCheck(Files.size(file));
        try (Connection connection = Connections.checking(file)) {
            limit.watch(connection, ticks -> advance.part(0, PAGES_DONE).to(Ticks.share(ticks, expected)));
            if (isAsOurs(connection)) {
                pages(connection);
                references(connection);
                boolean sound = findings.stream().allMatch(f -> f.reason() == Reason.WRITE_CUT_SHORT);
                if (sound && Schema.TODAY.stateOf(connection) == Schema.State.OLDER) {
                    lookIntoBroughtUpToDate(file);
                } else {
                    rows(connection);
                }
            }
        } catch (Refusal e) {
            found(e.problem());
        }
    }

    /** An older program's file is sound if today's makes something sound of it. */
    private void lookIntoBroughtUpToDate(Path file) throws IOException, SQLException {
        try (PrivateCopy copy = PrivateCopy.of(file)) {
            Store.open(copy.file()).close();
            lookInto(copy.file());
        } catch (RecordsFailure e) {
            found(e.problem());
        }
    }

    /** Nothing is asked of tables that somebody changed: a view in the place of one may never come to an end. */
    private boolean isAsOurs(Connection connection) {
        try {
            Schema.State state = Schema.TODAY.stateOf(connection);
            if (state == Schema.State.CHANGED) {
                found(
                        Reason.SCHEMA_CHANGED,
                        Schema.TODAY.changed(connection, false).orElse(""));
            } else if (state == Schema.State.FOREIGN) {
                found(Reason.SCHEMA);
            } else {
                ForeignRows.checkCounts(connection);
                return true;
            }
            return false;
        } catch (SQLException e) {
            // It is damaged; where, the look at the pages says.
            return true;
        }
    }

    private void pages(Connection connection) throws SQLException {
        Map<String, Tree> trees = new HashMap<>();
        Database.query(
                connection,
                "SELECT rootpage, type, tbl_name FROM sqlite_schema WHERE rootpage > 0",
                none -> {},
                row -> trees.put(
                        row.getString(1),
                        new Tree(row.getString(2).equals("index") ? Reason.INDEX : Reason.TABLE, row.getString(3))));
        List<String> lines = Database.query(
                connection, "PRAGMA integrity_check(" + MOST_LINES + ")", none -> {}, row -> row.getString(1));
        Failure.unread(lines).ifPresent(this::found);
        for (String line : lines) {
            if (!line.equals("ok")) {
                line.lines().forEach(part -> found(named(part, trees)));
            }
        }
    }

    /** What a tree of pages holds: a table, or an index of it. */
    private record Tree(Reason kind, String table) {}

    /** The database's own line, with what its tree holds; a tree that nobody knows belongs to the list of tables. */
    private static Problem named(String line, Map<String, Tree> trees) {
        Matcher number = TREE.matcher(line);
        if (!number.find()) {
            return Problem.of(Reason.OTHER, Failure.oneLine(line));
        }
        Tree tree = trees.get(number.group(1));
        return tree == null
                ? Problem.of(Reason.TABLES, Failure.oneLine(line))
                : Problem.of(tree.kind(), Failure.oneLine(tree.table()), Failure.oneLine(line));
    }

    private void references(Connection connection) throws SQLException {
        Database.query(
                connection,
                "PRAGMA foreign_key_check",
                none -> {},
                row -> found(
                        Reason.REFERENCE,
                        row.getLong(2),
                        Failure.oneLine(row.getString(1)),
                        Failure.oneLine(row.getString(3))));
    }

    private void rows(Connection connection) {
        try {
            if (Schema.TODAY.stateOf(connection) != Schema.State.CURRENT) {
                found(Reason.SCHEMA);
                return;
            }
            List<Children.Known> all = Children.all(connection);
            for (int i = 0; i < all.size(); i++) {
                child(connection, all.get(i).child(), advance.part(part(i, all.size()), part(i + 1, all.size())));
            }
            advance.to(100);
        } catch (SQLException e) {
            found(Failure.problem(e));
        } catch (Refusal e) {
            found(Reason.CHILD_UNREADABLE, e.problem());
        } catch (IllegalArgumentException e) {
            found(Reason.CHILD_UNREADABLE, Failure.value(e));
        }
    }

    private static int part(int done, int all) {
        return PAGES_DONE + (100 - PAGES_DONE) * done / all;
    }

    private void child(Connection connection, Child child, Advance own) throws SQLException {
        try {
            Actions.of(connection, child.id());
            Map<UUID, Instant> begun = new HashMap<>();
            for (DrillSession session : DrillSessions.of(connection, child.id())) {
                begun.put(session.id(), session.startedAt());
            }
            AnswerOrder order = new AnswerOrder(begun, own, this::found);
            Answers.read(connection, child.id(), order::next, refusal -> found(refusal.problem()));
        } catch (Refusal e) {
            found(e.problem());
        }
    }

    private boolean found(Reason reason, Object... details) {
        return found(Problem.of(reason, details));
    }

    private boolean found(Problem problem) {
        return findings.add(problem);
    }
}
