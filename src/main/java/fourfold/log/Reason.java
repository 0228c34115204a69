// SPDX-License-Identifier: Apache-2.0
package fourfold.log;

/**
 * Why something could not be kept or read, or what is wrong with a file. What a reason says, and in which order its
 * details come, stands in the texts under {@code failure.reason.} and its name.
 */
public enum Reason {
    // What the system or the database says.
    ANOTHER_PROGRAM,
    CANNOT_OPEN,
    DAMAGED,
    /** The number that the database has for it. */
    DATABASE_ERROR,
    DISK_FAULT,
    DISK_FULL,
    DRIVER,
    FILE_READ_ONLY,
    NOT_ALLOWED,
    SYSTEM,
    /** What the database reports in its own words. */
    OTHER,

    // Why a file is not opened.
    FOLDER,
    FOLDER_READ_ONLY,
    GONE,
    /** A problem, and the last good backup. */
    LAST_GOOD,
    LOG_LEFT,
    NAME_NOT_EXPRESSIBLE,
    NEWER_PROGRAM,
    OLDER_PROGRAM,
    NO_FILE,
    NO_FOLDER,
    /** Nothing says where the person's files are. */
    NO_HOME,
    NO_RIGHTS,
    NOT_ORDINARY,
    NOT_OURS,
    OTHER_PROGRAMS_FILE,
    OTHER_TABLES,
    PROGRAM_INCOMPLETE,
    REPLACED,
    RULE_BROKEN,
    UPDATE_FAILED,
    UPDATE_WRONG,

    // Why something is not kept or read.
    ACTION_DIFFERS,
    ACTION_UNREADABLE,
    /** The position and the drill. */
    ANSWER_CHANGED,
    ANSWER_DIFFERS,
    ANSWER_OF_ANOTHER_CHILD,
    ANSWER_UNREADABLE,
    CHILD_UNKNOWN,
    DRILL_DIFFERS,
    DRILL_UNKNOWN,
    DRILL_UNREADABLE,
    NAME_TAKEN,
    NAME_TAKEN_AWAY,
    SETTING_CONTROL,
    SETTING_LONG,
    SETTING_NAME,
    TIME_TOO_LONG,

    // Why a value is not taken.
    /** The word for an action in a file, and what it is done to. */
    ACTION_TEXT,
    /** A number of the file that stands for nothing. */
    CODE,
    COPY_FIELDS,
    COPY_PURPOSE,
    CSV_COLUMNS,
    CSV_CORRECT,
    CSV_EMPTY,
    CSV_FIELDS,
    CSV_ID,
    /** The line's number and the problem in it. */
    CSV_LINE,
    CSV_QUOTES,
    DATE,
    DATE_EARLY,
    DATE_LATE,
    DRILL_LENGTH,
    ERASURES,
    ID,
    ID_UNREADABLE,
    MILLIS,
    NAME_BLANKS,
    NAME_CONTROL,
    NAME_LENGTH,
    NAME_UNSEEN,
    NO_FIRST_KEY,
    NO_NUMBER_TO_COPY,
    NO_QUESTION,
    OPERATION,
    ORDER,
    OTHER_ANSWER_THERE,
    OTHER_CHILDS_DRILL,
    /** The drill, and the position that is missing. */
    PART_OF_DRILL,
    PACE,
    PACE_NOT_HEARD,
    POSITION,
    PURPOSE,
    SURFACE,
    TIME_NEGATIVE,
    TYPED,
    WHOLE_NUMBER,
    ZONE,

    // Why a file is not backed up, restored, merged or salvaged.
    COPY_NOT_WHOLE,
    DEMO_MEETS_NOBODY,
    FILE_EXISTS,
    FILES_DIFFER_ACTION,
    FILES_DIFFER_ANSWER,
    FILES_DIFFER_CHILD,
    FILES_DIFFER_DRILL,
    HELD_OPEN,
    LIVING_FILE_THERE,
    NAME_CLASH,
    NO_BACKUP,
    NOT_ALONE,
    NOT_TO_MERGE,

    // Why nothing is taken from a file from elsewhere.
    FOREIGN_DAMAGED,
    /** The number of a row, and its table. */
    ROW_UNFIT,
    /** The name of a table, index, view or trigger. */
    STRANGE_OBJECT,
    /** The most megabytes. */
    TOO_LARGE,
    /** The table, and the most rows. */
    TOO_MANY_ROWS,
    TOO_SLOW,
    VALUE_TOO_LARGE,

    // What is found wrong in a file.
    ANSWER_EARLY,
    ANSWER_MISSING,
    CHILD_UNREADABLE,
    EMPTY,
    HEAD_DESTROYED,
    HEAD_OF_OTHER_PROGRAM,
    /** The table that the index belongs to, and the database's own line. */
    INDEX,
    REFERENCE,
    SCHEMA,
    /** The name of a table, index, view or trigger. */
    SCHEMA_CHANGED,
    /** The table, and the database's own line. */
    TABLE,
    /** The database's own line. */
    TABLES,
    WRITE_CUT_SHORT,

    // What should be known of how a file is kept.
    KEPT_WITH_JOURNAL,
    KEPT_WITH_LOG,
    SLIP_LEFT,
    SLIPS_LEFT
}
