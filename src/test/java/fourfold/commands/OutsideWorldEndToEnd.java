// SPDX-License-Identifier: Apache-2.0
package fourfold.commands;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;

/** Guards against a program that talks to anyone, or that loses answers without a word when the disk takes no more. */
@DisabledOnOs(OS.WINDOWS)
@Execution(ExecutionMode.CONCURRENT)
class OutsideWorldEndToEnd {
    @TempDir
    private Path folder;

    private Path file() {
        return folder.resolve("family.db");
    }

    private record Told(int code, String out, String err) {}

    private Told run(List<String> command, String typed) throws IOException, InterruptedException {
        Path err = folder.resolve("err.txt");
        ProcessBuilder builder = new ProcessBuilder(command).redirectError(err.toFile());
        builder.environment().put("FOURFOLD_STORE", file().toString());
        builder.environment().put("LC_ALL", "C.UTF-8");
        builder.environment().remove("JAVA_TOOL_OPTIONS");
        Process process = builder.start();
        process.getOutputStream().write(typed.getBytes(StandardCharsets.UTF_8));
        process.getOutputStream().close();
        String out = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertTrue(process.waitFor(60, TimeUnit.SECONDS));
        return new Told(process.exitValue(), out, Files.readString(err));
    }

    /** The system calls are those that strace (strace.io) sees. */
    @Test
    void noConnectionLeavesTheComputer() throws IOException, InterruptedException {
        assumeTrue(isThere("strace"), "strace is not installed: this was not looked at");
        Path trace = folder.resolve("trace.txt");
        for (List<String> arguments : List.of(
                List.of("children", "--add", "Mina"),
                List.of("drill", "--plain"),
                List.of("backup"),
                List.of("export", "answers"))) {
            List<String> command = new ArrayList<>(
                    List.of("strace", "-f", "-qq", "-e", "trace=connect,sendto,sendmsg,bind", "-o", trace.toString()));
            command.addAll(PackagedProgramEndToEnd.fourfold(arguments.toArray(String[]::new)));
            Told told = run(command, "12\n13\n14\n");
            assumeTrue(!told.err().contains("ptrace"), "strace may not watch programs here: this was not looked at");
            assertEquals(0, told.code(), told.err());
            List<String> outward = Files.readAllLines(trace).stream()
                    .filter(call -> call.contains("AF_INET"))
                    .toList();
            assertEquals(List.of(), outward, arguments.toString());
        }
    }

    /**
     * A disk on which each write-through takes a third of a second (strace's delay, strace(1), "Tampering"): everything is
     * kept, and none of the waiting is taken for thinking.
     */
    @Test
    void aSlowDiskIsWaitedForAndIsNoThinkingTime() throws IOException, InterruptedException {
        Practised.children(folder, "Mina");
        long begun = System.nanoTime();
        Told told = tampered("inject=fsync,fdatasync:delay_enter=300000", "1\n2\n3\n");
        long took = System.nanoTime() - begun;
        assertEquals(0, told.code(), told.err());
        assertTrue(told.out().contains("Everything is kept"), told.out());
        assertTrue(took > 4 * 300_000_000L, "a drill and three answers, a write-through each: " + took);
        List<String> times = Rows.column(file(), "SELECT whole_ms FROM answer_log ORDER BY position");
        assertEquals(3, times.size());
        assertTrue(times.stream().allMatch(t -> Integer.parseInt(t) < 300), times.toString());
    }

    /** From some write on, the system says that the person's share of the disk is used up (EDQUOT). */
    @Test
    void aShareOfTheDiskThatIsUsedUpIsSaidAndNothingKeptBeforeIsLost() throws IOException, InterruptedException {
        Practised.children(folder, "Mina");
        run(PackagedProgramEndToEnd.fourfold("drill", "--plain"), "1\n2\n");
        Told told = tampered("inject=pwrite64:error=EDQUOT:when=20+", "1\ng\n2\ng\n3\ng\n4\ng\n");
        assertEquals(1, told.code(), told.out());
        assertTrue(told.out().contains("is not kept yet. It is not your fault."), told.out());
        assertTrue(told.out().contains("check its room, your share of it and the disk"), told.out());
        assertTrue(told.err().contains("could not be kept"), told.err());
        assertTrue(Rows.column(file(), "SELECT typed FROM answer_log").size() >= 2);
        // The next program tidies up after the write that was cut short.
        run(PackagedProgramEndToEnd.fourfold("grid"), "");
        assertEquals(List.of(), fourfold.upkeep.Verification.of(file()));
    }

    /** A plain drill whose system calls strace tampers with. */
    private Told tampered(String tampering, String typed) throws IOException, InterruptedException {
        assumeTrue(isThere("strace"), "strace is not installed: this was not looked at");
        String calls = tampering.substring("inject=".length(), tampering.indexOf(':'));
        List<String> command = new ArrayList<>(
                List.of("strace", "-f", "-qq", "-o", folder.resolve("trace.txt").toString(), "-e", "trace=" + calls));
        command.addAll(List.of("-e", tampering));
        command.addAll(PackagedProgramEndToEnd.fourfold("drill", "--plain"));
        Told told = run(command, typed);
        assumeTrue(!told.err().contains("ptrace"), "strace may not watch programs here: this was not looked at");
        return told;
    }

    /** The limit is the shell's on the size of files, in blocks of 512 bytes (POSIX, ulimit -f). */
    @Test
    void whenTheDiskTakesNoMoreTheChildGoesOnAndTheLossIsSaid() throws IOException, InterruptedException {
        Practised.children(folder, "Mina");
        run(PackagedProgramEndToEnd.fourfold("drill", "--plain"), "1\n2\n");
        int before = Rows.column(file(), "SELECT typed FROM answer_log").size();
        List<String> command = new ArrayList<>(PackagedProgramEndToEnd.fourfold("drill", "--plain"));
        command.add(1, "-XX:-UsePerfData");
        String limited = "ulimit -f 16; exec " + fourfold.terminal.PtyProgram.shellLine(command);
        StringBuilder typed = new StringBuilder();
        for (int i = 0; i < 15; i++) {
            // Whatever is asked, and wherever the file is full: an answer, or going on.
            typed.append(i % 10).append("\ng\n");
        }
        Told told = run(List.of("sh", "-c", limited), typed.toString());
        assertEquals(1, told.code(), told.out());
        assertTrue(told.out().contains("The last answer is not kept yet. It is not your fault."), told.out());
        assertTrue(told.err().contains("could not be kept and"), told.err());
        assertFalse(told.out().contains("Everything is kept"));
        assertTrue(Rows.column(file(), "SELECT typed FROM answer_log").size() >= before);
        assertEquals(List.of(), fourfold.upkeep.Verification.of(file()));
    }

    @Test
    void anErrorNamesNoAnswersAndNoOtherPeople() throws IOException, InterruptedException {
        Practised.children(folder, "Mina");
        run(PackagedProgramEndToEnd.fourfold("drill", "--plain"), "4711\n");
        Files.write(file(), java.util.Arrays.copyOf(Files.readAllBytes(file()), 9000));
        Told told = run(PackagedProgramEndToEnd.fourfold("--debug", "grid"), "");
        assertEquals(1, told.code());
        assertFalse(told.err().contains("Mina") || told.err().contains("4711"), told.err());
    }

    private static boolean isThere(String program) {
        for (String place : System.getenv().getOrDefault("PATH", "").split(":")) {
            if (Files.isExecutable(Path.of(place, program))) {
                return true;
            }
        }
        return false;
    }
}
