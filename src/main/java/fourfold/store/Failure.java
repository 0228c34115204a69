package fourfold.store;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.Arrays;
import org.flywaydb.core.api.FlywayException;
import org.sqlite.NativeLibraryNotFoundException;
import org.sqlite.SQLiteErrorCode;
import org.sqlite.SQLiteException;

/** Turns what the database says into a line a parent can act on. */
public final class Failure {
    private static final int PRIMARY_CODE = 0xff;

    private Failure() {}

    /** One line: what could not be done, in which file, why, and what to do. */
    static StoreException of(String what, String where, SQLException cause) {
        return new StoreException("could not " + what + " in " + where + ": " + reason(cause), cause);
    }

    /** What the system says about a file. */
    public static String reason(IOException cause) {
        if (cause instanceof AccessDeniedException) {
            return "the system does not allow it; check the rights of the file and its folder";
        }
        if (cause instanceof FileSystemException system && system.getReason() != null) {
            return oneLine(system.getReason()) + "; check the file and its folder";
        }
        return oneLine(String.valueOf(cause.getMessage())) + "; check the file and its folder";
    }

    /** Why a migration failed: the database's reason, if there is one. */
    public static String reason(FlywayException cause) {
        for (Throwable deeper = cause; deeper != null; deeper = deeper.getCause()) {
            if (deeper instanceof SQLException sql) {
                return reason(sql);
            }
        }
        return oneLine(String.valueOf(cause.getMessage()));
    }

    /** The reason and the remedy. */
    public static String reason(SQLException cause) {
        if (cause.getCause() instanceof NativeLibraryNotFoundException) {
            return "SQLite's library can't be unpacked; start with -Dorg.sqlite.tmpdir= and a folder programs may run in";
        }
        int code = cause instanceof SQLiteException sqlite ? sqlite.getResultCode().code & PRIMARY_CODE : 0;
        return switch (SQLiteErrorCode.getErrorCode(code)) {
            case SQLITE_BUSY, SQLITE_LOCKED -> "another program is using the file; close it and try again";
            case SQLITE_FULL -> "the disk is full; free some space and try again";
            case SQLITE_READONLY, SQLITE_PERM, SQLITE_AUTH ->
                "the file can't be written; check the rights of the file and its folder";
            case SQLITE_CORRUPT, SQLITE_NOTADB -> "the file is damaged; leave it as it is and restore a backup";
            case SQLITE_IOERR ->
                "the disk takes no more or reports a fault; check its room, your share of it and the disk, and try again";
            case SQLITE_CANTOPEN -> "the file can't be opened; check that it and its folder are there";
            default -> oneLine(String.valueOf(cause.getMessage()));
        };
    }

    /** Whether the database says that the file is damaged. */
    static boolean isDamage(SQLException cause) {
        return isOneOf(cause, SQLiteErrorCode.SQLITE_CORRUPT, SQLiteErrorCode.SQLITE_NOTADB);
    }

    /** Whether another program holds the file. */
    public static boolean isInUse(SQLException cause) {
        return isOneOf(cause, SQLiteErrorCode.SQLITE_BUSY, SQLiteErrorCode.SQLITE_LOCKED);
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
