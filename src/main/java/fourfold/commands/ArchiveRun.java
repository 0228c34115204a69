// SPDX-License-Identifier: Apache-2.0
package fourfold.commands;

import fourfold.home.Environment;
import fourfold.home.Home;
import fourfold.terminal.PageLoop;
import fourfold.terminal.Rehearsal;
import fourfold.terminal.TerminalSession;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.Reader;
import java.io.Writer;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Map;
import java.util.Optional;

/**
 * The run that the build makes once for its archive of classes (src/main/package/start.xml): a printed grid of the demo,
 * then a new file's first page and drill on a terminal in memory. Nothing is printed; what is loaded is in the archive.
 */
final class ArchiveRun {
    private ArchiveRun() {}

    /**
     * Runs.
     *
     * @param arguments one: a folder for the file
     */
    public static void main(String[] arguments) throws IOException, InterruptedException {
        String file = Path.of(arguments[0], "family.db").toString();
        Preloading.begin();
        Fourfold.run(world(), "--demo", "--child", "Pip", "grid");
        Fourfold.run(world(), "--store", file, "children", "--add", "Pip");
        // Without a terminal it only gets as far as to say so.
        Fourfold.run(world(), "--store", file, "drill");
        try (Home home = Home.open(world(), Optional.of(Path.of(file)), false)) {
            draw(home);
            drawNowhere(home);
        }
        asATerminalIsAsked();
    }

    private static Environment world() {
        PrintWriter nowhere = new PrintWriter(Writer.nullWriter());
        return new Environment(
                new BufferedReader(Reader.nullReader()),
                nowhere,
                nowhere,
                nowhere,
                Map.of("LANG", "C.UTF-8"),
                Path.of(""),
                System.getProperty("os.name"),
                true,
                Environment::systemClock);
    }

    /** The first child, who is ready, types a digit. */
    private static void draw(Home home) {
        Rehearsal.ofLibrary();
        try (TerminalSession stage = TerminalSession.inMemory(80, 24)) {
            App app = new App(world());
            PageLoop loop = app.loop(home, stage, app.firstPage(home, stage));
            loop.turn(Duration.ZERO);
            for (char key : "\n\n1".toCharArray()) {
                stage.type(key);
                loop.turn(Duration.ZERO);
                home.practice().fileWork().finish(Duration.ofSeconds(10));
                loop.turn(Duration.ZERO);
            }
        }
    }

    /** The first page goes the way to a real terminal, which the one in memory leaves out. */
    private static void drawNowhere(Home home) {
        try (TerminalSession stage = Rehearsal.ofSession()) {
            App app = new App(world());
            app.loop(home, stage, app.firstPage(home, stage)).turn(Duration.ofMillis(10));
        }
    }

    /** A terminal is asked for its modes by a process, and the library has its own way to read keys. */
    private static void asATerminalIsAsked() throws IOException, InterruptedException {
        Process process = new ProcessBuilder(System.getProperty("java.home") + "/bin/java", "-version").start();
        process.getErrorStream().readAllBytes();
        process.waitFor();
        Rehearsal.ofKeyReader();
    }
}
