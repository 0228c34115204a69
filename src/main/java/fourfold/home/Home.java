package fourfold.home;

import fourfold.commands.ExitCode;
import fourfold.log.Child;
import fourfold.log.ChildName;
import fourfold.log.RecordsFailure;
import fourfold.log.Surface;
import fourfold.progress.Setting;
import fourfold.progress.Steering;
import fourfold.store.DataPath;
import fourfold.store.Store;
import fourfold.terminal.SessionClock;
import fourfold.terminal.TerminalException;
import fourfold.terminal.TerminalSession;
import fourfold.terminal.WindowSize;
import fourfold.words.SafeText;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;

/** A home that is open: its store, its records and its clock. */
public final class Home implements AutoCloseable {
    /** Where the home's settings hold columns and rows of the window. */
    private static final String WINDOW = "window";

    private final Store store;
    private final Household records;
    private final SessionClock moments;
    private final Optional<Demo> demo;

    private Home(Store store, SessionClock moments, Household records, Optional<Demo> demo) {
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
            return new Home(copy.store(), moments, new Household(copy.store(), moments), Optional.of(copy));
        }
        Path place = place(world, file);
        Store store = Store.open(place);
        return new Home(store, moments, new Household(store, moments, place), Optional.empty());
    }

    /** The named file, or the usual one. */
    public static Path place(Environment world, Optional<Path> file) {
        return file.orElseGet(() -> DataPath.usual(world.systemName(), world.environment(), world.home()));
    }

    public Household records() {
        return records;
    }

    public Store store() {
        return store;
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
            rememberWindow(stage.size().getColumns(), stage.size().getRows());
        }
    }

    public void rememberWindow(int columns, int rows) {
        String written = columns + "x" + rows;
        if (WindowSize.remembered(written).isPresent()) {
            try {
                store.keepHomeSetting(WINDOW, written);
            } catch (RecordsFailure e) {
                // The window opens in its usual size next time; everything that counts was kept before.
            }
        }
    }

    /** The named child, or the only one. */
    public Child child(Optional<String> name, CommandSpec spec) {
        List<Child> children = store.children();
        List<Child> fitting = name.map(n -> called(children, n)).orElse(children);
        if (fitting.size() == 1) {
            return fitting.get(0);
        }
        String names = children.stream().map(c -> "\"" + c.name() + "\"").collect(Collectors.joining(", "));
        String known = children.isEmpty()
                ? "No child is here yet. Add one with: fourfold children --add NAME"
                : "Name one with --child: " + names;
        throw new ParameterException(
                spec.commandLine(),
                name.map(n -> "There is no child \"" + n + "\". ").orElse("") + known);
    }

    /** The children whom a typed name means; those written exactly so come before those of the same name. */
    public static List<Child> called(List<Child> children, String name) {
        List<Child> exactly =
                children.stream().filter(c -> c.name().equals(name)).toList();
        return exactly.isEmpty()
                ? children.stream().filter(c -> ChildName.same(c.name(), name)).toList()
                : exactly;
    }

    /**
     * Tells what could not be kept, now that nothing is drawn any more; gives the exit code. The
     * file's thread may still be waiting for another program.
     */
    public int told(Environment world) {
        FileWork work = records.fileWork();
        if (!work.finish(Duration.ofSeconds(1))) {
            world.err().println(records.words().say("drill.moment") + ".");
        }
        work.close();
        records.toTell().forEach(line -> world.err().println("fourfold: " + SafeText.safe(line)));
        return records.toTell().isEmpty() ? ExitCode.DONE : ExitCode.WORLD;
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
