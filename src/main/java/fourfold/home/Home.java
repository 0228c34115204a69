// SPDX-License-Identifier: Apache-2.0
package fourfold.home;

import fourfold.log.RecordsFailure;
import fourfold.store.DataPath;
import fourfold.store.Store;
import fourfold.terminal.SessionClock;
import fourfold.terminal.TerminalException;
import fourfold.terminal.TerminalSession;
import fourfold.upkeep.PrivateFolder;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.time.Instant;
import java.util.Map;
import java.util.Optional;
import java.util.function.LongSupplier;

/** A home that is open: its use cases, on one file and with one clock. */
public final class Home implements AutoCloseable {
    private final Store store;
    private final SessionClock moments;
    private final Instant started;
    private final String computerName;
    private final Optional<Path> file;
    private final Optional<Demo> demo;
    private final DrillSeat seat;
    private final SteerPractice steering;
    private final ChildRegister children;
    private final Practice practice;
    private final PracticeRecords records;
    private final LookAhead lookAhead;
    private final Calculations calculations = new Calculations();
    private final PrintPages printPages;
    private volatile boolean replaced;

    private Home(
            Store store,
            SessionClock moments,
            LongSupplier seeds,
            Optional<Path> file,
            Optional<Demo> demo,
            String computerName,
            Optional<Documents> documents) {
        this.store = store;
        this.moments = moments;
        started = moments.now();
        this.computerName = computerName;
        this.file = file;
        this.demo = demo;
        seat = new DrillSeat(file);
        steering = new SteerPractice(store, moments);
        children = new ChildRegister(store, file, seat, steering);
        practice = new Practice(store, moments, seeds, file, seat);
        records = new PracticeRecords(store, moments);
        lookAhead = new LookAhead(store, moments, records);
        printPages = new PrintPages(store, moments, records, lookAhead, documents);
    }

    /** Opens the demo, the named file, or the usual one: with backups, and one drill of a child at a time. */
    public static Home open(Environment world, Optional<Path> file, boolean demo) {
        SessionClock moments = world.clock().get();
        LongSupplier seeds = () -> new SecureRandom().nextLong();
        Documents documents = new Documents(world);
        if (demo) {
            Demo copy = Demo.make(moments);
            return new Home(
                    copy.store(),
                    moments,
                    seeds,
                    Optional.empty(),
                    Optional.of(copy),
                    "",
                    Optional.of(documents.keptIn(copy.pages())));
        }
        Path place = place(world, file);
        Map<String, String> names = world.environment();
        String called = names.getOrDefault("HOSTNAME", names.getOrDefault("COMPUTERNAME", ""));
        return new Home(
                Store.open(place),
                moments,
                seeds,
                Optional.of(place),
                Optional.empty(),
                called,
                Optional.of(documents));
    }

    /** A home on a store that is open, with given seeds for drills, one after the other, and without backups. */
    public static Home on(Store store, SessionClock moments, LongSupplier seeds) {
        return new Home(store, moments, seeds, Optional.empty(), Optional.empty(), "", Optional.empty());
    }

    /** The home folder of the person who runs the program; an empty path if none is known. */
    public static Path homeFolder() {
        return DataPath.home(System.getProperty("os.name", ""), System.getenv(), System.getProperty("user.home", ""));
    }

    /** The named file, or the usual one. */
    public static Path place(Environment world, Optional<Path> file) {
        return file.orElseGet(() -> DataPath.usual(world.systemName(), world.environment(), world.home()));
    }

    /**
     * The file a person named.
     *
     * @throws RecordsFailure if the text can't be a path here
     */
    public static Path path(String written) {
        return DataPath.of(written);
    }

    /** Loads what {@link #open} would load first; any thread may call it. */
    public static void loadDriver() {
        Store.loadDriver();
    }

    /** The one clock of this run. */
    public SessionClock moments() {
        return moments;
    }

    /** Who practises here. */
    public ChildRegister children() {
        return children;
    }

    /** A drill as the file sees it. */
    public Practice practice() {
        return practice;
    }

    /** What a parent decides. */
    public SteerPractice steering() {
        return steering;
    }

    /** What is recorded. */
    public PracticeRecords records() {
        return records;
    }

    /** When all may be fluent. */
    public LookAhead lookAhead() {
        return lookAhead;
    }

    /** The thread for long calculations. */
    public Calculations calculations() {
        return calculations;
    }

    /** Pages to print. */
    public PrintPages printPages() {
        return printPages;
    }

    /** What was answered on them. */
    public PaperAnswers paperAnswers() {
        return new PaperAnswers(store, moments, practice, printPages.register());
    }

    /** The gate before the grown-ups' pages. */
    public Gate gate() {
        return new Gate(store, started);
    }

    /** What is set for all. */
    public HouseholdSettings settings() {
        return new HouseholdSettings(store);
    }

    /** Answers from CSV. */
    public ImportAnswers importAnswers() {
        return new ImportAnswers(store, file);
    }

    /** What another computer's file holds. */
    public MergeFile mergeFile() {
        return new MergeFile(store, demo.isPresent() ? Optional.empty() : store.file());
    }

    /** The care of the records: copies, checks, moves. */
    public RecordsCare care() {
        return new RecordsCare(store, demo.isPresent() ? Optional.empty() : store.file(), records, children, () -> {
            replaced = true;
            store.close();
        });
    }

    /** Whether the file was replaced, so that this home is closed and another is to be opened. */
    public boolean isReplaced() {
        return replaced;
    }

    /** The computers of the household that meet in a folder. */
    public TwoComputers together() {
        return new TwoComputers(store, demo.isPresent() ? Optional.empty() : store.file());
    }

    /** What the system calls this computer; empty if it does not say. */
    public String computerName() {
        return computerName;
    }

    /** The terminal, or a window of the size it had last. */
    public TerminalSession stage(Environment world) throws TerminalException {
        TerminalSession stage =
                TerminalSession.open(world.environment(), settings().theme(), settings()::window);
        practice.fileWork().onDone(stage::wake);
        calculations.onDone(stage::wake);
        return stage;
    }

    /** Remembers how large the window was, if it was one. */
    public void rememberWindow(TerminalSession stage) {
        if (!replaced) {
            stage.window().ifPresent(settings()::rememberWindow);
        }
    }

    @Override
    public void close() {
        try {
            calculations.close();
            practice.fileWork().close();
            store.close();
        } finally {
            seat.leave();
            demo.ifPresent(Demo::close);
            // At the end, when nobody waits for a page.
            PrivateFolder.clearLeftBehind();
        }
    }
}
