// SPDX-License-Identifier: Apache-2.0
package fourfold.terminal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.locks.LockSupport;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;

/** Guards against keys that leak, freeze, get lost or carry a wrong time in a real terminal; one program for all tests. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class KeysInATerminalTest {
    private static final String ESC = "\u001b";

    private PtyProgram program;
    private long startNanos;

    @BeforeAll
    void start() {
        long begun = System.nanoTime();
        program = PtyProgram.start(Map.of("COLORTERM", "truecolor"), 80, 24, PtyProgram.java(TerminalProbe.class));
        program.awaitText("ready 80x24");
        startNanos = System.nanoTime() - begun;
    }

    @AfterAll
    void end() {
        program.type("q");
        assertEquals(0, program.exitCode());
        assertEquals(Set.of(), program.look(ScreenModel::unknown));
        assertTrue(program.look(ScreenModel::isAsFound));
        program.close();
    }

    @BeforeEach
    void forget() {
        program.type("\f");
        program.awaitText("keys 0.");
    }

    /** Types a last key and returns all that was typed up to it. */
    private String typedUntil(String end) {
        program.type(end);
        return program.awaitMatch("typed (\\S*)" + end + "\\.");
    }

    @Test
    void theStartDoesNotAskTheTerminalAndWait() {
        // The library's way to ask for the size (CSI 6 n, ECMA-48 DSR) waits five seconds for an answer.
        assertTrue(startNanos < 4_500_000_000L, () -> "took " + startNanos + " ns");
        assertFalse(program.bytes().contains(ESC + "[6n"));
    }

    @Test
    void aWholeFrameArrivesWithoutStrayBytes() {
        program.awaitThat(
                "the last row is there", () -> program.text().endsWith("÷ 1 ░▒▓█ ─│┌ ↔↕ · 7 × 8 = 56 ÷ 1 ░▒▓█ ─│"));
        assertFalse(program.bytes().contains("\0"));
        assertTrue(program.look(ScreenModel::styles).contains("38;2;225;204;92"));
    }

    @Test
    void enterAfterAPauseHasItsOwnTime() {
        program.type("\r");
        program.awaitText("typed E.");
        awaitCalm(Duration.ofMillis(900));
        assertTrue(lateness("\r").compareTo(Duration.ofMillis(800)) < 0);
    }

    @Test
    void keysAreStampedWithoutDelay() {
        List<Duration> lateness = new ArrayList<>();
        for (int i = 0; i < 31; i++) {
            lateness.add(lateness("7"));
        }
        Collections.sort(lateness);
        // The median alone: a busy machine may delay any single key.
        assertTrue(lateness.get(15).compareTo(Duration.ofMillis(5)) < 0, lateness::toString);
        assertFalse(lateness.get(0).isNegative(), lateness::toString);
    }

    /** From just before a key is typed here to its stamp there; one scale for both: CLOCK_MONOTONIC on Linux. */
    private Duration lateness(String key) {
        int seen = Integer.parseInt(program.awaitMatch("keys (\\d+)\\."));
        long typed = System.nanoTime();
        program.type(key);
        program.awaitText("keys " + (seen + 1) + ".");
        return Duration.ofNanos(Long.parseLong(program.awaitMatch("last .* at (\\d+)\\.")) - typed);
    }

    @Test
    void aFloodOfTenThousandDigitsIsKeptOut() {
        program.type("5".repeat(10_000));
        // Longer than the silence that ends a paste.
        awaitCalm(Duration.ofMillis(400));
        String typed = typedUntil("E");
        assertTrue(typed.length() <= 3 * 4, () -> "leaked " + typed);
    }

    private static void awaitCalm(Duration calm) {
        long until = System.nanoTime() + calm.toNanos();
        while (System.nanoTime() < until) {
            LockSupport.parkNanos(5_000_000);
        }
    }

    @Test
    void unknownSequencesTypeNothing() {
        List<String> sequences = List.of(
                ESC + "[200~56\r" + ESC + "[201~",
                ESC + "[7~",
                ESC + "[8~",
                ESC + "[I",
                ESC + "[O",
                ESC + "[<0;56;12M",
                ESC + "[57406u",
                ESC + "[27;5;55~",
                ESC + "[M !!",
                ESC + "]0;56\u0007",
                ESC + "P1$r0m" + ESC + "\\",
                ESC + "[1;2R",
                ESC + "[[A");
        for (int i = 0; i < sequences.size(); i++) {
            program.type(sequences.get(i));
            program.awaitText("keys " + (i + 1) + ".");
        }
        assertEquals("", typedUntil("9"));
    }

    @Test
    void aSequenceCutIntoPiecesIsOneKey() {
        for (String rest : List.of("[A", "[1;5C", "OB")) {
            program.type(ESC);
            LockSupport.parkNanos(5_000_000);
            for (String piece : rest.split("", -1)) {
                program.type(piece);
                LockSupport.parkNanos(2_000_000);
            }
            program.awaitThat("an arrow", () -> program.text().contains("Arrow"));
        }
        program.awaitText("keys 3.");
        assertEquals("", typedUntil("9"));
    }

    @Test
    void escapeAloneIsEscape() {
        program.type(ESC);
        program.awaitText("last Escape");
        assertEquals("", typedUntil("9"));
    }

    @Test
    void keypadDigitsAndEnterCountInBothModes() {
        program.type(ESC + "Ou");
        program.awaitText("typed 5.");
        program.type(ESC + "Ov");
        program.awaitText("typed 56.");
        program.type(ESC + "OM");
        program.awaitText("typed 56E.");
        program.type("5");
        program.type("\r");
        program.awaitText("typed 56E5E.");
    }

    @Test
    void controlKeysAreKeysAndStopNothing() {
        program.type((byte) 0x13);
        program.awaitText("last Ctrl-s");
        program.type((byte) 0x1c);
        program.awaitText("last Ctrl-\\");
        program.type((byte) 0x11);
        program.awaitText("last Ctrl-q");
        assertFalse(program.bytes().contains("Full thread dump"));
    }

    @Test
    void controlZWhereNoShellCanContinueTheProgramOnlyRedraws() {
        // The system does not stop a process group that nobody could continue (POSIX.1, orphaned process group).
        program.type((byte) 0x1a);
        program.awaitText("last Ctrl-z");
        assertTrue(program.look(ScreenModel::isAlternate));
        assertEquals("", typedUntil("9"));
    }

    @Test
    void digitsOfOtherScriptsArriveAsThemselves() {
        program.type("７");
        program.awaitText("last ７ at");
        program.type("٣");
        program.awaitText("last ٣ at");
    }

    @Test
    void badBytesAreDroppedAndTheNextDigitIsFine() {
        program.type((byte) 0xff);
        program.type((byte) 0xc3);
        assertEquals("", typedUntil("9"));
        program.type("é".getBytes(StandardCharsets.UTF_8)[0]);
        program.type("é".getBytes(StandardCharsets.UTF_8)[1]);
        program.awaitText("typed 9é.");
    }

    @Test
    void aNewSizeIsNoticedAndDrawn() {
        program.resize(100, 30);
        program.awaitText("ready 100x30");
        program.resize(60, 20);
        program.awaitText("ready 60x20");
        program.resize(80, 24);
        program.awaitText("ready 80x24");
    }
}
