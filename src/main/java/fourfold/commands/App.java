package fourfold.commands;

import fourfold.home.Environment;
import fourfold.home.Home;
import fourfold.screens.child.HomePage;
import fourfold.store.DataPath;
import fourfold.terminal.PageLoop;
import fourfold.terminal.TerminalException;
import fourfold.terminal.TerminalSession;
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

    App(Environment world) {
        this.world = world;
    }

    Environment world() {
        return world;
    }

    boolean isDemo() {
        return demo;
    }

    boolean debug() {
        return debug;
    }

    /** Opens the home's records: the demo, the named file, or the usual one. */
    Home open() {
        return Home.open(world, Optional.ofNullable(file).map(DataPath::of), demo);
    }

    /**
     * The file the records are in.
     *
     * @throws ParameterException with {@code --demo}, whose file is thrown away
     */
    Path place() {
        if (demo) {
            throw new ParameterException(spec.commandLine(), "--demo has no file of its own to look after");
        }
        return Home.place(world, Optional.ofNullable(file).map(DataPath::of));
    }

    /** The name after {@code --child}, before or after the command. */
    Optional<String> child() {
        return Optional.ofNullable(child);
    }

    @Override
    public Integer call() throws TerminalException {
        if (child != null) {
            throw new ParameterException(
                    spec.commandLine(), "--child goes with a command, such as: fourfold drill --child NAME");
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
