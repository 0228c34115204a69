// SPDX-License-Identifier: Apache-2.0
package fourfold.terminal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.googlecode.lanterna.TerminalSize;
import com.googlecode.lanterna.TextColor;
import com.googlecode.lanterna.input.KeyStroke;
import com.googlecode.lanterna.input.KeyType;
import com.googlecode.lanterna.terminal.virtual.DefaultVirtualTerminal;
import fourfold.log.Surface;
import java.time.Duration;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Guards against keys out of order, keys typed ahead, and pictures other than those drawn; on a terminal in memory. */
class TerminalSessionTest {
    private static final long MS = 1_000_000L;

    private final DefaultVirtualTerminal terminal = new DefaultVirtualTerminal(new TerminalSize(60, 20));
    private long nanos = 1_000 * MS;

    private TerminalSession stage(boolean unicode, boolean colour) {
        return TerminalSession.on(terminal, unicode, colour, () -> nanos);
    }

    private static void press(TerminalSession stage, char c, long at) {
        stage.press(new KeyStroke(c, false, false), at);
    }

    private static Optional<Character> next(TerminalSession stage) {
        return stage.next(Duration.ofSeconds(60)).map(press -> press.key().getCharacter());
    }

    private String shown(int row) {
        StringBuilder line = new StringBuilder();
        for (int column = 0; column < terminal.getTerminalSize().getColumns(); column++) {
            line.append(terminal.getCharacter(column, row).getCharacterString());
        }
        return line.toString().stripTrailing();
    }

    @Test
    void keysComeInOrderWithTheirStampsAndWithoutWaiting() {
        try (TerminalSession stage = stage(true, true)) {
            press(stage, '5', 20 * MS);
            press(stage, '6', 90 * MS);
            assertEquals(20 * MS, stage.next(Duration.ZERO).orElseThrow().nanos());
            assertEquals(Optional.of('6'), next(stage));
            assertEquals(Optional.empty(), next(stage));
            assertFalse(stage.ended());
        }
    }

    @Test
    void keysTypedAheadAreDroppedEvenIfTheyArriveLater() {
        try (TerminalSession stage = stage(true, true)) {
            press(stage, '1', 20 * MS);
            stage.dropKeysBefore(100 * MS);
            press(stage, '2', 99 * MS);
            press(stage, '3', 160 * MS);
            assertEquals(Optional.of('3'), next(stage));
            assertEquals(Optional.empty(), next(stage));
        }
    }

    @Test
    void controlCIsNeverTooEarly() {
        try (TerminalSession stage = stage(true, true)) {
            stage.press(new com.googlecode.lanterna.input.KeyStroke('c', true, false), 20 * MS);
            stage.dropKeysBefore(100 * MS);
            assertEquals(Optional.of('c'), next(stage));
        }
    }

    @Test
    void aPasteNeverArrives() {
        try (TerminalSession stage = stage(true, true)) {
            for (int i = 0; i < 10_000; i++) {
                press(stage, '5', 20 * MS + i);
            }
            press(stage, '7', 200 * MS);
            assertEquals(Optional.of('7'), next(stage));
            assertEquals(Optional.empty(), next(stage));
        }
    }

    @Test
    void theEndOfInputEndsTheStage() {
        try (TerminalSession stage = TerminalSession.on(terminal, true, true)) {
            stage.press(new KeyStroke(KeyType.EOF), 0);
            assertTrue(stage.ended());
            assertEquals(Optional.empty(), next(stage));
        }
    }

    @Test
    void aRealClockWaitsAsLongAsItWasTold() {
        try (TerminalSession stage = TerminalSession.on(terminal, true, true)) {
            long begun = stage.now();
            assertEquals(Optional.empty(), stage.next(Duration.ofMillis(30)));
            assertTrue(stage.now() - begun >= 30 * MS);
        }
    }

    @Test
    void aPictureIsShownWithTheTimeItLeft() {
        try (TerminalSession stage = stage(true, true)) {
            stage.graphics().setForegroundColor(new TextColor.RGB(1, 2, 3)).putString(0, 0, "7 × 8 = 56");
            nanos = 5_000 * MS;
            assertEquals(5_000 * MS, stage.paint(true));
            assertEquals("7 × 8 = 56", shown(0));
            assertEquals(new TextColor.RGB(1, 2, 3), terminal.getCharacter(0, 0).getForegroundColor());
            assertEquals(Surface.TERMINAL, stage.surface());
        }
    }

    @Test
    void cellsAreFittedOnTheirWayOut() {
        try (TerminalSession stage = stage(false, false)) {
            stage.graphics().setForegroundColor(new TextColor.RGB(1, 2, 3)).putString(0, 0, "56 ÷ 7 ↔ 8 ▓");
            stage.paint(false);
            assertEquals("56 / 7 - 8 #", shown(0));
            assertEquals(TextColor.ANSI.DEFAULT, terminal.getCharacter(0, 0).getForegroundColor());
            assertFalse(stage.unicode() || stage.colour());
        }
    }

    @Test
    void aNewSizeIsToldOnce() {
        try (TerminalSession stage = stage(true, true)) {
            assertFalse(stage.resized());
            terminal.setTerminalSize(new TerminalSize(100, 30));
            assertTrue(stage.resized());
            assertEquals(new TerminalSize(100, 30), stage.size());
            assertFalse(stage.resized());
        }
    }

    @Test
    void theLibrarysOwnWindowsGetTheSameKeys() throws Exception {
        try (TerminalSession stage = stage(true, true)) {
            press(stage, '5', 0);
            assertEquals('5', stage.screen().readInput().getCharacter());
            stage.press(new KeyStroke(KeyType.EOF), 0);
            assertEquals(KeyType.EOF, stage.screen().readInput().getKeyType());
        }
    }
}
