package fourfold.home;

import fourfold.log.Surface;
import fourfold.progress.Setting;
import fourfold.progress.Steering;
import fourfold.store.DataPath;
import fourfold.store.Store;
import fourfold.store.StoreException;
import fourfold.terminal.SessionClock;
import fourfold.terminal.TerminalException;
import fourfold.terminal.TerminalSession;
import fourfold.terminal.WindowSize;
import java.nio.file.Path;
import java.util.Optional;

/** A home that is open: its store, its records and its clock. */
public final class Home implements AutoCloseable {
    /** Where the home's settings hold columns and rows of the window. */
    private static final String WINDOW = "window";

    private final Store store;
    private final Household records;
    private final SessionClock moments;
    private final Optional<Path> file;
    private final Optional<Demo> demo;

    private Home(Store store, SessionClock moments, Household records, Optional<Path> file, Optional<Demo> demo) {
        this.file = file;
        this.store = store;
        this.moments = moments;
        this.records = records;
        this.demo = demo;
    }

    /** Opens the demo, the named file, or the usual one. */
    public static Home open(Environment world, Optional<Path> file, boolean demo) {
        Home home = opened(world, file, demo);
        home.records.speak(world.words());
        return home;
    }

    private static Home opened(Environment world, Optional<Path> file, boolean demo) {
        SessionClock moments = world.clock().get();
        if (demo) {
            Demo copy = Demo.make(moments);
            return new Home(
                    copy.store(), moments, new Household(copy.store(), moments), Optional.empty(), Optional.of(copy));
        }
        Path place = place(world, file);
        Store store = Store.open(place);
        return new Home(store, moments, new Household(store, moments, place), Optional.of(place), Optional.empty());
    }

    /** The named file, or the usual one. */
    public static Path place(Environment world, Optional<Path> file) {
        return file.orElseGet(() -> DataPath.usual(world.systemName(), world.environment(), world.home()));
    }

    public Household records() {
        return records;
    }

    public SessionClock moments() {
        return moments;
    }

    /** The terminal, or a window of the size it had last, with letters as large as the child who needs the largest. */
    public TerminalSession stage(Environment world) throws TerminalException {
        TerminalSession stage = TerminalSession.open(world.environment(), this::window);
        records.fileWork().onDone(stage::wake);
        return stage;
    }

    public WindowSize window() {
        int points = store.children().stream()
                .mapToInt(child -> Integer.parseInt(
                        Steering.of(store.acts(child.id())).settings().value(Setting.LETTERS)))
                .max()
                .orElse(WindowSize.USUAL.points());
        return store.homeSetting(WINDOW)
                .flatMap(WindowSize::remembered)
                .orElse(WindowSize.USUAL)
                .withPoints(points);
    }

    /** Remembers how large the window was; no harm is done if that fails. */
    public void rememberWindow(TerminalSession stage) {
        if (stage.surface() == Surface.WINDOW) {
            rememberWindow(stage.columns(), stage.rows());
        }
    }

    public void rememberWindow(int columns, int rows) {
        String written = columns + "x" + rows;
        if (WindowSize.remembered(written).isPresent()) {
            try {
                store.keepHomeSetting(WINDOW, written);
            } catch (StoreException e) {
                // The window opens in its usual size next time; everything that counts was kept before.
            }
        }
    }

    /** The children who practise here whom a name means, or all of them without one. */
    public ChildChoice choice(Optional<String> name) {
        return ChildChoice.of(records.children(), name);
    }

    /** The children of a name, those put away too. */
    public ChildChoice anyChild(String name) {
        return ChildChoice.of(store.allChildren(), Optional.of(name));
    }

    /** The gate before the grown-ups' pages. */
    public Records.Gate gate() {
        return records.gate();
    }

    /** Answers from CSV. */
    public ImportAnswers importAnswers() {
        return new ImportAnswers(store, file);
    }

    /** What another computer's file holds. */
    public MergeFile mergeFile() {
        return new MergeFile(store, file);
    }

    /** Loads what {@link #open} would load first; any thread may call it. */
    public static void loadDriver() {
        Store.loadDriver();
    }

    /**
     * The file a person named.
     *
     * @throws fourfold.store.StoreException if the text can't be a path here
     */
    public static Path path(String written) {
        return DataPath.of(written);
    }

    @Override
    public void close() {
        try {
            records.fileWork().close();
            store.close();
        } finally {
            records.leaveSeat();
            demo.ifPresent(Demo::close);
        }
    }
}
