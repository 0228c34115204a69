// SPDX-License-Identifier: Apache-2.0
package fourfold.terminal;

import com.pty4j.PtyProcess;
import com.pty4j.PtyProcessBuilder;
import com.pty4j.WinSize;
import java.io.ByteArrayOutputStream;
import java.io.File;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.locks.LockSupport;
import java.util.function.BooleanSupplier;
import java.util.function.Predicate;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** A program running in a real pseudo-terminal: a test types, resizes, hangs up, and looks at a {@link ScreenModel}. */
public final class PtyProgram implements AutoCloseable {
    private static final Duration PATIENCE = Duration.ofSeconds(20);

    private final PtyProcess process;
    private final ScreenModel model;
    private final ByteArrayOutputStream sent = new ByteArrayOutputStream();
    private final Thread reader;

    private PtyProgram(PtyProcess process, ScreenModel model) {
        this.process = process;
        this.model = model;
        reader = new Thread(this::read, "pty");
        reader.setDaemon(true);
        reader.start();
    }

    /**
     * Starts a command.
     *
     * @param environment variables over those of this process; an empty value removes one
     */
    public static PtyProgram start(Map<String, String> environment, int columns, int rows, List<String> command) {
        Map<String, String> all = new HashMap<>(System.getenv());
        List.of("NO_COLOR", "COLORTERM", "LC_ALL", "LC_CTYPE", "DISPLAY", "WAYLAND_DISPLAY", "ENV", "JAVA_TOOL_OPTIONS")
                .forEach(all::remove);
        all.putAll(Map.of("TERM", "xterm-256color", "LANG", "C.UTF-8", "CLASSPATH", classPath()));
        all.putAll(environment);
        all.values().removeIf(String::isEmpty);
        try {
            PtyProcess process = new PtyProcessBuilder(command.toArray(String[]::new))
                    .setEnvironment(all)
                    .setInitialColumns(columns)
                    .setInitialRows(rows)
                    .start();
            return new PtyProgram(process, new ScreenModel(columns, rows));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The command that runs a main class; the variable CLASSPATH says where it is, see {@link #classPath()}. */
    public static List<String> java(Class<?> main, String... arguments) {
        List<String> command = new ArrayList<>(List.of(
                System.getProperty("java.home") + "/bin/java",
                "-XX:TieredStopAtLevel=1",
                "-XX:+UseSerialGC",
                "-Xmx128m",
                "-Djava.awt.headless=true",
                main.getName()));
        command.addAll(List.of(arguments));
        return List.copyOf(command);
    }

    /** The class path of this test; as a variable it keeps command lines short. */
    public static String classPath() {
        return System.getProperty("java.class.path");
    }

    /**
     * The same for a Java that is started with LC_ALL=C, which can open no file whose path has more than ASCII in it:
     * such parts of it are copied into a folder. It can be used from any folder; such a Java needs one that it can express.
     */
    public static String asciiClassPath(Path folder) throws IOException {
        List<String> parts = new ArrayList<>();
        for (String part : classPath().split(Pattern.quote(File.pathSeparator), -1)) {
            String whole = Path.of(part).toAbsolutePath().toString();
            boolean ascii = whole.chars().allMatch(c -> c < 0x80);
            parts.add(ascii ? whole : copied(Path.of(part), folder.resolve("part" + parts.size())));
        }
        return String.join(File.pathSeparator, parts);
    }

    private static String copied(Path from, Path to) throws IOException {
        try (Stream<Path> files = Files.walk(from)) {
            for (Path file : files.toList()) {
                Files.copy(file, to.resolve(from.relativize(file).toString()));
            }
        }
        return to.toString();
    }

    /** A command as one line for a shell. */
    public static String shellLine(List<String> command) {
        return String.join(" ", command.stream().map(word -> "'" + word + "'").toList());
    }

    private void read() {
        byte[] chunk = new byte[8192];
        try (InputStream in = process.getInputStream()) {
            for (int length = in.read(chunk); length > 0; length = in.read(chunk)) {
                byte[] bytes = java.util.Arrays.copyOf(chunk, length);
                synchronized (model) {
                    sent.writeBytes(bytes);
                    model.accept(bytes);
                }
            }
        } catch (IOException e) {
            // Linux says so when the program's side is closed.
        }
    }

    /** Types a text, in UTF-8. */
    public void type(String text) {
        type(text.getBytes(StandardCharsets.UTF_8));
    }

    /** Types bytes as they are. */
    public void type(byte... bytes) {
        try {
            process.getOutputStream().write(bytes);
            process.getOutputStream().flush();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Changes the size of the terminal's window. */
    public void resize(int columns, int rows) {
        synchronized (model) {
            model.resize(columns, rows);
        }
        process.setWinSize(new WinSize(columns, rows));
    }

    /** Closes the terminal under the program, as closing its window does. */
    public void hangUp() {
        try {
            process.getOutputStream().close();
            process.getInputStream().close();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** What is shown now. */
    public String text() {
        synchronized (model) {
            return model.text();
        }
    }

    /** All bytes sent so far, as ISO 8859-1. */
    public String bytes() {
        synchronized (model) {
            return sent.toString(StandardCharsets.ISO_8859_1);
        }
    }

    /** Looks at the model while nothing changes it. */
    public <T> T look(java.util.function.Function<ScreenModel, T> look) {
        synchronized (model) {
            return look.apply(model);
        }
    }

    /** Waits until a phrase is shown. */
    public void awaitText(String phrase) {
        awaitThat("the screen shows \"" + phrase + "\"", () -> text().contains(phrase));
    }

    /** Waits until the text shown matches, and returns the first group of the match. */
    public String awaitMatch(String expression) {
        Predicate<String> shown =
                text -> Pattern.compile(expression).matcher(text).find();
        awaitThat("the screen matches " + expression, () -> shown.test(text()));
        Matcher matcher = Pattern.compile(expression).matcher(text());
        if (!matcher.find()) {
            throw new AssertionError("the screen changed: " + text());
        }
        return matcher.group(1);
    }

    /** Waits until something holds; fails after twenty seconds and shows the screen. */
    public void awaitThat(String what, BooleanSupplier holds) {
        long begun = System.nanoTime();
        while (!holds.getAsBoolean()) {
            if (System.nanoTime() - begun > PATIENCE.toNanos()) {
                throw new AssertionError("waited in vain until " + what + "; the screen shows:\n" + text());
            }
            LockSupport.parkNanos(2_000_000);
        }
    }

    /** Waits for the end of the command and returns its exit code. */
    public int exitCode() {
        awaitThat("the program ends", () -> !process.isAlive());
        return process.exitValue();
    }

    /** Waits until everything the command has shown is in the model. */
    public void awaitEndOfOutput() {
        awaitThat("the program shows no more", () -> !reader.isAlive());
    }

    /** The command's process. */
    public long pid() {
        return process.pid();
    }

    /** Sends a signal, such as {@code TERM}, to any process. */
    public static void signal(String name, long pid) {
        try {
            int code = new ProcessBuilder("kill", "-" + name, Long.toString(pid))
                    .start()
                    .waitFor();
            if (code != 0) {
                throw new AssertionError("no signal " + name + " to " + pid);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new AssertionError(e);
        }
    }

    /** Ends the command if it still runs. */
    @Override
    public void close() {
        process.destroyForcibly();
    }
}
