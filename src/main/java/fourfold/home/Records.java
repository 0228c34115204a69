package fourfold.home;

import fourfold.facts.Question;
import fourfold.insight.LifetimeProgress;
import fourfold.insight.Timings;
import fourfold.log.ActionRecord;
import fourfold.log.Answer;
import fourfold.log.Child;
import fourfold.log.DrillSession;
import fourfold.log.ParentAction;
import fourfold.log.RecordsFailure;
import fourfold.outlook.Projection;
import fourfold.progress.Progress;
import fourfold.words.Words;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;

/**
 * What the screens need of the home's records. Every method may fail with {@link RecordsFailure}, and may wait some seconds for a
 * file that another program holds: a drill calls them by {@link #fileWork} alone.
 */
public interface Records {
    /** One past drill in a line: when it began, how many questions were asked from memory, how many were right. */
    record PastDrill(DrillSession sitting, int asked, int right) {}

    /** The language of this home. */
    Words words();

    /** The thread on which a drill keeps and reads; one for all drills of this home. */
    FileWork fileWork();

    /** The children who practise here. */
    List<Child> children();

    /** A child, and whether it was put away. */
    record Known(Child child, boolean away) {}

    /** All children, those put away too. */
    List<Known> allChildren();

    /**
     * Gives a child another name.
     *
     * @throws IllegalArgumentException if the name is empty or too long
     */
    void rename(Child child, String name, Instant at);

    /** Puts a child away, so that it is no longer asked who practises; or brings it back. Nothing is deleted. */
    void putAway(Child child, boolean away, Instant at);

    /**
     * Removes a child for good, with all answers, after a backup was made and checked.
     *
     * @return where the backup is; empty where backups are not kept
     */
    Optional<String> remove(Child child, Instant at);

    /** Remembers what the last look ahead came to, so that a printed page can tell it. */
    void foreseen(Child child, Projection projection, Instant at);

    /** The questions of the page that was last printed for a child and not yet entered; none if there is no such page. */
    List<Question> onPaper(Child child);

    /** Remembers the questions of a page that was printed, in place of those before. */
    void printed(Child child, List<Question> questions);

    /** Pages that can be printed. */
    enum Printable {
        PRACTICE,
        CARDS,
        TABLE,
        PROGRESS;

        /** Its name in texts and files. */
        public String key() {
            return name().toLowerCase(java.util.Locale.ROOT);
        }
    }

    /**
     * Makes a page to print, as a file that a browser opens.
     *
     * @param letter US Letter in place of A4
     * @return where the file is
     */
    String print(Child child, Printable page, boolean letter, Instant at);

    /** The gate before the grown-ups' pages. */
    Gate gate();

    /** Keeps a child out of the grown-ups' pages. It encrypts nothing. */
    interface Gate {
        /** Whether a PIN is set. */
        boolean isSet();

        /** How long one has to wait before the next try. */
        Duration wait(Instant now);

        /** Whether this PIN opens it now; a wrong one is counted. */
        boolean opens(String pin, Instant now);

        /** Sets a PIN of 4 to 8 digits. */
        void set(String pin, Instant now);

        /** Takes the PIN away. */
        void remove();
    }

    /**
     * Adds a child.
     *
     * @throws IllegalArgumentException if the name is empty, too long or already there
     */
    Child add(String name, Instant at);

    /** Where a child stands. */
    Progress progress(Child child);

    /** Hands over each of the child's answers, oldest first. */
    void read(Child child, Consumer<Answer> each);

    /** A look ahead in which nothing was played yet: when all families may be fluent. */
    Ahead ahead(Progress progress, double daysAWeek, Instant at);

    /** The rest of a child's way, played through again and again. */
    interface Ahead {
        /** Whether the child's answers are enough to guess from. */
        boolean isPossible();

        /** Plays the way through once more; takes up to a second. */
        void playOnce();

        /** What it comes to so far. */
        Projection projection();
    }

    /** How far the child's own stairs are filled. */
    LifetimeProgress filling(Child child);

    /** The child's one-minute timings. */
    Timings timings(Child child);

    /** A new drill of a child, not yet kept; refused while the child practises in another window. */
    DrillSession newSitting(Child child, int minutes, Instant at);

    /** Keeps that a drill began. */
    void begin(DrillSession sitting);

    /** Keeps an answer for good before it returns. */
    void keep(Answer answer);

    /**
     * A drill is over and all of it is kept: the time to bring the log into the file, and for the day's backup.
     *
     * @return what a grown-up should know, in one line, if something about it went wrong
     */
    Optional<RecordsFailure> ended(DrillSession sitting, Instant at);

    /** Something a grown-up must be told when the program ends, in one line. */
    void tellParent(String line);

    /** Keeps deeds of the parent, all with the same time. */
    void keep(Child child, List<ParentAction> deeds, Instant at);

    /** All acts for a child, oldest first. */
    List<ActionRecord> acts(Child child);

    /** Past drills, newest first. */
    List<PastDrill> drills(Child child);
}
