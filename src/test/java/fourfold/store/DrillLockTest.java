// SPDX-License-Identifier: Apache-2.0
package fourfold.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.UUID;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** Guards against one child in two drills at once, and against a seat that a dead program keeps for ever. */
class DrillLockTest {
    private static final UUID MINA = UUID.fromString("3f0c1f5e-8a5b-4c55-9d0b-0d7cf1b1a001");
    private static final UUID IVO = UUID.fromString("9f0c1f5e-8a5b-4c55-9d0b-0d7cf1b1a002");

    @TempDir
    private Path folder;

    private Path file() {
        return folder.resolve("family.db");
    }

    @Test
    void oneSeatForEachChild() {
        DrillLock mina = DrillLock.take(file(), MINA).orElseThrow();
        DrillLock ivo = DrillLock.take(file(), IVO).orElseThrow();
        assertTrue(DrillLock.take(file(), MINA).isEmpty());
        assertTrue(DrillLock.take(file(), IVO).isEmpty());
        mina.close();
        DrillLock.take(file(), MINA).orElseThrow().close();
        ivo.close();
    }

    @Test
    @DisabledOnOs(OS.WINDOWS)
    void whoeverComesByALinkComesToTheSameSeat() throws IOException {
        Files.writeString(file(), "");
        Path link = Files.createSymbolicLink(file().resolveSibling("link.db"), file());
        DrillLock mina = DrillLock.take(file(), MINA).orElseThrow();
        assertTrue(DrillLock.take(link, MINA).isEmpty());
        mina.close();
    }

    @Test
    void aProgramThatIsKilledGivesItsSeatBack() throws IOException, InterruptedException {
        Process other =
                OwnProcess.of(Sitter.class, file().toString(), MINA.toString()).start();
        try (BufferedReader said = other.inputReader(StandardCharsets.US_ASCII)) {
            assertEquals("sits", said.readLine());
            assertTrue(DrillLock.take(file(), MINA).isEmpty());
            DrillLock.take(file(), IVO).orElseThrow().close();
            other.toHandle().destroyForcibly();
            assertTrue(other.waitFor(10, TimeUnit.SECONDS));
        }
        DrillLock.take(file(), MINA).orElseThrow().close();
    }

    /** A program of its own that takes a seat and stays until it is killed. */
    static final class Sitter {
        private Sitter() {}

        /** Takes the seat of the child in the second argument in the file of the first. */
        public static void main(String[] arguments) throws IOException {
            boolean sits = DrillLock.take(Path.of(arguments[0]), UUID.fromString(arguments[1]))
                    .isPresent();
            System.out.println(sits ? "sits" : "refused");
            System.out.flush();
            if (System.in.read() < 0) {
                return;
            }
        }
    }
}
