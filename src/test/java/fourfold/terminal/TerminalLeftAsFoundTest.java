// SPDX-License-Identifier: Apache-2.0
package fourfold.terminal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Guards against a terminal that is left unusable, a program that cannot be ended and one that lives on without its
 * terminal. What a terminal's modes were is asked of the system's own stty before and after.
 */
class TerminalLeftAsFoundTest {
    private static final String PROBE = PtyProgram.shellLine(PtyProgram.java(TerminalProbe.class));

    /** Runs the probe between two prints of the modes. */
    private static PtyProgram between(Map<String, String> environment) {
        return between(".", environment);
    }

    private static PtyProgram between(String folder, Map<String, String> environment) {
        String script =
                "cd '" + folder + "'; echo before:$(stty -g).; " + PROBE + "; echo code:$?.; echo after:$(stty -g).";
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
    void afterControlCWhichIsAKeyAndWithoutUnicodeOrColour(@TempDir Path folder) throws IOException {
        String classPath = PtyProgram.asciiClassPath(folder);
        try (PtyProgram program = between("/", Map.of("LANG", "C", "NO_COLOR", "1", "CLASSPATH", classPath))) {
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
        try (PtyProgram program = PtyProgram.start(Map.of(), 80, 24, PtyProgram.java(TerminalProbe.class))) {
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
        try (PtyProgram shell = shell()) {
            String before = modes(shell, "before");
            long pid = begin(shell);
            shell.type("5");
            shell.awaitText("typed 5.");

            stop(shell, pid);
            assertTrue(shell.look(ScreenModel::isAsFound));
            assertEquals(before, modes(shell, "stopped"));

            shell.type("fg\n");
            shell.awaitText("last Ctrl-z");
            assertTrue(shell.look(ScreenModel::isAlternate));
            shell.type("6");
            shell.awaitText("typed 56.");

            stop(shell, pid);
            // One shell continues a job that it ends, another must be told to.
            shell.type("kill %1; kill -CONT %1\n");
            assertEndedAsFound(shell, pid, before);
        }
    }

    @Test
    void endedInTheVeryMomentOfBeingContinuedItDoesNotReachForTheTerminalAgain() {
        try (PtyProgram shell = shell()) {
            String before = modes(shell, "before");
            long pid = begin(shell);
            stop(shell, pid);
            // The process that stopped the program ends first, as it may when both are told to.
            long stopper = offspring(pid).findAny().orElseThrow().pid();
            shell.type("kill -CONT " + pid + "\n");
            shell.awaitThat("the program goes on", () -> !state(pid).startsWith("T"));
            shell.type("kill " + stopper + "; kill -CONT " + stopper + "\n");
            assertEndedAsFound(shell, pid, before);
        }
    }

    @Test
    void endedWhileItWaitsInTheBackgroundForTheTerminal() {
        try (PtyProgram shell = shell()) {
            String before = modes(shell, "before");
            long pid = begin(shell);
            stop(shell, pid);
            shell.type("bg\n");
            // It asks for the terminal back, and the system stops it again with the process that asks.
            shell.awaitThat(
                    "a process asks for the terminal",
                    () -> offspring(pid)
                            .flatMap(child -> child.info().command().stream())
                            .anyMatch(command -> command.endsWith("stty")));
            awaitStopped(shell, pid);
            shell.type("kill %1; kill -CONT %1\n");
            assertEndedAsFound(shell, pid, before);
        }
    }

    /** A shell with a plain prompt and jobs. */
    private static PtyProgram shell() {
        Map<String, String> plain = Map.of("PS1", "% ", "HISTFILE", "/dev/null");
        PtyProgram shell = PtyProgram.start(plain, 200, 24, List.of("sh", "-i"));
        awaitPrompt(shell);
        return shell;
    }

    private static String modes(PtyProgram shell, String when) {
        shell.type("clear=; echo " + when + ":$(stty -g).\n");
        return shell.awaitMatch(when + ":([0-9a-f:]+)\\.");
    }

    private static long begin(PtyProgram shell) {
        shell.type(PROBE + "\n");
        return probe(shell);
    }

    private static void stop(PtyProgram shell, long pid) {
        shell.type((byte) 0x1a);
        shell.awaitThat("the shell's screen is back", () -> !shell.look(ScreenModel::isAlternate));
        awaitStopped(shell, pid);
        // It may show as stopped while its thread that reads keys still runs, and would take what is typed next.
        awaitPrompt(shell);
    }

    private static void awaitPrompt(PtyProgram shell) {
        shell.awaitThat(
                "the shell asks for a command",
                () -> shell.text().stripTrailing().endsWith("\n%")
                        || shell.text().strip().equals("%"));
    }

    private static void awaitStopped(PtyProgram shell, long pid) {
        shell.awaitThat("the program has stopped", () -> state(pid).startsWith("T"));
    }

    /** Waits until a job has ended, and lets the shell end; the modes are to be those of {@code before}. */
    private static void assertEndedAsFound(PtyProgram shell, long pid, String before) {
        // Z: it has ended, and its shell has not asked after it yet.
        shell.awaitThat("the stopped program has ended", () -> state(pid).matches("Z?"));
        assertEquals(before, modes(shell, "after"));
        assertEquals(Set.of(), shell.look(ScreenModel::unknown));
        assertFalse(shell.text().contains("Exception"), shell.text());
        // A shell that has not asked after the ended job yet would not leave the first time it is told to.
        shell.type("wait; exit\nexit\n");
        shell.exitCode();
    }

    /** The processes that a process has started, and theirs. */
    private static Stream<ProcessHandle> offspring(long pid) {
        return ProcessHandle.of(pid).orElseThrow().descendants();
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
        ProcessBuilder builder = new ProcessBuilder(PtyProgram.java(TerminalProbe.class));
        builder.environment().put("CLASSPATH", PtyProgram.classPath());
        Process piped = builder.start();
        String error = new String(piped.getErrorStream().readAllBytes(), StandardCharsets.UTF_8);
        assertEquals(TerminalException.Reason.NONE + "\n", error);
        assertEquals(2, piped.waitFor());
        assertEquals(0, piped.getInputStream().readAllBytes().length);
    }

    @Test
    void withInputAtItsEndItSaysSoInOneLine() {
        List<String> command = List.of("sh", "-c", PROBE + " </dev/null; echo code:$?.");
        try (PtyProgram program = PtyProgram.start(Map.of(), 100, 24, command)) {
            assertEquals("2", program.awaitMatch("code:(\\d+)\\."));
            assertTrue(program.text().startsWith(TerminalException.Reason.NONE.name()));
        }
    }
}
