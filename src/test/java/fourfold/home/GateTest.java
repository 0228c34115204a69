// SPDX-License-Identifier: Apache-2.0
package fourfold.home;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.commands.CommandRun;
import fourfold.commands.Journey;
import fourfold.commands.Practised;
import fourfold.store.Store;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Guards against a gate that a child gets past, or that keeps a parent out for good. */
class GateTest {
    private static final Instant NOW = Instant.parse("2026-03-02T16:00:00Z");

    @TempDir
    private Path folder;

    /** RFC 7914, section 11: test vectors for PBKDF2 with HMAC-SHA-256. */
    @ParameterizedTest
    @CsvSource({
        "passwd, salt, 1, "
                + "55ac046e56e3089fec1691c22544b605f94185216dde0465e68b9d57c20dacbc"
                + "49ca9cccf179b645991664b39d77ef317c71b845b1e30bd509112041d3a19783",
        "Password, NaCl, 80000, "
                + "4ddcd8f60b98be21830cee5ef22701f9641a4418d04c0414aeff08876b34ab56"
                + "a1d425a1225833549adb841b51c9b3176a272bdebba1d078478f62b397f33c8d"
    })
    void thePublishedVectorsComeOut(String password, String salt, int rounds, String hash) {
        byte[] made = Pin.hash(password.toCharArray(), salt.getBytes(StandardCharsets.US_ASCII), rounds, 512);
        assertEquals(hash, HexFormat.of().formatHex(made));
    }

    @Test
    void aPinIsKeptAsSaltAndHashAndNeverItself() {
        String one = Pin.kept("4711", new SecureRandom(), 1000);
        String two = Pin.kept("4711", new SecureRandom(), 1000);
        assertNotEquals(one, two);
        assertTrue(one.matches("\\$pbkdf2-sha256\\$i=1000\\$[A-Za-z0-9+/]{22}\\$[A-Za-z0-9+/]{43}"), one);
        assertTrue(Pin.fits("4711", one));
        assertFalse(Pin.fits("4712", one));
        assertFalse(Pin.fits("4711", "nonsense"));
        assertFalse(Pin.fits("4711", "$pbkdf2-sha256$i=x$AA$AA"));
        assertTrue(Pin.ROUNDS >= 600_000);
    }

    @ParameterizedTest
    @CsvSource({"0, 0", "2, 0", "3, 30", "4, 60", "5, 120", "8, 900", "100000, 900"})
    void eachWrongTryMakesTheWaitLongerUpToAQuarterOfAnHour(int tries, long seconds) {
        assertEquals(Duration.ofSeconds(seconds), Gate.waitAfter(tries));
    }

    @Test
    void theWaitOutlastsARestartAndAClockSetBackAndEndsByItself() {
        Path file = Practised.children(folder, "Mina");
        try (Store store = Store.open(file)) {
            Gate gate = new Gate(store, 1000);
            assertTrue(gate.opens("", NOW), "no gate");
            gate.set("4711", NOW);
            for (int i = 0; i < 3; i++) {
                assertFalse(gate.opens("0000", NOW));
            }
        }
        try (Store store = Store.open(file)) {
            Gate gate = new Gate(store, 1000);
            assertFalse(gate.opens("4711", NOW.plusSeconds(29)), "too soon, though right");
            assertEquals(Duration.ofSeconds(1), gate.wait(NOW.plusSeconds(29)));
            assertEquals(Duration.ofSeconds(30), gate.wait(NOW.minusSeconds(86_400)), "the clock was set back");
            assertTrue(gate.opens("4711", NOW.minusSeconds(86_400 - 31)));
            assertTrue(gate.wait(NOW).isZero());
            assertFalse(gate.opens("0000", NOW));
            assertTrue(gate.opens("4711", NOW), "one wrong try is forgiven");
        }
    }

    @Test
    void aClockSetAheadAndAStartOfTheProgramEndNoWait() {
        Path file = Practised.children(folder, "Mina");
        Instant tomorrow = NOW.plusSeconds(86_400);
        try (Store store = Store.open(file)) {
            Gate gate = new Gate(store, 1000, NOW);
            gate.set("4711", NOW);
            for (int i = 0; i < 3; i++) {
                assertFalse(gate.opens("0000", NOW));
            }
            Gate again = new Gate(store, 1000, tomorrow);
            assertFalse(again.opens("4711", tomorrow), "a fresh try for a clock set ahead");
            assertEquals(Duration.ofSeconds(30), again.wait(tomorrow));
            assertTrue(again.opens("4711", tomorrow.plusSeconds(30)));
        }
    }

    @Test
    void twoProgramsHaveNoMoreTriesThanOne() throws Exception {
        Path file = Practised.children(folder, "Mina");
        try (Store one = Store.open(file);
                Store other = Store.open(file)) {
            new Gate(one, 1000).set("4711", NOW);
            List<Thread> programs = new ArrayList<>();
            for (Store store : List.of(one, other, one, other, one, other)) {
                Thread program = new Thread(() -> new Gate(store, 1000).opens("0000", NOW));
                program.start();
                programs.add(program);
            }
            for (Thread program : programs) {
                program.join();
            }
            assertEquals(3, one.gate().orElseThrow().wrongTries(), "from the third on there is a wait");
        }
    }

    @Test
    void whatCanBeNoPinIsNoTry() {
        try (Store store = Store.open(Practised.children(folder, "Mina"))) {
            Gate gate = new Gate(store, 1000);
            gate.set("4711", NOW);
            for (String typed : new String[] {"", "1", "123", "123456789", "", ""}) {
                assertFalse(gate.opens(typed, NOW), typed);
            }
            assertEquals(0, store.gate().orElseThrow().wrongTries());
            assertTrue(gate.opens("4711", NOW));
            assertEquals(0, store.gate().orElseThrow().wrongTries());
        }
    }

    @Test
    void theChildIsKeptOutAndTheParentGetsIn() {
        Path file = Practised.once(folder);
        try (Store store = Store.open(file)) {
            new Gate(store, 1000).set("4711", NOW);
        }
        try (Journey journey = new Journey(file, NOW, 80, 24, true)) {
            journey.keys("3");
            assertTrue(journey.picture().contains("Type the PIN"), journey.picture());
            journey.keys("Enter");
            assertTrue(journey.picture().contains("A PIN has 4 to 8 digits."), "what can be no PIN was called wrong");
            journey.keys("1 2 3 4 Enter");
            assertTrue(journey.picture().contains("This PIN is not the right one."), journey.picture());
            assertFalse(journey.picture().contains("1234"));
            journey.keys("4 7 1 1 Enter");
            assertTrue(journey.picture().contains("of 55 families fluent"), journey.picture());
            journey.keys("m 0 x");
            assertTrue(journey.picture().contains("No PIN is set."), journey.picture());
            journey.keys("2 4 6 8 Enter 2 4 6 8 Enter");
            assertTrue(journey.picture().contains("A PIN is set."), journey.picture());
            journey.keys("Esc Esc Esc 3");
            assertTrue(journey.picture().contains("Type the PIN"), journey.picture());
            journey.pasteWhole("password").keys("Enter");
            assertTrue(journey.picture().contains("A PIN has 4 to 8 digits."), journey.picture());
            journey.pasteWhole("2468\n").keys("Enter");
            assertTrue(journey.picture().contains("of 55 families fluent"), "a PIN in one piece was not taken");
        }
        assertTrue(CommandRun.of(file, "gate", "--reset").out().contains("open to all"));
        assertTrue(CommandRun.typed(file, "86420\n", "gate", "--set").out().contains("A PIN keeps a child out"));
        assertEquals(2, CommandRun.typed(file, "12\n", "gate", "--set").code());
    }
}
