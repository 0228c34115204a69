// SPDX-License-Identifier: Apache-2.0
package fourfold.terminal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.googlecode.lanterna.input.KeyStroke;
import com.googlecode.lanterna.input.KeyType;
import java.awt.event.InputEvent;
import java.awt.event.KeyEvent;
import java.util.Optional;
import java.util.OptionalInt;
import javax.swing.JPanel;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Guards against keys that mean another thing in the window than in a terminal. */
class WindowKeysTest {
    private static KeyEvent pressed(int code, int modifiers, char c) {
        return new KeyEvent(new JPanel(), KeyEvent.KEY_PRESSED, 0, modifiers, code, c);
    }

    private static KeyEvent typed(char c, int modifiers) {
        return new KeyEvent(new JPanel(), KeyEvent.KEY_TYPED, 0, modifiers, KeyEvent.VK_UNDEFINED, c);
    }

    @ParameterizedTest
    @CsvSource({
        "10, Enter",
        "8, Backspace",
        "127, Delete",
        "27, Escape",
        "38, ArrowUp",
        "40, ArrowDown",
        "37, ArrowLeft",
        "39, ArrowRight",
        "36, Home",
        "224, ArrowUp"
    })
    void keysWithoutALetter(int code, KeyType type) {
        assertEquals(Optional.of(new KeyStroke(type)), WindowKeys.pressed(pressed(code, 0, KeyEvent.CHAR_UNDEFINED)));
    }

    @Test
    void aDigitIsTypedOnceAndAControlCharacterNever() {
        assertEquals(Optional.empty(), WindowKeys.pressed(pressed(KeyEvent.VK_7, 0, '7')));
        assertEquals(Optional.of(new KeyStroke('7', false, false)), WindowKeys.typed(typed('7', 0)));
        assertFalse(WindowKeys.typed(typed('\n', 0)).isPresent());
        assertFalse(WindowKeys.typed(typed('\b', 0)).isPresent());
        assertFalse(WindowKeys.typed(typed('c', InputEvent.CTRL_DOWN_MASK)).isPresent());
    }

    /** The keys of both blocks, and the one that has + on it only with shift. */
    @ParameterizedTest
    @CsvSource({"521, 1", "107, 1", "61, 1", "45, -1", "109, -1", "48, 0", "96, 0"})
    void controlWithPlusMinusAndNoughtChangesTheLettersAndTypesNothing(int code, int larger) {
        assertEquals(OptionalInt.of(larger), WindowKeys.zoom(pressed(code, InputEvent.CTRL_DOWN_MASK, '0')));
        assertEquals(Optional.empty(), WindowKeys.typed(typed('0', InputEvent.CTRL_DOWN_MASK)));
        assertEquals(OptionalInt.empty(), WindowKeys.zoom(pressed(code, 0, '0')), "without control it is a key");
    }

    @Test
    void otherKeysWithControlAreNoZoomAndF11IsNoKeyOfThePage() {
        assertEquals(OptionalInt.empty(), WindowKeys.zoom(pressed(KeyEvent.VK_7, InputEvent.CTRL_DOWN_MASK, '7')));
        assertEquals(Optional.empty(), WindowKeys.pressed(pressed(KeyEvent.VK_F11, 0, KeyEvent.CHAR_UNDEFINED)));
    }

    @ParameterizedTest
    @CsvSource({"24, 1, 22", "24, -1, 27", "25, 1, 22", "20, 1, 20", "60, -1, 60", "200, 1, 48", "12, -1, 22"})
    void lettersGrowByFewerRowsAndNotBeyondWhatAPageNeeds(int rows, int larger, int then) {
        assertEquals(then, WindowSize.zoomed(rows, larger));
    }

    @Test
    void controlCLeavesHereAsWell() {
        KeyStroke stroke = WindowKeys.pressed(pressed(KeyEvent.VK_C, InputEvent.CTRL_DOWN_MASK, '\u0003'))
                .orElseThrow();
        assertEquals(Key.Kind.INTERRUPT, Key.of(stroke).kind());
    }

    @Test
    void readingWaitsWhileDrawingGoesOn() throws Exception {
        WindowTerminal terminal = new WindowTerminal(60, 20);
        Thread reader = new Thread(terminal::readInput);
        reader.start();
        while (reader.getState() != Thread.State.WAITING) {
            Thread.onSpinWait();
        }
        terminal.setCursorPosition(0, 0);
        terminal.putCharacter('7');
        terminal.flush();
        assertEquals("7", terminal.shown()[0][0].getCharacterString());
        assertTrue(reader.isAlive());
        terminal.press(new KeyStroke(KeyType.EOF));
        reader.join();
    }
}
