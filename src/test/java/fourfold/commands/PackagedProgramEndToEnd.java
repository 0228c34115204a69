// SPDX-License-Identifier: Apache-2.0
package fourfold.commands;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.terminal.PtyProgram;
import fourfold.terminal.ScreenModel;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.FileTime;
import java.time.Duration;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.stream.Stream;
import org.junit.jupiter.api.MethodOrderer;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestMethodOrder;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;

/**
 * Guards against a program that works in its tests and not as a family gets it: the packaged jar runs in a real
 * pseudo-terminal, is played by keys, and its file is read with plain SQL. Terminal modes are asked of the system's stty.
 */
@Execution(ExecutionMode.CONCURRENT)
@TestMethodOrder(MethodOrderer.OrderAnnotation.class)
class PackagedProgramEndToEnd {
    private static final String ASKED_AND_TYPED = "SELECT asked, COALESCE(typed, '') FROM answer_log ORDER BY position";

    @TempDir
    private Path folder;

    private Path file() {
        return folder.resolve("family.db");
    }

    /** The program as README starts it, from the project's folder. */
    static List<String> fourfold(String... arguments) {
        List<String> command = new ArrayList<>(List.of(
                System.getProperty("java.home") + "/bin/java", "-Djava.awt.headless=true", "@target/fourfold.start"));
        command.addAll(List.of(arguments));
        return command;
    }

    private PtyProgram open(String... arguments) {
        return PtyProgram.start(Map.of("FOURFOLD_STORE", file().toString()), 80, 24, fourfold(arguments));
    }

    /** Runs a command without a terminal, as a script would; gives what it printed, errors too. */
    private String told(int code, String typed, String... arguments) throws IOException, InterruptedException {
        ProcessBuilder builder = new ProcessBuilder(fourfold(arguments)).redirectErrorStream(true);
        builder.environment().put("FOURFOLD_STORE", file().toString());
        builder.environment().put("LC_ALL", "C.UTF-8");
        Process process = builder.start();
        process.getOutputStream().write(typed.getBytes(StandardCharsets.UTF_8));
        process.getOutputStream().close();
        String printed = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertTrue(process.waitFor(20, TimeUnit.SECONDS));
        assertEquals(code, process.exitValue(), printed);
        return printed;
    }

    /** Nobody types: within two seconds the process uses less than half a second of a processor. */
    private static void assertRests(long pid) {
        ProcessHandle.Info before = ProcessHandle.of(pid).orElseThrow().info();
        Duration used = before.totalCpuDuration().orElseThrow();
        LockSupport.parkNanos(2_000_000_000L);
        Duration more = ProcessHandle.of(pid)
                .orElseThrow()
                .info()
                .totalCpuDuration()
                .orElseThrow()
                .minus(used);
        assertTrue(more.compareTo(Duration.ofMillis(500)) < 0, "at rest it used " + more);
    }

    /** Runs java in a folder that holds target/, as README says; gives what it printed, errors too. */
    private static String started(Path project, String... arguments) throws IOException, InterruptedException {
        List<String> command = new ArrayList<>(List.of(System.getProperty("java.home") + "/bin/java"));
        command.addAll(List.of(arguments));
        ProcessBuilder builder = new ProcessBuilder(command)
                .directory(project.toAbsolutePath().toFile())
                .redirectErrorStream(true);
        // What is looked for is English, whatever the machine speaks.
        builder.environment().put("FOURFOLD_LANGUAGE", "en");
        Process process = builder.start();
        String printed = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertTrue(process.waitFor(20, TimeUnit.SECONDS));
        assertEquals(0, process.exitValue(), printed);
        return printed;
    }

    @Test
    void readmesStartTakesTheProgramsClassesFromTheArchiveThatTheBuildMade() throws IOException, InterruptedException {
        String printed = started(Path.of("."), "-Xlog:class+load", "@target/fourfold.start", "--version");
        List<String> own = printed.lines()
                .filter(line -> line.contains("fourfold.") && line.contains("source:"))
                .toList();
        assertTrue(
                own.stream().anyMatch(line -> line.contains("shared objects file")),
                () -> "none of the program's classes came from an archive: " + own);
        assertTrue(printed.lines().anyMatch(line -> line.startsWith("fourfold ")), printed);
    }

    @Test
    void anArchiveOfClassesThatIsOfNoUseIsToldUnderDebug() throws IOException, InterruptedException {
        Path project = folder.resolve("a b").resolve("Übung ×");
        for (Path part : List.of(Path.of("target"), Path.of("target", "lib"))) {
            Files.createDirectories(project.resolve(part));
            try (Stream<Path> files = Files.list(part)) {
                for (Path file : files.filter(Files::isRegularFile).toList()) {
                    Files.copy(file, project.resolve(file), StandardCopyOption.COPY_ATTRIBUTES);
                }
            }
        }
        String[] command = {"@target/fourfold.start", "children", "--debug", "--store", file().toString()};
        String quick = started(project, command);
        assertTrue(quick.contains("archive of classes: in use"), quick);

        Path jar = project.resolve("target/fourfold.jar");
        FileTime time = Files.getLastModifiedTime(jar);
        Files.setLastModifiedTime(jar, FileTime.fromMillis(time.toMillis() - 60_000));
        assertComplaint("it does not fit the jars, which were changed or moved", started(project, command));
        Files.setLastModifiedTime(jar, time);

        Path archive = project.resolve("target/fourfold.jsa");
        String bytes = Files.readString(archive, StandardCharsets.ISO_8859_1);
        String version = System.getProperty("java.vm.version");
        Files.delete(archive);
        assertComplaint("it is not there", started(project, command));
        Files.writeString(archive, bytes.replace(version, "9" + version.substring(1)), StandardCharsets.ISO_8859_1);
        assertComplaint("another Java made it", started(project, command));
    }

    private static void assertComplaint(String reason, String printed) {
        String complaint = printed.lines()
                .filter(line -> line.startsWith("archive of classes: "))
                .findFirst()
                .orElse("");
        assertTrue(complaint.contains("fourfold.jsa can't be used: " + reason), printed);
        assertTrue(complaint.endsWith("To make it anew: mvn -q -DskipTests package"), printed);
    }

    /** The longest, so that it begins first and the others run beside it. */
    @Test
    @Order(1)
    void aDrillOfOneMinuteIsInTheFileAsItWasTyped() throws IOException, InterruptedException {
        told(0, "", "children", "--add", "Mina");
        List<PtyChild.Reply> replies;
        try (PtyProgram program = open("drill", "--child", "mina", "--minutes", "1")) {
            PtyChild child = new PtyChild(program);
            child.playUntil("Everything is kept");
            child.watchTheStones();
            program.type("\r");
            assertEquals(0, program.exitCode());
            assertTrue(program.look(ScreenModel::isAsFound));
            replies = child.replies();
        }
        assertTrue(replies.size() > 15, "only " + replies.size() + " prompts in a minute");
        assertTrue(replies.stream().anyMatch(r -> r.typed().isEmpty()), "none was left unanswered");
        assertEquals(
                replies.stream().map(r -> List.of(r.asked(), r.typed())).toList(), Rows.of(file(), ASKED_AND_TYPED));
        DrillRows.checkPurposes(file());
        DrillRows.checkInverses(file());
        DrillRows.checkTimes(file());
        assertEquals(
                List.of("Mina|terminal"),
                Rows.column(file(), "SELECT DISTINCT nickname || '|' || surface FROM answer_log"));
        String today = LocalDate.now(java.time.ZoneId.systemDefault()).toString();
        String earliest =
                Rows.column(file(), "SELECT MIN(local_time) FROM answer_log").get(0);
        assertTrue(earliest.compareTo(LocalDate.parse(today).minusDays(1).toString()) > 0, earliest);
        // The same rows by the program's own export: a header and a line for each answer.
        assertEquals(
                replies.size() + 1L, told(0, "", "export", "answers").lines().count());
    }

    @Test
    void byTheMenusAChildIsMadeAndControlCLeavesTheTerminalAsItWas() {
        String script = "echo before:$(stty -g).; " + PtyProgram.shellLine(fourfold())
                + "; echo code:$?.; echo after:$(stty -g).";
        Map<String, String> environment = Map.of("FOURFOLD_STORE", file().toString());
        try (PtyProgram program = PtyProgram.start(environment, 200, 24, List.of("sh", "-c", script))) {
            program.awaitText("Add a child");
            program.type("\r");
            program.awaitText("nickname");
            for (String letter : "Zoë".split("")) {
                program.type(letter);
                program.awaitText("Zoë".substring(0, "Zoë".indexOf(letter) + 1) + "_");
            }
            program.type("\r");
            program.awaitText("For parents");
            program.type("\r");
            program.awaitText("Hello Zoë.");
            program.type("\r");
            PtyChild child = new PtyChild(program);
            child.answer(3);
            // In the middle of a question.
            program.type("7");
            program.type((byte) 3);
            program.awaitText("after:");
            assertEquals(program.awaitMatch("before:(\\S+)\\."), program.awaitMatch("after:(\\S+)\\."));
            assertEquals("0", program.awaitMatch("code:(\\d+)\\."));
            assertTrue(program.look(ScreenModel::isAsFound));
        }
        assertEquals(List.of("Zoë"), Rows.column(file(), "SELECT name FROM child"));
        assertEquals(3, Rows.of(file(), ASKED_AND_TYPED).size());
    }

    @Test
    void aClosedTerminalEndsTheProgramAndLosesNothing() {
        Practised.children(folder, "Mina");
        try (PtyProgram program = open("drill")) {
            PtyChild child = new PtyChild(program);
            child.answer(3);
            program.hangUp();
            program.exitCode();
        }
        assertEquals(3, Rows.of(file(), ASKED_AND_TYPED).size());
    }

    @Test
    void twoProgramsOnOneFileBothKeepWhatTheyCount() throws IOException, InterruptedException {
        // By the program itself, for their ids are drawn by lot: two seats would be one for ids that begin alike.
        told(0, "", "children", "--add", "Mina");
        told(0, "", "children", "--add", "Ivo");
        try (PtyProgram first = open("drill", "--child", "Mina");
                PtyProgram second = open("drill", "--child", "Ivo")) {
            PtyChild mina = new PtyChild(first);
            PtyChild ivo = new PtyChild(second);
            for (int i = 1; i <= 4; i++) {
                mina.answer(i);
                ivo.answer(i);
            }
            first.type((byte) 3);
            second.type((byte) 3);
            assertEquals(0, first.exitCode());
            assertEquals(0, second.exitCode());
            for (Map.Entry<String, PtyChild> one :
                    Map.of("Mina", mina, "Ivo", ivo).entrySet()) {
                assertEquals(
                        one.getValue().replies().stream()
                                .map(PtyChild.Reply::typed)
                                .toList(),
                        Rows.column(
                                file(),
                                "SELECT typed FROM answer_log WHERE nickname = '" + one.getKey()
                                        + "' ORDER BY position"));
            }
        }
    }

    @Test
    void aSecondDrillOfTheSameChildIsRefusedKindly() throws IOException, InterruptedException {
        Practised.children(folder, "Mina");
        try (PtyProgram first = open("drill")) {
            new PtyChild(first).answer(1);
            assertEquals(
                    "fourfold: Mina is practising in another window. Finish there first.\n",
                    told(1, "", "drill", "--plain"));
            first.type((byte) 3);
            assertEquals(0, first.exitCode());
        }
        told(0, "12\n", "drill", "--plain");
    }

    @Test
    void aPasteOfTenThousandCharactersAnswersNothing() {
        Practised.children(folder, "Mina");
        try (PtyProgram program = open("drill")) {
            PtyChild child = new PtyChild(program);
            child.answer(2);
            program.type("7\r".repeat(5000));
            child.letAPastePass();
            child.answer(4);
            assertRests(program.pid());
            program.type((byte) 3);
            assertEquals(0, program.exitCode());
            assertEquals(
                    child.replies().stream().map(PtyChild.Reply::typed).toList(),
                    Rows.column(file(), "SELECT typed FROM answer_log ORDER BY position"));
        }
    }

    @Test
    void theDemoAsksNothingAndLeavesNoTrace() throws IOException {
        Practised.children(folder, "Mina");
        byte[] own = Files.readAllBytes(file());
        Path temporary = Files.createDirectory(folder.resolve("temporary"));
        List<String> command = new ArrayList<>(fourfold("--demo"));
        command.add(1, "-Djava.io.tmpdir=" + temporary);
        Map<String, String> environment = Map.of("FOURFOLD_STORE", file().toString());
        try (PtyProgram program = PtyProgram.start(environment, 80, 24, command)) {
            program.awaitText("Who wants to practise?");
            assertFalse(program.text().contains("Mina"));
            program.type((byte) 3);
            assertEquals(0, program.exitCode());
        }
        try (Stream<Path> left = Files.list(temporary)) {
            assertEquals(List.of(), left.toList());
        }
        assertArrayEquals(own, Files.readAllBytes(file()));
    }

    @Test
    void plainLinesFromAPipeEndWithThePipe() throws IOException, InterruptedException {
        Practised.children(folder, "Mina");
        String printed = told(0, "12\nabc\n", "drill", "--plain");
        assertTrue(printed.contains("Type the number"), printed);
        assertFalse(printed.contains("\u001b"), printed);
        assertEquals(List.of("12|plain"), Rows.column(file(), "SELECT typed || '|' || surface FROM answer_log"));
    }

    @Test
    void aReaderThatHasEnoughEndsACommandWithoutAWord() throws IOException, InterruptedException {
        String line = PtyProgram.shellLine(fourfold("export", "answers", "--demo"));
        Process process = new ProcessBuilder("bash", "-c", "set -o pipefail; " + line + " | head -1")
                .redirectErrorStream(true)
                .start();
        String printed = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertEquals(0, process.waitFor(), printed);
        assertEquals(1, printed.lines().count(), printed);
    }

    @Test
    void aTerminalThatCanNotDrawGoesOnInPlainLines() {
        Map<String, String> environment = Map.of("FOURFOLD_STORE", file().toString(), "TERM", "dumb");
        try (PtyProgram program = PtyProgram.start(environment, 80, 24, fourfold())) {
            program.awaitText("nickname?");
            program.type("Mina\r");
            program.awaitText("Hello Mina.");
            program.type("q\r");
            program.exitCode();
            assertFalse(program.bytes().contains("\u001b"), program.bytes());
        }
        assertEquals(List.of("Mina"), Rows.column(file(), "SELECT name FROM child"));
    }

    @Test
    void withoutATerminalItSaysSoInOneLine() throws IOException, InterruptedException {
        assertEquals(
                "fourfold: Fourfold needs a terminal. Start it in a terminal window, or use: drill --plain\n",
                told(1, ""));
    }
}
