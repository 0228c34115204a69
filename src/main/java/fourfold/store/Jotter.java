package fourfold.store;

import fourfold.facts.Answer;
import fourfold.facts.Sitting;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/**
 * Where answers at the keyboard are jotted down before they go into the file: the slip of the drill that is going on, if
 * there is one, and the slips that were left behind.
 */
final class Jotter {
    private static final String KEEP = "keep the answer";

    private final Database database;
    private final Optional<Path> file;
    private Optional<Slip> slip = Optional.empty();

    /** For a database that lies in this file; without a file everything goes into the database at once. */
    Jotter(Database database, Optional<Path> file) {
        this.database = database;
        this.file = file;
    }

    /** A slip from now on for the answers of this drill, which is in the file and has none yet. */
    synchronized void begin(Sitting sitting) {
        slip = file.flatMap(f -> Slip.of(f, sitting));
    }

    /** Keeps an answer: on the slip if that is possible, or in the file. */
    synchronized void keep(Answer answer) {
        boolean noted =
                slip.isPresent() && database.beside(KEEP, () -> slip.get().takes(Answers.asKept(answer)));
        if (!noted) {
            settleNow();
            enter(List.of(answer));
            slip.ifPresent(s -> s.passed(answer));
        }
    }

    /** Puts into the file what stands on the slip, unless the last try failed. */
    synchronized void settle() {
        if (slip.filter(Slip::isReady).isPresent()) {
            settleNow();
        }
    }

    /** The same, whatever became of the last try. */
    synchronized void settleNow() {
        List<Answer> waiting = slip.map(Slip::waiting).orElse(List.of());
        if (waiting.isEmpty()) {
            return;
        }
        try {
            enter(waiting);
            slip.ifPresent(Slip::settled);
        } catch (StoreException e) {
            slip.ifPresent(Slip::stick);
            throw e;
        }
    }

    /** The drill is over. */
    synchronized void end() {
        try {
            settleNow();
        } catch (StoreException e) {
            throw new StoreException(
                    e.getMessage() + "; the last answers stand on "
                            + slip.map(Slip::toString).orElse("") + " and go into the file at the next start",
                    e);
        } finally {
            slip.ifPresent(Slip::end);
            slip = Optional.empty();
        }
    }

    /**
     * Puts the answers of slips that were left behind into the file, if it knows their drills. What can't be put in now
     * stays for the next start: a file that can be read is not to be kept shut for it.
     */
    void takeInWhatWasLeft() {
        file.ifPresent(f -> SlipFile.leftBeside(f, this::isTakenIn));
    }

    private boolean isTakenIn(List<Answer> answers) {
        try {
            if (database.read(KEEP, c -> areOfRemovedChildren(c, answers))) {
                return true;
            }
            boolean known = database.read(KEEP, c -> areKnown(c, answers));
            if (known) {
                enter(answers);
            }
            return known;
        } catch (StoreException e) {
            return false;
        }
    }

    /** Takes away slips that were left behind with answers of these children. */
    void forget(List<UUID> children) {
        file.ifPresent(f -> SlipFile.leftBeside(
                f, answers -> answers.stream().map(Answer::child).allMatch(children::contains)));
    }

    private static boolean areKnown(Connection connection, List<Answer> answers) throws SQLException {
        for (Answer answer : answers) {
            if (Sittings.find(connection, answer.drill()).isEmpty()) {
                return false;
            }
        }
        return true;
    }

    /** Whoever was removed for good, here or on another computer, does not come back by a slip. */
    private static boolean areOfRemovedChildren(Connection connection, List<Answer> answers) throws SQLException {
        List<String> removed =
                Database.query(connection, "SELECT id FROM removed_child", none -> {}, row -> row.getString(1));
        return !answers.isEmpty()
                && answers.stream().allMatch(a -> removed.contains(a.child().toString()));
    }

    private void enter(List<Answer> answers) {
        database.write(KEEP, connection -> {
            Answers.keep(connection, answers);
            return answers;
        });
    }
}
