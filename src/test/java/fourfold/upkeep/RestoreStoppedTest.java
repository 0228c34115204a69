// SPDX-License-Identifier: Apache-2.0
package fourfold.upkeep;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.log.Child;
import fourfold.store.Disk;
import fourfold.store.Invented;
import fourfold.store.Journal;
import fourfold.store.Replacement;
import fourfold.store.Store;
import fourfold.words.InEnglish;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Guards against a file that is half of something when a restore is killed. Every step on the disk is stopped at once, not
 * some of them by lot: before it, and in the middle of a copy.
 */
class RestoreStoppedTest {
    private static final Child OLD = Invented.child(1, "Ana");
    private static final Child NEW = Invented.child(2, "Bo");

    /** Stands for the end of the program: nothing of ours catches it. */
    private static final class Killed extends Error {
        private static final long serialVersionUID = 1L;
    }

    /** A disk whose program is killed before its n-th step. */
    private static final class StoppingDisk extends Disk {
        private int left;

        StoppingDisk(int left) {
            this.left = left;
        }

        private void step() {
            if (--left < 0) {
                throw new Killed();
            }
        }

        @Override
        public void fill(Path from, Path to) throws IOException {
            step();
            Files.write(to, Arrays.copyOf(Files.readAllBytes(from), 5_000));
            step();
            super.fill(from, to);
        }

        @Override
        public void link(Path from, Path to) throws IOException {
            step();
            super.link(from, to);
        }

        @Override
        public void rename(Path from, Path to) throws IOException {
            step();
            super.rename(from, to);
        }

        @Override
        public void delete(Path file) throws IOException {
            if (Files.exists(file)) {
                step();
            }
            super.delete(file);
        }
    }

    @TempDir
    private static Path made;

    @TempDir
    private Path temporary;

    private Path folder = Path.of("");
    private Path file = Path.of("");

    @BeforeAll
    static void fill() {
        filled(made.resolve("old.db"), OLD);
        filled(made.resolve("new.db"), NEW);
    }

    private static void filled(Path file, Child child) {
        try (Store store = Store.open(file)) {
            store.add(child);
        }
    }

    @BeforeEach
    void makeFolder() throws IOException {
        begin(0);
    }

    private void begin(int round) throws IOException {
        folder = Files.createDirectories(temporary.resolve("round" + round));
        file = folder.resolve("fourfold.db");
    }

    private void putThere(String state) throws IOException {
        switch (state) {
            case "whole" -> Files.copy(made.resolve("old.db"), file);
            case "damaged, with a journal", "damaged, with a log" -> {
                byte[] bytes = Files.readAllBytes(made.resolve("old.db"));
                Arrays.fill(bytes, 0, 40, (byte) 7);
                Files.write(file, bytes);
                boolean log = state.endsWith("log");
                Files.writeString(log ? Journal.log(file) : Journal.rollback(file), "what an unfinished write left");
            }
            case "gone" -> {}
            default -> throw new IllegalArgumentException(state);
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"whole", "damaged, with a journal", "damaged, with a log", "gone"})
    void aRestoreStoppedAtAnyStepIsUndoneOrEndedByTheNextStart(String state) throws IOException {
        int steps = 0;
        for (boolean stopped = true; stopped; steps++) {
            begin(steps);
            putThere(state);
            List<byte[]> before = contents();
            try {
                Restoration.of(file, made.resolve("new.db"), new StoppingDisk(steps));
                stopped = false;
            } catch (Killed e) {
                stopped = true;
            }
            boolean decided = Files.exists(folder.resolve("fourfold.db.restored")) || !stopped;
            boolean whole = state.equals("whole");
            assertTrue(decided || whole || sameContents(before), "changed before it was decided, at step " + steps);
            if (decided || whole) {
                try (Store store = Store.open(file)) {
                    assertEquals(List.of(decided ? NEW : OLD), store.children(), "stopped at step " + steps);
                }
                assertEquals(List.of(), Verification.of(file));
            } else {
                Restoration.of(file, made.resolve("new.db"));
            }
            for (Path left : all()) {
                String name = String.valueOf(left.getFileName());
                assertFalse(name.endsWith(".unfinished") || name.endsWith(".restored"), name + " at step " + steps);
            }
            if (decided && whole) {
                try (Store aside = Store.open(folder.resolve("fourfold-aside.db"))) {
                    assertEquals(List.of(OLD), aside.children(), "stopped at step " + steps);
                }
            } else if (decided) {
                assertTrue(sameContents(before), "something is not kept aside, stopped at step " + steps);
            }
        }
        assertTrue(steps > 4, steps + " steps");
    }

    private List<Path> all() throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.toList();
        }
    }

    private List<byte[]> contents() throws IOException {
        List<byte[]> all = new ArrayList<>();
        for (Path one : all()) {
            all.add(Files.readAllBytes(one));
        }
        return all;
    }

    private boolean sameContents(List<byte[]> before) {
        return before.stream().allMatch(this::isKept);
    }

    private boolean isKept(byte[] content) {
        try {
            return contents().stream().anyMatch(c -> Arrays.equals(c, content));
        } catch (IOException e) {
            throw new AssertionError(e);
        }
    }

    @Test
    void aRestoreWhileAnotherIsAtItIsRefused() throws IOException {
        putThere("whole");
        Replacement other = Replacement.begin(file, Disk.REAL).orElseThrow();
        String told = InEnglish.failure(() -> Restoration.of(file, made.resolve("new.db")));
        assertTrue(told.contains("still has it open"), told);
        other.close();
    }

    @Test
    @DisabledOnOs(OS.WINDOWS)
    void aLinkToTheFileStaysALink() throws IOException {
        putThere("whole");
        Path link = Files.createSymbolicLink(temporary.resolve("link.db"), file);
        Restoration.of(link, made.resolve("new.db"));
        assertTrue(Files.isSymbolicLink(link));
        try (Store store = Store.open(file)) {
            assertEquals(List.of(NEW), store.children());
        }
        assertArrayEquals(Files.readAllBytes(file), Files.readAllBytes(link));
    }
}
