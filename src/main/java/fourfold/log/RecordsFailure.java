// SPDX-License-Identifier: Apache-2.0
package fourfold.log;

import java.util.List;

/**
 * Something could not be kept or read. It holds what happened and no sentence: the message is for those who look into the
 * program, and what a person reads comes from the texts.
 */
public final class RecordsFailure extends RuntimeException {
    /** What could not be done; the text is under {@code failure.task.} and its name, with the places and the problem. */
    public enum Task {
        ADD_CHILD,
        BEGIN_DRILL,
        BRING_LOG_IN,
        CLOSE,
        COPY,
        KEEP_ANSWER,
        KEEP_ANSWERS,
        KEEP_CHANGE,
        KEEP_GATE,
        LOCK_DRILL,
        LOOK_AT_BACKUPS,
        MAKE_BACKUP,
        MERGE,
        MERGE_FILES,
        OPEN,
        PRINT,
        READ_ANSWERS,
        READ_CHANGES,
        READ_CHILDREN,
        READ_DRILLS,
        READ_GATE,
        READ_REMEMBERED,
        REMEMBER,
        REMOVE_CHILD,
        REMOVE_GATE,
        RESTORE,
        /** Two places: the backup and the file. */
        RESTORE_TO,
        SALVAGE,
        SALVAGE_TO,
        SET_UP_DEMO,
        /** With other computers in a folder. */
        SHARE,
        THIN_OUT_BACKUPS,
        USE_FILE_NAME,
        VERIFY
    }

    private static final long serialVersionUID = 1L;

    private final Task task;
    private final transient List<String> places;
    private final transient Problem problem;

    /** In one file or folder. */
    public RecordsFailure(Task task, String place, Problem problem) {
        this(task, List.of(place), problem);
    }

    /**
     * In these files or folders.
     *
     * @param places their names without control characters, as many as the task has
     */
    public RecordsFailure(Task task, List<String> places, Problem problem) {
        super(task + " " + places + ": " + problem);
        this.task = task;
        this.places = List.copyOf(places);
        this.problem = problem;
    }

    /** In one file or folder, because of something else. */
    public RecordsFailure(Task task, String place, Problem problem, Throwable cause) {
        this(task, List.of(place), problem, cause);
    }

    /** In these files or folders, because of something else. */
    public RecordsFailure(Task task, List<String> places, Problem problem, Throwable cause) {
        super(task + " " + places + ": " + problem, cause);
        this.task = task;
        this.places = List.copyOf(places);
        this.problem = problem;
    }

    /** What could not be done. */
    public Task task() {
        return task;
    }

    /** The files or folders in which it could not be done. */
    public List<String> places() {
        return places;
    }

    /** Why, and what to do. */
    public Problem problem() {
        return problem;
    }
}
