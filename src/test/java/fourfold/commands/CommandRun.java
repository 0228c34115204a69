// SPDX-License-Identifier: Apache-2.0
package fourfold.commands;

import fourfold.home.Environment;
import fourfold.terminal.SessionClock;
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
public record CommandRun(int code, String out, String err) {
    static final Instant NOW = Instant.parse("2026-03-02T16:00:00Z");

    /** Runs with the usual file being {@code file}. */
    public static CommandRun of(Path file, String... arguments) {
        return with(file, true, new BufferedReader(new StringReader("")), CommandRun::stopped, arguments);
    }

    /** The same where nothing but ASCII can be printed. */
    static CommandRun ascii(Path file, String... arguments) {
        return with(file, false, new BufferedReader(new StringReader("")), CommandRun::stopped, arguments);
    }

    /** The same with lines typed, one after the other. */
    public static CommandRun typed(Path file, String lines, String... arguments) {
        return with(file, true, new BufferedReader(new StringReader(lines)), CommandRun::stopped, arguments);
    }

    /** The same in another language. */
    public static CommandRun in(String language, Path file, String... arguments) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        BufferedReader nothing = new BufferedReader(new StringReader(""));
        Environment world = world(file, true, nothing, out, err, CommandRun::stopped);
        int code = Fourfold.run(speaking(world, language), arguments);
        return new CommandRun(code, out.toString(), err.toString());
    }

    /** The program without a command, on a terminal that says that it can't draw, with lines typed. */
    static CommandRun dumb(Path file, String lines) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        Environment usual =
                world(file, true, new BufferedReader(new StringReader(lines)), out, err, CommandRun::stopped);
        Map<String, String> variables = new java.util.HashMap<>(usual.environment());
        variables.put("TERM", "dumb");
        int code = Fourfold.run(new Environment(
                usual.in(),
                usual.out(),
                usual.data(),
                usual.err(),
                variables,
                usual.home(),
                usual.systemName(),
                usual.unicode(),
                usual.clock()));
        return new CommandRun(code, out.toString(), err.toString());
    }

    private static SessionClock stopped() {
        return new SessionClock(NOW, ZoneId.of("Europe/Berlin"), () -> 0L);
    }

    private static CommandRun with(
            Path file,
            boolean unicode,
            BufferedReader in,
            java.util.function.Supplier<SessionClock> clock,
            String... arguments) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        int code = Fourfold.run(world(file, unicode, in, out, err, clock), arguments);
        return new CommandRun(code, out.toString(), err.toString());
    }

    static Environment world(
            Path file,
            boolean unicode,
            BufferedReader in,
            Writer out,
            Writer err,
            java.util.function.Supplier<SessionClock> clock) {
        PrintWriter printed = new PrintWriter(out);
        return new Environment(
                in,
                printed,
                printed,
                new PrintWriter(err),
                Map.of(
                        "FOURFOLD_STORE",
                        file.toString(),
                        "FOURFOLD_LANGUAGE",
                        "en",
                        "XDG_DOCUMENTS_DIR",
                        String.valueOf(file.toAbsolutePath().getParent())),
                Path.of(System.getProperty("java.io.tmpdir")),
                "Linux",
                unicode,
                clock);
    }

    /** The same world with another language asked for. */
    static Environment speaking(Environment world, String language) {
        Map<String, String> environment = new java.util.HashMap<>(world.environment());
        environment.put("FOURFOLD_LANGUAGE", language);
        return new Environment(
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
