// SPDX-License-Identifier: Apache-2.0
package fourfold.commands;

import fourfold.home.Environment;
import fourfold.home.Home;
import fourfold.log.RecordsFailure;
import fourfold.terminal.Abilities;
import fourfold.terminal.TerminalException;
import fourfold.words.Words;
import java.io.BufferedOutputStream;
import java.io.BufferedReader;
import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.function.BooleanSupplier;
import picocli.CommandLine;
import picocli.CommandLine.ParameterException;

/** Runs the command line and turns whatever goes wrong into one line and an exit code. */
public final class Fourfold {
    private Fourfold() {}

    /** Runs the program on the process's own streams; gives the exit code. */
    public static int run(String[] arguments) {
        Preloading.begin(arguments);
        Charset charset = encoding("stdout.encoding");
        // The library's own stream would ignore a full disk; this one reports it.
        StandardOutput written = new StandardOutput(new FileOutputStream(FileDescriptor.out));
        OutputStream stdout = new BufferedOutputStream(written);
        Environment world = new Environment(
                new BufferedReader(new InputStreamReader(System.in, encoding("stdin.encoding"))),
                new PrintWriter(new OutputStreamWriter(stdout, charset)),
                new PrintWriter(new OutputStreamWriter(stdout, StandardCharsets.UTF_8)),
                new PrintWriter(System.err, true, encoding("stderr.encoding")),
                System.getenv(),
                Home.homeFolder(),
                System.getProperty("os.name"),
                charset.newEncoder().canEncode("×÷░▓█"),
                Environment::systemClock);
        return run(world, written::isClosedByItsReader, arguments);
    }

    /**
     * What the terminal writes and reads; since Java 18 that is no longer Java's default. Where the starter
     * (src/main/package/fourfold) had to give Java another language setting, it says what the terminal's own was.
     */
    private static Charset encoding(String property) {
        String known = System.getProperty(
                property,
                System.getProperty("native.encoding", Charset.defaultCharset().name()));
        String name = System.getenv().getOrDefault(Abilities.CHARSET, known);
        return Charset.isSupported(name) ? Charset.forName(name) : Charset.defaultCharset();
    }

    static int run(Environment world, String... arguments) {
        return run(world, () -> false, arguments);
    }

    /**
     * The same.
     *
     * @param closed whether the reader of what is printed went away, which ends the program without a word
     */
    private static int run(Environment world, BooleanSupplier closed, String... arguments) {
        int code = arguments.length == 0 ? opened(world) : commanded(world, arguments);
        boolean lostWords = world.out().checkError();
        boolean lostData = world.data().checkError();
        if ((lostWords || lostData) && code == ExitCode.DONE && !closed.getAsBoolean()) {
            world.err().println("fourfold: " + App.words(world).say("usage.output"));
            code = ExitCode.WORLD;
        }
        world.err().flush();
        return code;
    }

    /** Nothing to parse: the options' library stays out of the way of the first picture. */
    private static int opened(Environment world) {
        App app = new App(world);
        try {
            return app.call();
        } catch (TerminalException | IOException | RuntimeException e) {
            return failed(world, app.debug(), e);
        }
    }

    private static int commanded(Environment world, String... arguments) {
        App app = new App(world);
        CommandLine line = new CommandLine(app);
        CommandList.addTo(line, arguments);
        return line.setOut(world.out())
                .setErr(world.err())
                .setColorScheme(CommandLine.Help.defaultColorScheme(CommandLine.Help.Ansi.OFF))
                .setParameterExceptionHandler((e, args) -> wrongUsage(world, e))
                .setExecutionStrategy(parsed -> {
                    if (app.debug()) {
                        DebugReport.lines(app).forEach(found -> world.err().println(oneLine(found)));
                        world.err().flush();
                    }
                    // The help's texts are read only when they are shown: most commands print none of them.
                    if (parsed.asCommandLineList().stream().anyMatch(CommandLine::isUsageHelpRequested)) {
                        line.setResourceBundle(App.words(world).help());
                    }
                    return new CommandLine.RunLast().execute(parsed);
                })
                .setExecutionExceptionHandler((e, command, parsed) -> failed(world, app.debug(), e))
                .execute(arguments);
    }

    private static int wrongUsage(Environment world, ParameterException e) {
        Words words = App.words(world);
        String command = e.getCommandLine().getCommandSpec().qualifiedName();
        world.err().println("fourfold: " + oneLine(words.say("usage.see", WrongUsage.message(e, words), command)));
        return ExitCode.USAGE;
    }

    private static int failed(Environment world, boolean debug, Exception e) {
        if (e instanceof PractisingElsewhere elsewhere) {
            Words language = App.words(world);
            world.err().println("fourfold: " + oneLine(language.say("drill.elsewhere", elsewhere.name())));
            return ExitCode.WORLD;
        }
        boolean foreseen = e instanceof IOException || e instanceof UncheckedIOException;
        String words = foreseen ? e.getMessage() : App.words(world).say("usage.unforeseen", e);
        if (e instanceof RecordsFailure failure) {
            words = App.words(world).failure(failure);
        } else if (e instanceof TerminalException nowhere) {
            String key = "terminal." + nowhere.reason().name().toLowerCase(Locale.ROOT);
            words = App.words(world).say(key, nowhere.detail());
        }
        world.err().println("fourfold: " + oneLine(String.valueOf(words)));
        if (debug) {
            e.printStackTrace(world.err());
        }
        return ExitCode.WORLD;
    }

    private static String oneLine(String text) {
        return fourfold.words.SafeText.safe(text.replaceAll("\\s*\\R\\s*", " "));
    }
}
