// SPDX-License-Identifier: Apache-2.0
package fourfold.store;

import fourfold.log.InvalidValue;
import fourfold.log.Problem;
import fourfold.log.Reason;
import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.flywaydb.core.api.FlywayException;
import org.sqlite.NativeLibraryNotFoundException;
import org.sqlite.SQLiteErrorCode;
import org.sqlite.SQLiteException;

/** Turns an error of the database or the system into a problem that can be shown to a parent. */
public final class Failure {
    private static final int PRIMARY_CODE = 0xff;

    /** SQLITE_IOERR, or SQLITE_IOERR_READ (sqlite.org/rescode.html). */
    private static final Pattern READ_ERROR = Pattern.compile("error code=(10|266)\\b");

    private Failure() {}

    /** A failure that we found ourselves where the database would have thrown its own. */
    static final class Known extends SQLException {
        private static final long serialVersionUID = 1L;

        private final transient Problem problem;

        Known(Problem problem) {
            super(problem.toString());
            this.problem = problem;
        }
    }

    /** What the system says about a file. */
    public static Problem problem(IOException cause) {
        if (cause instanceof AccessDeniedException) {
            return Problem.of(Reason.NOT_ALLOWED);
        }
        if (cause instanceof NoSuchFileException) {
            return Problem.of(Reason.NO_FILE);
        }
        String said = cause instanceof FileSystemException system && system.getReason() != null
                ? system.getReason()
                : String.valueOf(cause.getMessage());
        return Problem.of(Reason.SYSTEM, oneLine(said));
    }

    /** Why a migration failed: the database's reason, if there is one. */
    static Problem problem(FlywayException cause) {
        for (Throwable deeper = cause; deeper != null; deeper = deeper.getCause()) {
            if (deeper instanceof SQLException sql) {
                return problem(sql);
            }
        }
        return Problem.of(Reason.DATABASE_ERROR, 0);
    }

    /** The reason, which says what to do. */
    public static Problem problem(SQLException cause) {
        if (cause instanceof Known known) {
            return known.problem;
        }
        if (cause.getCause() instanceof NativeLibraryNotFoundException) {
            return Problem.of(Reason.DRIVER);
        }
        int code = cause instanceof SQLiteException sqlite ? sqlite.getResultCode().code & PRIMARY_CODE : 0;
        return switch (SQLiteErrorCode.getErrorCode(code)) {
            case SQLITE_BUSY, SQLITE_LOCKED -> Problem.of(Reason.ANOTHER_PROGRAM);
            case SQLITE_FULL -> Problem.of(Reason.DISK_FULL);
            case SQLITE_READONLY, SQLITE_PERM, SQLITE_AUTH -> Problem.of(Reason.FILE_READ_ONLY);
            // All that is asked is right for our tables: what can't be asked is not as it should be.
            case SQLITE_CORRUPT, SQLITE_NOTADB, SQLITE_ERROR -> Problem.of(Reason.DAMAGED);
            case SQLITE_IOERR -> Problem.of(Reason.DISK_FAULT);
            case SQLITE_CANTOPEN -> Problem.of(Reason.CANNOT_OPEN);
            case SQLITE_CONSTRAINT -> Problem.of(Reason.RULE_BROKEN);
            case SQLITE_INTERRUPT -> Problem.of(Reason.TOO_SLOW);
            case SQLITE_TOOBIG -> Problem.of(Reason.VALUE_TOO_LARGE);
            default -> Problem.of(Reason.DATABASE_ERROR, code);
        };
    }

    /** The same for a file from elsewhere, which is not ours to repair. */
    public static Problem ofForeign(SQLException cause) {
        return isDamage(cause) ? Problem.of(Reason.FOREIGN_DAMAGED) : problem(cause);
    }

    /** What is wrong with a value of a file: what we found ourselves, or else that an id is none. */
    public static Problem value(IllegalArgumentException cause) {
        return cause instanceof InvalidValue invalid ? invalid.problem() : Problem.of(Reason.ID_UNREADABLE);
    }

    /**
     * That a page could not be read at all, if a check of the pages says so: the disk's fault, and no damage in the file.
     * The library's number for it is that of an I/O error; a file that ends too soon has another, and is damaged.
     */
    public static Optional<Problem> unread(List<String> found) {
        boolean unread = found.stream().map(READ_ERROR::matcher).anyMatch(Matcher::find);
        return unread ? Optional.of(Problem.of(Reason.DISK_FAULT)) : Optional.empty();
    }

    /** Whether the database says that the file is damaged. */
    static boolean isDamage(SQLException cause) {
        return isOneOf(
                cause, SQLiteErrorCode.SQLITE_CORRUPT, SQLiteErrorCode.SQLITE_NOTADB, SQLiteErrorCode.SQLITE_ERROR);
    }

    /** Whether another program holds the file. */
    public static boolean isInUse(SQLException cause) {
        return isOneOf(cause, SQLiteErrorCode.SQLITE_BUSY, SQLiteErrorCode.SQLITE_LOCKED);
    }

    /** Whether a row breaks a rule of its table, or of two tables. */
    static boolean isRule(SQLException cause) {
        return isOneOf(cause, SQLiteErrorCode.SQLITE_CONSTRAINT);
    }

    /** Whether it may be that the disk can't do what a write-ahead log needs. */
    static boolean isOfTheLog(SQLException cause) {
        return isOneOf(
                cause,
                SQLiteErrorCode.SQLITE_CANTOPEN,
                SQLiteErrorCode.SQLITE_IOERR,
                SQLiteErrorCode.SQLITE_READONLY,
                SQLiteErrorCode.SQLITE_PROTOCOL);
    }

    private static boolean isOneOf(SQLException cause, SQLiteErrorCode... these) {
        int code = cause instanceof SQLiteException sqlite ? sqlite.getResultCode().code & PRIMARY_CODE : 0;
        return Arrays.stream(these).anyMatch(one -> one.code == code);
    }

    /** A file's name for a message; control characters can't reach the terminal. */
    public static String shown(Path file) {
        return oneLine(file.toString());
    }

    /** The text with every control character replaced by a question mark. */
    public static String oneLine(String text) {
        return text.strip().replaceAll("\\s+", " ").replaceAll("\\p{Cntrl}", "?");
    }
}
