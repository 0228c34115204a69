package fourfold.commands;

import fourfold.screens.Records;
import fourfold.screens.StageException;
import fourfold.store.StoreException;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.nio.charset.Charset;
import java.nio.file.Path;
import picocli.CommandLine;
import picocli.CommandLine.ParameterException;

/** Runs the command line and turns whatever goes wrong into one line and an exit code. */
public final class Fourfold {
    private Fourfold() {}

    /** Runs the program on the process's own streams; gives the exit code. */
    public static int run(String[] arguments) {
        Charset charset = Charset.defaultCharset();
        World world = new World(
                new BufferedReader(new InputStreamReader(System.in, charset)),
                new PrintWriter(System.out, false, charset),
                new PrintWriter(System.err, true, charset),
                System.getenv(),
                Path.of(System.getProperty("user.home")),
                System.getProperty("os.name"),
                charset.newEncoder().canEncode("×÷░▓█"),
                World::systemClock);
        return run(world, arguments);
    }

    static int run(World world, String... arguments) {
        App app = new App(world);
        CommandLine line = new CommandLine(app)
                .setOut(world.out())
                .setErr(world.err())
                .setParameterExceptionHandler((e, args) -> wrongUsage(world, e))
                .setExecutionExceptionHandler((e, command, parsed) -> failed(world, app.debug(), e));
        int code = line.execute(arguments);
        world.out().flush();
        world.err().flush();
        return code;
    }

    private static int wrongUsage(World world, ParameterException e) {
        world.err()
                .println("fourfold: " + oneLine(String.valueOf(e.getMessage())) + " (see "
                        + e.getCommandLine().getCommandSpec().qualifiedName() + " --help)");
        return ExitCode.USAGE;
    }

    private static int failed(World world, boolean debug, Exception e) {
        boolean foreseen = e instanceof StoreException
                || e instanceof StageException
                || e instanceof Records.NotKept
                || e instanceof IOException
                || e instanceof UncheckedIOException;
        String words = foreseen ? e.getMessage() : "something unforeseen went wrong: " + e + " (--debug tells more)";
        world.err().println("fourfold: " + oneLine(String.valueOf(words)));
        if (debug) {
            e.printStackTrace(world.err());
        }
        return e instanceof StageException ? ExitCode.USAGE : ExitCode.WORLD;
    }

    private static String oneLine(String text) {
        return fourfold.export.PlainText.safe(text.replaceAll("\\s*\\R\\s*", " "));
    }
}
