// SPDX-License-Identifier: Apache-2.0
package fourfold.commands;

import fourfold.home.ChildChoice;
import fourfold.home.Environment;
import fourfold.home.Home;
import fourfold.home.NewFile;
import fourfold.home.TwoComputers;
import fourfold.log.Child;
import fourfold.screens.HomePerformer;
import fourfold.screens.child.HomePage;
import fourfold.screens.child.PageContext;
import fourfold.terminal.Page;
import fourfold.terminal.PageLoop;
import fourfold.terminal.TerminalException;
import fourfold.terminal.TerminalSession;
import fourfold.upkeep.Merge;
import fourfold.upkeep.RowCounts;
import fourfold.words.SafeText;
import fourfold.words.Words;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.Future;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
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
    private @Nullable Future<List<TwoComputers.Report>> met;

    App(Environment world) {
        this.world = world;
    }

    Environment world() {
        return world;
    }

    boolean debug() {
        return debug;
    }

    boolean isDemo() {
        return demo;
    }

    /** Opens the home's records: the demo, the named file, or the usual one. */
    Home open() {
        Home home = Home.open(world, Optional.ofNullable(file).map(Home::path), demo);
        words = words(home);
        return home;
    }

    /**
     * The file the records are in.
     *
     * @throws picocli.CommandLine.ParameterException with {@code --demo}, whose file is thrown away
     */
    Path place() {
        if (demo) {
            throw WrongUsage.of(spec, words().say("usage.demo"));
        }
        return Home.place(world, Optional.ofNullable(file).map(Home::path));
    }

    /**
     * Makes a file that was named on the command line; {@code -} is standard output (POSIX.1-2017, 12.2, guideline 13).
     *
     * @throws UncheckedIOException with one line that says which file, what failed and what to do
     */
    void make(Path made, NewFile.Content content) {
        try {
            if (made.equals(Path.of("-"))) {
                content.to(world.data());
                return;
            }
            NewFile.write(made, content);
        } catch (IOException e) {
            throw new UncheckedIOException(words().notWritten(made, e), e);
        }
    }

    /** The name after {@code --child}, before or after the command. */
    Optional<String> child() {
        return Optional.ofNullable(child);
    }

    /**
     * The named child, or the only one.
     *
     * @throws picocli.CommandLine.ParameterException if none fits, or more than one
     */
    Child child(Home home, CommandSpec command) {
        ChildChoice choice = home.children().named(child());
        return choice.only().orElseThrow(() -> {
            String names =
                    choice.all().stream().map(c -> words().quoted(c.name())).collect(Collectors.joining(", "));
            String known =
                    choice.all().isEmpty() ? words().say("usage.child.none") : words().say("usage.child.name", names);
            return WrongUsage.of(
                    command,
                    child().map(n -> words().say("usage.child.unknown", n) + " ")
                                    .orElse("")
                            + known);
        });
    }

    /** The language: what the system asks for, and once the home is open, what the home says. */
    Words words() {
        if (words == null) {
            words = words(world);
        }
        return words;
    }

    /** The language where no home is open. */
    static Words words(Environment world) {
        return Words.of(world.language(Optional.empty()));
    }

    /** The language of this home. */
    Words words(Home home) {
        return Words.of(world.language(home.settings().language()));
    }

    /** The first page of an open home. */
    Page firstPage(Home home, TerminalSession stage) {
        return new HomePage.Open(new PageContext(words(home), world.scheduler(), stage.surface())).first(home);
    }

    /** The loop of pages of an open home. */
    PageLoop loop(Home home, TerminalSession stage, Page first) {
        return new PageLoop(stage, home.moments(), new HomePerformer(home, words(home)), first);
    }

    /** A terminal that says that it can't draw gets plain lines. */
    boolean isDumb() {
        return world.environment().getOrDefault("TERM", "").equalsIgnoreCase("dumb");
    }

    /**
     * Prints what could not be kept, now that nothing is drawn any more, and returns the exit code. The
     * file's thread may still be waiting for another program.
     */
    int reportLosses(Home home) {
        if (!home.practice().fileWork().finish(Duration.ofSeconds(1))) {
            world.err().println(words(home).say("drill.moment") + ".");
        }
        home.practice().fileWork().close();
        tellOfOthers();
        List<String> lines = home.practice().toTell();
        lines.forEach(line -> world.err().println("fourfold: " + SafeText.safe(line)));
        return lines.isEmpty() ? ExitCode.DONE : ExitCode.WORLD;
    }

    /** Begins to take in what other computers laid in the folder where they meet; nobody waits for it. */
    void meetOthers(Home home) {
        if (!demo) {
            Instant now = home.moments().now();
            met = home.practice().fileWork().begin(() -> home.together().takeIn(now));
        }
    }

    /** Tells what was taken in from other computers, and what was passed over. */
    void tell(List<TwoComputers.Report> reports) {
        for (TwoComputers.Report report : reports) {
            report.taken()
                    .map(Merge::came)
                    .map(came -> came.of(RowCounts.Kind.ANSWER))
                    .ifPresent(n -> world.out().println(words().say("together.taken", report.computer(), n)));
            report.failure().ifPresent(f -> world.err().println("fourfold: " + SafeText.safe(words().failure(f))));
        }
    }

    private void tellOfOthers() {
        try {
            if (met != null && met.isDone()) {
                tell(met.get());
            }
        } catch (ExecutionException e) {
            // The folder is not there just now: the next start looks again.
            met = null;
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    @Override
    public Integer call() throws TerminalException, IOException {
        if (child != null) {
            throw WrongUsage.of(spec, words().say("usage.child.alone"));
        }
        Optional<Integer> code = Optional.empty();
        while (code.isEmpty()) {
            code = run();
        }
        return code.get();
    }

    /** Runs once; empty if a backup has taken the file's place, and all begins anew with it. */
    private Optional<Integer> run() throws TerminalException, IOException {
        try (Home home = open()) {
            meetOthers(home);
            if (isDumb()) {
                new PlainStart(this, home).run();
                return Optional.of(reportLosses(home));
            }
            try (TerminalSession stage = home.stage(world)) {
                loop(home, stage, firstPage(home, stage)).run();
                home.rememberWindow(stage);
            }
            int code = reportLosses(home);
            return home.isReplaced() ? Optional.empty() : Optional.of(code);
        }
    }
}
