package fourfold.commands;

import fourfold.home.Environment;
import fourfold.home.Home;
import fourfold.screens.child.HomePage;
import fourfold.store.DataPath;
import fourfold.terminal.PageLoop;
import fourfold.terminal.TerminalException;
import fourfold.terminal.TerminalSession;
import fourfold.words.Words;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ScopeType;
import picocli.CommandLine.Spec;

/** The program itself: without a command it opens on the screen. */
@Command(name = "fourfold", mixinStandardHelpOptions = true, versionProvider = Version.class, sortOptions = false)
final class App implements Callable<Integer> {
    private final Environment world;

    @Option(names = "--store", paramLabel = "${bundle:label.file}", scope = ScopeType.INHERIT)
    private @Nullable String file;

    @Option(names = "--child", paramLabel = "${bundle:label.name}", scope = ScopeType.INHERIT)
    private @Nullable String child;

    @Option(names = "--demo", scope = ScopeType.INHERIT)
    private boolean demo;

    @Option(names = "--debug", scope = ScopeType.INHERIT)
    private boolean debug;

    @Spec
    private CommandSpec spec;

    private @Nullable Words words;

    App(Environment world) {
        this.world = world;
    }

    Environment world() {
        return world;
    }

    /** The language: what the system asks for, and once the home is open, what the home says. */
    Words words() {
        if (words == null) {
            words = world.words();
        }
        return words;
    }

    boolean isDemo() {
        return demo;
    }

    boolean debug() {
        return debug;
    }

    /** Opens the home's records: the demo, the named file, or the usual one. */
    Home open() {
        Home home = Home.open(world, Optional.ofNullable(file).map(DataPath::of), demo);
        words = home.records().words();
        return home;
    }

    /**
     * The file the records are in.
     *
     * @throws ParameterException with {@code --demo}, whose file is thrown away
     */
    Path place() {
        if (demo) {
            throw new ParameterException(spec.commandLine(), words().say("usage.demo"));
        }
        return Home.place(world, Optional.ofNullable(file).map(DataPath::of));
    }

    /**
     * Makes a file that was named on the command line.
     *
     * @throws UncheckedIOException with one line that says which file, what failed and what to do
     */
    void make(Path made, NewFile.Content content) {
        try {
            NewFile.write(made, content);
        } catch (IOException e) {
            throw new UncheckedIOException(words().notWritten(made, e), e);
        }
    }

    /** The name after {@code --child}, before or after the command. */
    Optional<String> child() {
        return Optional.ofNullable(child);
    }

    @Override
    public Integer call() throws TerminalException {
        if (child != null) {
            throw new ParameterException(spec.commandLine(), words().say("usage.child.alone"));
        }
        try (Home home = open()) {
            try (TerminalSession stage = home.stage(world)) {
                new PageLoop(
                                stage,
                                home.moments(),
                                new HomePage(home.records(), world.scheduler(), home.moments(), stage.surface()))
                        .run();
                home.rememberWindow(stage);
            }
            return home.told(world);
        }
    }
}
