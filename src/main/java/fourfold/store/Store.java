// SPDX-License-Identifier: Apache-2.0
package fourfold.store;

import fourfold.log.ActionRecord;
import fourfold.log.Answer;
import fourfold.log.Child;
import fourfold.log.DrillSession;
import fourfold.log.RecordsFailure;
import fourfold.log.RecordsFailure.Task;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.function.Consumer;
import java.util.function.Function;

/**
 * One family's file: children, drills, answers and actions. Rows are only ever added.
 *
 * <p>Whatever {@code keep}, {@code begin} or {@code add} has been given is on the disk when the call returns; keeping
 * the same thing twice changes nothing, keeping a different thing under the same id is refused. Times are kept to the
 * millisecond. Every method throws {@link RecordsFailure} when it fails. Other programs may use
 * the same file at the same time; a write waits a few seconds for theirs.
 */
public final class Store implements AutoCloseable {
    private final Database database;
    private final Optional<Path> file;

    Store(Database database) {
        this(database, Optional.empty());
    }

    private Store(Database database, Optional<Path> file) {
        this.database = database;
        this.file = file;
    }

    /**
     * Opens the file, makes it if there is none, and brings an older one up to date after copying it aside. A file that
     * is not a Fourfold file, was written by a newer program, is damaged, in use or can't be written is left as it is.
     * The folder must be there, unless it is one called {@value DataPath#FOLDER}, which is made.
     *
     * @throws RecordsFailure if it can't be opened
     */
    public static Store open(Path file) {
        return open(file, StoreFile.PATIENCE);
    }

    /** The same, with another patience for other programs' writes. */
    static Store open(Path file, Duration patience) {
        Path whole = file.toAbsolutePath().normalize();
        Store store = new Store(StoreFile.open(whole, patience, Schema.TODAY), Optional.of(whole));
        store.takeInEarlierSlips();
        return store;
    }

    private void takeInEarlierSlips() {
        file.ifPresent(f -> EarlierSlips.takeIn(database, f));
    }

    /** Loads the database driver, which the first {@link #open} would do; any thread may call it. */
    public static void loadDriver() {
        StoreFile.loadDriver();
    }

    /** The open database, for work that goes through several tables. */
    public Database database() {
        return database;
    }

    /** The file; empty for a database that is in no file of its own. */
    public Optional<Path> file() {
        return file;
    }

    /** The file, as messages name it. */
    public String where() {
        return database.where();
    }

    /** The children who practise, in the order in which they were added, under today's names. */
    public List<Child> children() {
        return read(Task.READ_CHILDREN, Children::all).stream()
                .filter(k -> !k.archived())
                .map(Children.Known::child)
                .toList();
    }

    /** All children, those put away too. */
    public List<Child> allChildren() {
        return read(Task.READ_CHILDREN, Children::all).stream()
                .map(Children.Known::child)
                .toList();
    }

    /** Adds a child. A name another child has, in whatever case, is refused, also if that child was put away. */
    public void add(Child child) {
        write(Task.ADD_CHILD, c -> Children.add(c, child));
    }

    /** Begins a drill of a known child. */
    public void begin(DrillSession session) {
        write(Task.BEGIN_DRILL, c -> DrillSessions.begin(c, session));
    }

    /** Keeps an answer of a drill that was begun. */
    public void keep(Answer answer) {
        write(Task.KEEP_ANSWER, c -> Answers.keep(c, List.of(answer)));
    }

    /**
     * Brings what stands in the log beside the file into the file: when nobody is waiting, such as after a drill. It
     * waits for no one; what another program is just reading stays in the log until the next time.
     */
    public void checkpoint() {
        database.checkpoint();
    }

    private <T> T read(Task task, Database.Work<T> work) {
        return database.read(task, work);
    }

    private void write(Task task, Change change) {
        database.write(task, on(change));
    }

    /** Keeps an action of the parent; a new name that another child has is refused. */
    public void keep(ActionRecord action) {
        write(Task.KEEP_CHANGE, c -> Actions.keep(c, action));
    }

    /** Keeps actions that belong together, all of them or none. */
    public void keepActions(List<ActionRecord> actions) {
        write(Task.KEEP_CHANGE, c -> {
            for (ActionRecord action : actions) {
                Actions.keep(c, action);
            }
        });
    }

    /** Keeps whole drills of known children, all of them or none. */
    public void keepAll(List<DrillSession> sessions, List<Answer> answers) {
        takeIn(List.of(), sessions, answers);
    }

    /** Adds children and keeps whole drills, all of it or nothing. */
    public void takeIn(List<Child> children, List<DrillSession> sessions, List<Answer> answers) {
        write(Task.KEEP_ANSWERS, c -> {
            for (Child child : children) {
                Children.add(c, child);
            }
            for (DrillSession session : sessions) {
                DrillSessions.begin(c, session);
            }
            Answers.keep(c, answers);
        });
        database.checkpointIfPossible();
    }

    /**
     * Removes a child for good: every answer, drill and action. Make a backup first. Another computer's file will not bring
     * the child back.
     */
    public void remove(UUID child, Instant at) {
        read(Task.REMOVE_CHILD, c -> Database.query(c, "PRAGMA secure_delete = ON", none -> {}, row -> 1));
        write(Task.REMOVE_CHILD, c -> Removal.of(c, child, at));
        overwriteLog();
        takeInEarlierSlips();
    }

    /**
     * Removes one drill for good, as what was entered by mistake: its answers go from here and, merged, from other
     * computers' files.
     */
    public void removeDrill(UUID drill, Instant at) {
        write(Task.KEEP_CHANGE, c -> Removal.ofDrill(c, drill, at));
    }

    /** The ids of all that was removed for good. */
    public Set<UUID> removedIds() {
        String all = "SELECT id FROM removed_record UNION SELECT id FROM removed_child";
        return Set.copyOf(read(Task.READ_DRILLS, c -> Database.query(c, all, none -> {}, row -> Codes.id(row, 1))));
    }

    /** What was overwritten in the file must not live on in the log. */
    public void overwriteLog() {
        read(Task.REMOVE_CHILD, c -> Database.query(c, "PRAGMA wal_checkpoint(TRUNCATE)", none -> {}, row -> 1));
    }

    /** The grown-ups' gate, if there is one. */
    public Optional<GateRow> gate() {
        return read(Task.READ_GATE, GateRow::in);
    }

    /** Sets the gate, or what is known of wrong tries. */
    public void keepGate(GateRow gate) {
        write(Task.KEEP_GATE, gate::keep);
    }

    /**
     * Looks at the gate and changes it in one, whatever other programs do.
     *
     * @param change what the gate becomes; empty to leave it as it is
     * @return what it became; empty if there is no gate or it was left
     */
    public Optional<GateRow> changeGate(Function<GateRow, Optional<GateRow>> change) {
        List<GateRow> changed = new ArrayList<>();
        write(Task.KEEP_GATE, c -> {
            Optional<GateRow> now = GateRow.in(c).flatMap(change);
            if (now.isPresent()) {
                now.get().keep(c);
                changed.add(now.get());
            }
        });
        return changed.stream().findFirst();
    }

    /** Takes the gate away. */
    public void removeGate() {
        write(Task.REMOVE_GATE, GateRow::remove);
    }

    /** What is remembered for the home under a name of at most 40 characters. */
    public Optional<String> homeSetting(String name) {
        return read(Task.READ_REMEMBERED, c -> HomeSettings.of(c, name));
    }

    /** All that is remembered for the home under names that begin so, by name. */
    public Map<String, String> homeSettings(String beginning) {
        return read(Task.READ_REMEMBERED, c -> HomeSettings.beginning(c, beginning));
    }

    /** Remembers a text of at most 400 characters for the home, in place of what was there. */
    public void keepHomeSetting(String name, String text) {
        write(Task.REMEMBER, c -> HomeSettings.keep(c, name, text));
    }

    /** All ids by which a child was known on the family's computers, and its own. */
    public List<UUID> ids(UUID child) {
        return read(Task.READ_REMEMBERED, c -> SameChildren.in(c).rows(child));
    }

    /** The child's drills, oldest first; drills that began together by id. */
    public List<DrillSession> sessions(UUID child) {
        return read(Task.READ_DRILLS, c -> DrillSessions.of(c, child));
    }

    /** Those of the child's drills that began at an instant or later, oldest first. */
    public List<DrillSession> sessionsSince(UUID child, Instant from) {
        return read(Task.READ_DRILLS, c -> DrillSessions.since(c, child, from));
    }

    /** The child's actions in {@link ActionRecord#IN_ORDER}, undone ones too. */
    public List<ActionRecord> actions(UUID child) {
        return read(Task.READ_CHANGES, c -> Actions.of(c, child));
    }

    /**
     * Hands over every answer of the child, oldest first: by the drill's start, its id, and the position in it. The
     * receiver must not use this store meanwhile. What it throws is thrown here.
     */
    public void readAnswers(UUID child, Consumer<Answer> each) {
        read(Task.READ_ANSWERS, c -> {
            Answers.read(c, child, each);
            return child;
        });
    }

    /** Every answer of the child in the order of {@link #readAnswers}. */
    public List<Answer> answers(UUID child) {
        List<Answer> all = new ArrayList<>();
        readAnswers(child, all::add);
        return all;
    }

    @Override
    public void close() {
        database.close();
    }

    /** Work that has no result. */
    private interface Change {
        void on(Connection connection) throws SQLException;
    }

    private static Database.Work<Boolean> on(Change change) {
        return connection -> {
            change.on(connection);
            return true;
        };
    }
}
