package fourfold.upkeep;

import fourfold.log.Answer;
import fourfold.log.Child;
import fourfold.log.DrillSession;
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
import fourfold.store.StoreException;
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
    private static final Pattern TREE = Pattern.compile("Tree (\\d+)");

    private final List<String> findings = new ArrayList<>();

    private Verification() {}

    /**
     * What is wrong with the file, a line each, at most fifty lines; nothing if all is well.
     *
     * @throws StoreException if the file can't be read at all
     */
    public static List<String> of(Path file) {
        Verification verification = new Verification();
        try {
            verification.look(file.toAbsolutePath().normalize());
        } catch (IOException e) {
            throw new StoreException("could not read " + Failure.shown(file) + ": " + Failure.reason(e), e);
        }
        return List.copyOf(verification.findings.subList(0, Math.min(MOST_LINES, verification.findings.size())));
    }

    /**
     * What a grown-up should know of how the file is kept, a sentence each.
     *
     * @throws StoreException if the file can't be read at all
     */
    public static List<String> notes(Path file) {
        try {
            List<String> notes = new ArrayList<>();
            notes.add(
                    FileHead.isLogged(file)
                            ? "It is kept with a write-ahead log: while a program has it open the last answers stand"
                                    + " beside it, in the file that ends in -wal, and only both together are whole."
                            : "It is kept with a rollback journal: it is whole by itself whenever no answer is just"
                                    + " being written.");
            int slips = EarlierSlips.beside(file).size();
            if (slips > 0) {
                notes.add("An earlier Fourfold left " + slips + (slips == 1 ? " slip" : " slips")
                        + " with answers beside it; the next start takes them in.");
            }
            return notes;
        } catch (IOException e) {
            throw new StoreException("could not read " + Failure.shown(file) + ": " + Failure.reason(e), e);
        }
    }

    private void look(Path file) throws IOException {
        switch (FileHead.of(file)) {
            case EMPTY -> found("the file is empty");
            case NO_DATABASE -> found("the file's beginning is destroyed, or it is no Fourfold file");
            case OTHER_DATABASE -> found("the file's beginning is destroyed, or it belongs to another program");
            case OURS -> look(file, Journal.unfinishedWrite(file));
        }
    }

    private void look(Path file, boolean unfinished) throws IOException {
        if (unfinished) {
            found("a write was cut short; opening the program completes it, then verify again");
            return;
        }
        try {
            if (Journal.isHot(Journal.log(file)) || !Files.isWritable(file.resolveSibling(""))) {
                try (PrivateCopy copy = PrivateCopy.of(file)) {
                    lookInto(copy.file());
                }
            } else {
                lookInto(file);
            }
        } catch (SQLException e) {
            found(Failure.reason(e));
        }
    }

    private void lookInto(Path file) throws SQLException {
        try (Connection connection = Connections.checking(file)) {
            pages(connection);
            references(connection);
            rows(connection);
        }
    }

    private void pages(Connection connection) throws SQLException {
        Map<String, String> trees = new HashMap<>();
        Database.query(
                connection,
                "SELECT rootpage, type, tbl_name FROM sqlite_schema WHERE rootpage > 0",
                none -> {},
                row -> trees.put(
                        row.getString(1),
                        (row.getString(2).equals("index") ? "an index of the table " : "the table ")
                                + row.getString(3)));
        for (String line : Database.query(
                connection, "PRAGMA integrity_check(" + MOST_LINES + ")", none -> {}, row -> row.getString(1))) {
            if (!line.equals("ok")) {
                line.lines().forEach(part -> found(named(part, trees)));
            }
        }
    }

    private static String named(String line, Map<String, String> trees) {
        Matcher tree = TREE.matcher(line);
        return Failure.oneLine(
                tree.find() ? line + " (in " + trees.getOrDefault(tree.group(1), "the list of tables") + ")" : line);
    }

    private void references(Connection connection) throws SQLException {
        Database.query(
                connection,
                "PRAGMA foreign_key_check",
                none -> {},
                row -> found("row " + row.getLong(2) + " of the table " + row.getString(1)
                        + " belongs to a missing row of the table " + row.getString(3)));
    }

    private void rows(Connection connection) {
        try {
            if (Schema.TODAY.stateOf(connection) != Schema.State.CURRENT) {
                found("the tables are not those of this Fourfold");
                return;
            }
            for (Children.Known known : Children.all(connection)) {
                child(connection, known.child());
            }
        } catch (SQLException e) {
            found(Failure.reason(e));
        } catch (Refusal | IllegalArgumentException e) {
            found("a child: " + e.getMessage());
        }
    }

    private void child(Connection connection, Child child) throws SQLException {
        try {
            Actions.of(connection, child.id());
            Map<UUID, Instant> begun = new HashMap<>();
            for (DrillSession sitting : DrillSessions.of(connection, child.id())) {
                begun.put(sitting.id(), sitting.startedAt());
            }
            Order order = new Order(begun);
            Answers.read(connection, child.id(), order::next);
        } catch (Refusal e) {
            found(String.valueOf(e.getMessage()));
        }
    }

    /** Positions count up from 1 without a gap, and no answer is asked before the one it follows. */
    private final class Order {
        private final Map<UUID, Instant> begun;
        private final Map<UUID, Answer> last = new HashMap<>();

        Order(Map<UUID, Instant> begun) {
            this.begun = begun;
        }

        void next(Answer answer) {
            Answer before = last.put(answer.drill(), answer);
            int expected = before == null ? 1 : before.position() + 1;
            if (answer.position() != expected) {
                found("the drill " + answer.drill() + " has no answer at position " + expected);
            }
            Instant earliest = before == null ? begun.getOrDefault(answer.drill(), Instant.MIN) : before.askedAt();
            if (answer.askedAt().isBefore(earliest)) {
                found("position " + answer.position() + " of the drill " + answer.drill()
                        + " was asked before what it follows");
            }
        }
    }

    private boolean found(String line) {
        return findings.add(line);
    }
}
