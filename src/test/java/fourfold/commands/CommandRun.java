package fourfold.commands;

import fourfold.screens.Moments;
import java.io.BufferedReader;
import java.io.PrintWriter;
import java.io.StringReader;
import java.io.StringWriter;
import java.io.Writer;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Map;

/**
 * One run of the command line on a real file, with streams of text and a clock that stands still.
 *
 * @param code the exit code
 * @param out what was printed
 * @param err what was told of errors
 */
record CommandRun(int code, String out, String err) {
    static final Instant NOW = Instant.parse("2026-03-02T16:00:00Z");

    /** Runs with the usual file being {@code file}. */
    static CommandRun of(Path file, String... arguments) {
        return with(file, true, new BufferedReader(new StringReader("")), CommandRun::stopped, arguments);
    }

    /** The same where nothing but ASCII can be printed. */
    static CommandRun ascii(Path file, String... arguments) {
        return with(file, false, new BufferedReader(new StringReader("")), CommandRun::stopped, arguments);
    }

    /** The same with lines typed, one after the other. */
    static CommandRun typed(Path file, String lines, String... arguments) {
        return with(file, true, new BufferedReader(new StringReader(lines)), CommandRun::stopped, arguments);
    }

    private static Moments stopped() {
        return new Moments(NOW, ZoneId.of("Europe/Berlin"), () -> 0L);
    }

    private static CommandRun with(
            Path file,
            boolean unicode,
            BufferedReader in,
            java.util.function.Supplier<Moments> clock,
            String... arguments) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        int code = Fourfold.run(world(file, unicode, in, out, err, clock), arguments);
        return new CommandRun(code, out.toString(), err.toString());
    }

    static World world(
            Path file,
            boolean unicode,
            BufferedReader in,
            Writer out,
            Writer err,
            java.util.function.Supplier<Moments> clock) {
        PrintWriter printed = new PrintWriter(out);
        return new World(
                in,
                printed,
                printed,
                new PrintWriter(err),
                Map.of("FOURFOLD_STORE", file.toString(), "FOURFOLD_LANGUAGE", "en"),
                Path.of(System.getProperty("java.io.tmpdir")),
                "Linux",
                unicode,
                clock);
    }

    /** The same world with another language asked for. */
    static World speaking(World world, String language) {
        Map<String, String> environment = new java.util.HashMap<>(world.environment());
        environment.put("FOURFOLD_LANGUAGE", language);
        return new World(
                world.in(),
                world.out(),
                world.data(),
                world.err(),
                environment,
                world.home(),
                world.systemName(),
                world.unicode(),
                world.clock());
    }
}
