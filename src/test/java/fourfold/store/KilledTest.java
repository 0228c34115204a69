// SPDX-License-Identifier: Apache-2.0
package fourfold.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.log.Answer;
import fourfold.log.DrillSession;
import fourfold.terminal.PtyProgram;
import fourfold.upkeep.Verification;
import fourfold.words.InEnglish;
import java.io.BufferedReader;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** Guards against an answer that was said to be kept and is gone after the program was killed. */
@DisabledOnOs(OS.WINDOWS)
@Timeout(120)
class KilledTest {
    private static final int KILLS = 10;

    @TempDir
    private Path folder = Path.of("");

    @Test
    void everyAnswerSaidToBeKeptIsThereAfterAKill() throws Exception {
        Path file = folder.resolve("family.db");
        SplittableRandom random = new SplittableRandom(11);
        for (int round = 0; round < KILLS; round++) {
            int last = killAfter(file, round, 1 + random.nextInt(60));
            DrillSession session = Invented.session(Victim.CHILD, round);
            try (Store store = Store.open(file)) {
                List<Answer> kept = store.answers(Victim.CHILD.id()).stream()
                        .filter(a -> a.drill().equals(session.id()))
                        .toList();
                assertTrue(kept.size() == last || kept.size() == last + 1, kept.size() + " kept, told " + last);
                for (int i = 0; i < kept.size(); i++) {
                    assertEquals(Invented.answer(session, i + 1), kept.get(i));
                }
            }
            DatabaseCopy.check(file);
        }
    }

    @Test
    void aNameThatTheLanguageSettingCanNotExpressIsToldInOneLine() throws Exception {
        ProcessBuilder builder = OwnProcess.of(Victim.class, "usual");
        builder.command().set(builder.command().indexOf("-cp") + 1, PtyProgram.asciiClassPath(folder));
        // Java opens nothing from a folder that the language setting can't express.
        builder.directory(folder.getRoot().toFile());
        builder.environment().put("LC_ALL", "C");
        builder.environment().put(DataPath.VARIABLE, folder.resolve("Zoë.db").toString());
        Process process = builder.start();
        List<String> said;
        try (BufferedReader out = process.inputReader(StandardCharsets.US_ASCII)) {
            said = out.lines().toList();
        }
        assertEquals(0, process.waitFor());
        assertEquals(1, said.size(), said.toString());
        assertTrue(said.get(0).contains("set LC_ALL=C.UTF-8 or name another file"), said.get(0));
    }

    @Test
    void twoProgramsThatStartAtOnceOnANewFileBothKeepTheirAnswers() throws Exception {
        Path file = folder.resolve("new.db");
        List<Process> both = new ArrayList<>();
        for (int drill = 0; drill < 2; drill++) {
            both.add(OwnProcess.of(Victim.class, file.toString(), Integer.toString(drill), "20")
                    .start());
        }
        for (Process process : both) {
            try (BufferedReader out = process.inputReader(StandardCharsets.US_ASCII)) {
                assertEquals(20, out.lines().count());
            }
            assertTrue(process.waitFor(60, TimeUnit.SECONDS));
            process.destroyForcibly();
        }
        try (Store store = Store.open(file)) {
            assertEquals(2, store.sessions(Victim.CHILD.id()).size());
            assertEquals(40, store.answers(Victim.CHILD.id()).size());
        }
    }

    /** A journal begins with zeros until it is valid; SQLite ignores such a journal and leaves it where it is. */
    @Test
    void aJournalThatNeverCameToCountIsNoUnfinishedWrite() throws IOException {
        Path file = folder.resolve("family.db");
        Store.open(file).close();
        Path journal = folder.resolve("family.db-journal");
        Files.write(journal, new byte[512]);
        assertEquals(List.of(), Verification.of(file));
        byte[] header = {(byte) 0xd9, (byte) 0xd5, 0x05, (byte) 0xf9, 0x20, (byte) 0xa1, 0x63, (byte) 0xd7};
        Files.write(journal, Arrays.copyOf(header, 512));
        assertTrue(InEnglish.problems(Verification.of(file)).get(0).contains("cut short"));
        Files.write(journal, new byte[512]);
        Store.open(file).close();
        assertEquals(List.of(), Verification.of(file));
    }

    /** Starts the program, kills it after it has reported that many answers, and returns the last position. */
    private static int killAfter(Path file, int drill, int answers) throws IOException, InterruptedException {
        Process process = OwnProcess.of(Victim.class, file.toString(), Integer.toString(drill), "10000")
                .start();
        int last = 0;
        try (BufferedReader out = process.inputReader(StandardCharsets.US_ASCII)) {
            while (last < answers) {
                last = Integer.parseInt(String.valueOf(out.readLine()));
            }
            kill(process);
            for (String line = out.readLine(); line != null; line = out.readLine()) {
                // The last line may have been cut short.
                last = Math.max(last, line.isEmpty() ? 0 : Integer.parseInt(line));
            }
        }
        return last;
    }

    private static void kill(Process process) throws InterruptedException {
        // Through the handle: the process's own method would also close what is still to be read.
        process.toHandle().destroyForcibly();
        assertTrue(process.waitFor(10, TimeUnit.SECONDS));
    }
}
