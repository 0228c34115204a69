// SPDX-License-Identifier: Apache-2.0
package fourfold.store;

import fourfold.log.Problem;
import fourfold.log.Reason;
import fourfold.log.RecordsFailure;
import fourfold.log.RecordsFailure.Task;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.logging.Level;
import java.util.logging.Logger;
import org.flywaydb.core.api.FlywayException;
import org.sqlite.SQLiteDataSource;

/** Opens the file on the disk: looks before it touches anything, and brings an older file up to date. */
public final class StoreFile {
    /** How long a write waits for another program's. */
    public static final Duration PATIENCE = Duration.ofSeconds(5);

    /** Larger files, of 250,000 answers and more, are looked at only when they are backed up, each day, or verified. */
    private static final long LOOKED_AT_WHOLE = 16L << 20;

    /** Held for good: a logger that nobody holds forgets that it was silenced. */
    private static final Logger DRIVER = Logger.getLogger("org.sqlite");

    static {
        DRIVER.setLevel(Level.OFF);
    }

    private final Path file;
    private final Duration patience;
    private final Schema schema;

    private StoreFile(Path file, Duration patience, Schema schema) {
        this.file = file;
        this.patience = patience;
        this.schema = schema;
    }

    /** Opens, makes or migrates the file. */
    public static Database open(Path file, Duration patience, Schema schema) {
        return new StoreFile(file.toAbsolutePath().normalize(), patience, schema).open();
    }

    /** Loads what {@link #open} will need; a file is neither made nor read. A failure is left to open, which reports it. */
    static void loadDriver() {
        try {
            NativeLibrary.prepareUsual();
            try (Connection connection = Connections.inMemory()) {
                Database.query(connection, "SELECT ?", values -> values.setString(1, ""), row -> row.getString(1));
            }
        } catch (SQLException | RuntimeException | LinkageError e) {
            DRIVER.log(Level.FINE, "not loaded ahead", e);
        }
    }

    private Database open() {
        try {
            checkName();
            checkFolder();
            Replacement.endBegun(file);
            if (!Files.exists(file, LinkOption.NOFOLLOW_LINKS) || checkFile() == FileHead.EMPTY) {
                beginAnew();
            }
            FileHead head = checkFile();
            NativeLibrary.prepareUsual();
            return connect(head);
        } catch (SQLException e) {
            throw failed(Failure.isDamage(e) ? withLastGood(Failure.problem(e)) : Failure.problem(e), e);
        } catch (IOException e) {
            throw failed(Failure.problem(e), e);
        }
    }

    /** The first start: the file has its name only when it is whole. */
    private void beginAnew() throws SQLException, IOException {
        refuseToBeginAnew();
        NativeLibrary.prepareUsual();
        try {
            if (!FirstStart.make(file, patience, empty -> Migration.fill(empty, schema))) {
                throw failed(Reason.ANOTHER_PROGRAM);
            }
        } catch (FlywayException e) {
            throw failed(Problem.of(Reason.UPDATE_FAILED, Failure.problem(e)), e);
        }
    }

    private Database connect(FileHead head) throws SQLException, IOException {
        try {
            return connect(head, true);
        } catch (SQLException e) {
            if (!Failure.isOfTheLog(e) || !FileHead.isLogged(file)) {
                throw e;
            }
            Journal.backFromLog(file);
            return connect(FileHead.of(file), false);
        }
    }

    private Database connect(FileHead head, boolean log) throws SQLException, IOException {
        Connection connection = source(true).getConnection();
        try {
            Connections.trustNothing(connection);
            Schema.State state = checkSchema(connection);
            if (head == FileHead.OURS) {
                checkPages(connection);
            }
            Connections.mark(connection);
            bringUpToDate(connection, state);
            if (log) {
                Journal.choose(connection, file, patience);
            } else {
                Journal.withoutLog(connection);
            }
            Path beside = Journal.log(file);
            boolean logged = Files.exists(beside);
            return new Database(
                    connection,
                    "BEGIN IMMEDIATE",
                    Failure.shown(file),
                    () -> logged ? number(file).map(n -> List.of(n, number(beside))) : number(file));
        } catch (SQLException | IOException | RuntimeException e) {
            connection.close();
            throw e;
        }
    }

    /** What identifies a file whatever its name: its inode number, on systems that have one. */
    private static Optional<Object> number(Path file) {
        try {
            return Optional.ofNullable(
                    Files.readAttributes(file, BasicFileAttributes.class).fileKey());
        } catch (IOException e) {
            return Optional.of("gone");
        }
    }

    /**
     * The database library writes names as UTF-8 whatever the language setting, and Java by the setting; where they
     * differ, the two would mean different files.
     */
    private void checkName() {
        boolean plain = StandardCharsets.US_ASCII.newEncoder().canEncode(file.toString());
        boolean windows =
                System.getProperty("os.name", "").toLowerCase(Locale.ROOT).startsWith("windows");
        boolean utf8 = System.getProperty("sun.jnu.encoding", "UTF-8").equalsIgnoreCase("UTF-8");
        if (!plain && !windows && !utf8) {
            throw DataPath.inexpressible(file.toString());
        }
    }

    private void checkFolder() throws IOException {
        Path folder = file.getParent();
        if (folder == null) {
            throw failed(Reason.FOLDER);
        }
        Path above = folder.getParent();
        // A folder that is missing is made; a path that is missing is more likely mistyped, unless it is our own.
        if (folder.endsWith(DataPath.FOLDER) || (above != null && Files.isDirectory(above))) {
            Rights.makeFolder(folder);
        }
        if (!Files.isDirectory(folder)) {
            throw failed(Reason.NO_FOLDER, Failure.shown(folder));
        }
        if (!Files.isWritable(folder)) {
            throw failed(Reason.FOLDER_READ_ONLY);
        }
    }

    private FileHead checkFile() throws IOException {
        if (Files.isDirectory(file)) {
            throw failed(Reason.FOLDER);
        }
        if (!Files.isRegularFile(file)) {
            throw failed(Reason.NOT_ORDINARY);
        }
        if (!Files.isReadable(file) || !Files.isWritable(file)) {
            throw failed(Reason.NO_RIGHTS);
        }
        FileHead head = Journal.headOf(file);
        return switch (head) {
            case EMPTY, OURS -> head;
            case OTHER_DATABASE -> throw failed(Reason.OTHER_PROGRAMS_FILE);
            case NO_DATABASE -> throw failed(withLastGood(Problem.of(Reason.NOT_OURS)));
        };
    }

    /** An empty file beside backups is a loss and no beginning. */
    private void refuseToBeginAnew() throws IOException {
        if (Journal.isHot(Journal.log(file))) {
            throw failed(Reason.LOG_LEFT, Failure.shown(Journal.log(file)));
        }
        if (BackupFiles.of(file).lastGood().isPresent()) {
            throw failed(withLastGood(
                    Problem.of(Reason.GONE, Failure.shown(BackupFiles.of(file).folder()))));
        }
    }

    /**
     * Looks at every page, so that damage is reported before more is written into it. The rules of the tables (CHECK) are left
     * to verify and to the backups: they would take three quarters of the time, and a row that breaks one is reported when it
     * is read.
     */
    private void checkPages(Connection connection) throws SQLException, IOException {
        if (Files.size(file) > LOOKED_AT_WHOLE) {
            return;
        }
        List<String> found;
        Connections.run(connection, "PRAGMA ignore_check_constraints = ON");
        try {
            found = Database.query(connection, "PRAGMA quick_check(1)", none -> {}, row -> row.getString(1));
        } finally {
            Connections.run(connection, "PRAGMA ignore_check_constraints = OFF");
        }
        if (!found.equals(List.of("ok"))) {
            throw failed(Failure.unread(found).orElseGet(() -> withLastGood(Problem.of(Reason.DAMAGED))));
        }
    }

    /** Names the newest backup that is whole; a folder that can't be read has none to offer. */
    private Problem withLastGood(Problem problem) {
        try {
            return BackupFiles.of(file)
                    .lastGood()
                    .map(b -> Problem.of(Reason.LAST_GOOD, problem, Failure.oneLine(BackupFiles.stem(b))))
                    .orElse(problem);
        } catch (IOException e) {
            return problem;
        }
    }

    /** Before anything of the file is run: a trigger, or a view in a table's place, would be run with it. */
    private Schema.State checkSchema(Connection connection) throws SQLException {
        Schema.State state = schema.stateOf(connection);
        switch (state) {
            case NEWER -> throw failed(Reason.NEWER_PROGRAM);
            case FOREIGN -> throw failed(Reason.OTHER_TABLES);
            case CHANGED ->
                throw failed(withLastGood(Problem.of(
                        Reason.SCHEMA_CHANGED, schema.changed(connection, false).orElse(""))));
            default -> {
                return state;
            }
        }
    }

    private void bringUpToDate(Connection connection, Schema.State state) throws SQLException, IOException {
        if (state == Schema.State.OLDER) {
            DatabaseCopy.make(connection, file, "before-" + schema.newest());
        }
        if (state != Schema.State.CURRENT) {
            migrate(connection);
        }
    }

    private void migrate(Connection connection) throws SQLException {
        try {
            // Tables may be copied and dropped on the way, so references are checked once, at the end.
            Migration.run(source(false), schema);
        } catch (FlywayException e) {
            if (schema.stateOf(connection) != Schema.State.CURRENT) {
                throw failed(Problem.of(Reason.UPDATE_FAILED, Failure.problem(e)), e);
            }
            // Another program has done it in the same moment.
        }
        boolean whole = Database.query(connection, "PRAGMA foreign_key_check", none -> {}, row -> 1)
                .isEmpty();
        if (!whole || schema.stateOf(connection) != Schema.State.CURRENT) {
            throw failed(Reason.UPDATE_WRONG);
        }
    }

    private SQLiteDataSource source(boolean references) {
        return Connections.writing(file, patience, references);
    }

    private RecordsFailure failed(Reason reason, Object... details) {
        return failed(Problem.of(reason, details));
    }

    private RecordsFailure failed(Problem problem) {
        return new RecordsFailure(Task.OPEN, Failure.shown(file), problem);
    }

    private RecordsFailure failed(Problem problem, Exception cause) {
        return new RecordsFailure(Task.OPEN, Failure.shown(file), problem, cause);
    }
}
