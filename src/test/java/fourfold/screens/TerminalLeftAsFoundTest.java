package fourfold.screens;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;

/**
 * Guards against a terminal that is left unusable, a program that cannot be ended and one that lives on without its
 * terminal. What a terminal's modes were is asked of the system's own stty before and after.
 */
class TerminalLeftAsFoundTest {
    private static final String PROBE = PtyProgram.shellLine(PtyProgram.java(StageProbe.class));

    /** Runs the probe between two prints of the modes. */
    private static PtyProgram between(Map<String, String> environment) {
        String script = "echo before:$(stty -g).; " + PROBE + "; echo code:$?.; echo after:$(stty -g).";
        PtyProgram program = PtyProgram.start(environment, 200, 24, List.of("sh", "-c", script));
        program.awaitText("ready 200x24");
        assertTrue(program.look(ScreenModel::isAlternate));
        return program;
    }

    private static void assertLeftAsFound(PtyProgram program, int code) {
        program.awaitText("after:");
        assertEquals(program.awaitMatch("before:(\\S+)\\."), program.awaitMatch("after:(\\S+)\\."));
        assertEquals(Integer.toString(code), program.awaitMatch("code:(\\d+)\\."));
        assertTrue(program.look(ScreenModel::isAsFound));
        assertEquals(Set.of(), program.look(ScreenModel::unknown));
    }

    private static long probe(PtyProgram program) {
        return Long.parseLong(program.awaitMatch("pid (\\d+)\\."));
    }

    @Test
    void afterANormalEnd() {
        try (PtyProgram program = between(Map.of())) {
            program.type("q");
            assertLeftAsFound(program, 0);
            // A terminal with a palette gets the palette's colour, never a full one.
            assertTrue(program.look(ScreenModel::styles).stream().anyMatch(style -> style.startsWith("38;5;")));
            assertFalse(program.look(ScreenModel::styles).stream().anyMatch(style -> style.startsWith("38;2;")));
        }
    }

    @Test
    void afterAFailureWhoseMessageStaysReadable() {
        try (PtyProgram program = between(Map.of())) {
            program.type("x");
            assertLeftAsFound(program, 1);
            assertTrue(program.text().contains("asked to fail"));
        }
    }

    @Test
    void afterControlCWhichIsAKeyAndWithoutUnicodeOrColour() {
        try (PtyProgram program = between(Map.of("LANG", "C", "NO_COLOR", "1"))) {
            program.awaitText("7 x 8 = 56 / 1 :=#@ -|+ -| . 7 x");
            program.type((byte) 3);
            assertLeftAsFound(program, 3);
            assertTrue(program.bytes().chars().allMatch(c -> c < 0x80));
            assertTrue(program.look(ScreenModel::styles).stream().allMatch(style -> style.matches("0|39|49")));
        }
    }

    @Test
    void afterBeingToldToEnd() {
        try (PtyProgram program = between(Map.of())) {
            PtyProgram.signal("TERM", probe(program));
            // 128 + 15, as the shell counts a death by SIGTERM.
            assertLeftAsFound(program, 143);
        }
    }

    @Test
    void afterBeingToldToEndInTheMiddleOfAPicture() {
        try (PtyProgram program = between(Map.of())) {
            long pid = probe(program);
            program.type("b");
            program.awaitMatch("keys (\\d{2,})\\.");
            PtyProgram.signal("TERM", pid);
            assertLeftAsFound(program, 143);
            // Only the shell's own two lines follow the farewell; no piece of a picture does.
            String tail = program.bytes().substring(program.bytes().lastIndexOf("\u001b[?1049l"));
            assertTrue(tail.matches("\u001b\\[\\?1049l(Terminated\\s+)?code:143\\.\\s+after:\\S+\\s+"), tail);
        }
    }

    @Test
    void aClosedTerminalEndsTheProgram() {
        try (PtyProgram program = PtyProgram.start(Map.of(), 80, 24, PtyProgram.java(StageProbe.class))) {
            program.awaitText("ready");
            program.hangUp();
            program.exitCode();
        }
    }

    @Test
    void aClosedTerminalEndsTheProgramEvenIfHangUpsAreIgnored() {
        List<String> command = List.of("sh", "-c", "trap '' HUP; exec " + PROBE);
        try (PtyProgram program = PtyProgram.start(Map.of(), 80, 24, command)) {
            long pid = probe(program);
            program.hangUp();
            program.exitCode();
            assertFalse(ProcessHandle.of(pid).map(ProcessHandle::isAlive).orElse(false));
        }
    }

    @Test
    void stoppedWithControlZItComesBackAndCanBeEndedWhileStopped() {
        Map<String, String> plainShell = Map.of("PS1", "% ", "HISTFILE", "/dev/null");
        try (PtyProgram shell = PtyProgram.start(plainShell, 200, 24, List.of("sh", "-i"))) {
            shell.awaitText("%");
            shell.type("clear=; echo before:$(stty -g).\n");
            String before = shell.awaitMatch("before:([0-9a-f:]+)\\.");
            shell.type(PROBE + "\n");
            long pid = probe(shell);
            shell.type("5");
            shell.awaitText("typed 5.");

            shell.type((byte) 0x1a);
            shell.awaitThat("the shell's screen is back", () -> !shell.look(ScreenModel::isAlternate));
            awaitStopped(shell, pid);
            assertTrue(shell.look(ScreenModel::isAsFound));
            shell.type("echo stopped:$(stty -g).\n");
            assertEquals(before, shell.awaitMatch("stopped:([0-9a-f:]+)\\."));

            shell.type("fg\n");
            shell.awaitText("last Ctrl-z");
            assertTrue(shell.look(ScreenModel::isAlternate));
            shell.type("6");
            shell.awaitText("typed 56.");

            shell.type((byte) 0x1a);
            shell.awaitThat("the shell's screen is back", () -> !shell.look(ScreenModel::isAlternate));
            awaitStopped(shell, pid);
            // One shell continues a job that it ends, another must be told to.
            shell.type("kill %1; kill -CONT %1\n");
            // Z: it has ended, and its shell has not asked after it yet.
            shell.awaitThat("the stopped program has ended", () -> state(pid).matches("Z?"));
            shell.type("echo after:$(stty -g).\n");
            assertEquals(before, shell.awaitMatch("after:([0-9a-f:]+)\\."));
            assertEquals(Set.of(), shell.look(ScreenModel::unknown));
            // A shell that has not asked after the ended job yet would not leave the first time it is told to.
            shell.type("wait; exit\nexit\n");
            shell.exitCode();
        }
    }

    private static void awaitStopped(PtyProgram shell, long pid) {
        shell.awaitThat("the program has stopped", () -> state(pid).startsWith("T"));
    }

    /** The state letter of a process, as ps prints it; empty if there is none. */
    private static String state(long pid) {
        try {
            Process ps = new ProcessBuilder("ps", "-o", "state=", "-p", Long.toString(pid)).start();
            return new String(ps.getInputStream().readAllBytes(), StandardCharsets.US_ASCII).strip();
        } catch (IOException e) {
            throw new AssertionError(e);
        }
    }

    @Test
    void withoutATerminalItSaysSoInOneLine() throws Exception {
        ProcessBuilder builder = new ProcessBuilder(PtyProgram.java(StageProbe.class));
        builder.environment().put("CLASSPATH", PtyProgram.classPath());
        Process piped = builder.start();
        String error = new String(piped.getErrorStream().readAllBytes(), StandardCharsets.UTF_8);
        assertEquals("Fourfold needs a terminal. Start it in a terminal window, or use: drill --plain\n", error);
        assertEquals(2, piped.waitFor());
        assertEquals(0, piped.getInputStream().readAllBytes().length);
    }

    @Test
    void withInputAtItsEndItSaysSoInOneLine() {
        List<String> command = List.of("sh", "-c", PROBE + " </dev/null; echo code:$?.");
        try (PtyProgram program = PtyProgram.start(Map.of(), 100, 24, command)) {
            assertEquals("2", program.awaitMatch("code:(\\d+)\\."));
            assertTrue(program.text().startsWith("Fourfold needs a terminal."));
            assertNotEquals(-1, program.text().indexOf("drill --plain"));
        }
    }
}
