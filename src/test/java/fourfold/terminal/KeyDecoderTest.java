// SPDX-License-Identifier: Apache-2.0
package fourfold.terminal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.googlecode.lanterna.input.KeyStroke;
import com.googlecode.lanterna.input.KeyType;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

/** Guards against sequences that type their own digits, and against keys that never come out. */
class KeyDecoderTest {
    private static final String ESC = "\u001b";

    private static List<String> keys(String sent) {
        KeyDecoder decoder = new KeyDecoder();
        sent.chars().forEach(c -> decoder.take((char) c));
        decoder.silence();
        return drain(decoder);
    }

    private static List<String> drain(KeyDecoder decoder) {
        List<String> names = new ArrayList<>();
        for (Optional<KeyStroke> key = decoder.next(); key.isPresent(); key = decoder.next()) {
            names.add(name(key.get()));
        }
        return names;
    }

    private static String name(KeyStroke key) {
        return (key.isCtrlDown() ? "Ctrl-" : "")
                + (key.isAltDown() ? "Alt-" : "")
                + (key.getKeyType() == KeyType.Character
                        ? key.getCharacter()
                        : key.getKeyType().name());
    }

    @Test
    void knownSequencesAreTheirKeys() {
        // Codes as in xterm's control sequences document; rxvt's Home and End and the Linux console's F1 from memory.
        assertEquals(List.of("ArrowUp", "ArrowLeft", "ArrowUp"), keys(ESC + "[A" + ESC + "[D" + ESC + "OA"));
        assertEquals(List.of("Home", "End", "Home", "End"), keys(ESC + "[H" + ESC + "[F" + ESC + "[7~" + ESC + "[8~"));
        assertEquals(List.of("Delete", "PageUp", "ReverseTab"), keys(ESC + "[3~" + ESC + "[5~" + ESC + "[Z"));
        assertEquals(List.of("Ctrl-ArrowRight", "F1", "5"), keys(ESC + "[1;5C" + ESC + "[[A" + "5"));
    }

    @Test
    void theKeypadInApplicationModeTypesDigits() {
        StringBuilder sent = new StringBuilder();
        "pqrstuvwxyjkmoM".chars().forEach(c -> sent.append(ESC).append('O').append((char) c));
        assertEquals(
                List.of("0", "1", "2", "3", "4", "5", "6", "7", "8", "9", "*", "+", "-", "/", "Enter"),
                keys(sent.toString()));
    }

    @Test
    void controlCharactersAreKeys() {
        assertEquals(
                List.of("Enter", "Enter", "Backspace", "Backspace", "Tab", "Ctrl-c", "Ctrl-z", "Ctrl-\\", "Ctrl- "),
                keys("\r\n\u007f\b\t\u0003\u001a\u001c\0"));
    }

    @Test
    void escapeIsDecidedBySilence() {
        assertEquals(List.of("Escape"), keys(ESC));
        assertEquals(List.of("Escape", "Escape"), keys(ESC + ESC));
        assertEquals(List.of("Alt-5"), keys(ESC + "5"));
        assertEquals(List.of("Escape", "Enter"), keys(ESC + "\r"));
        assertEquals(25, decoderAfter(ESC).patience().toMillis());
        assertTrue(decoderAfter("5").patience().isZero());
    }

    private static KeyDecoder decoderAfter(String sent) {
        KeyDecoder decoder = new KeyDecoder();
        sent.chars().forEach(c -> decoder.take((char) c));
        return decoder;
    }

    @Test
    void aPasteIsOneKeyWhateverIsInIt() {
        KeyDecoder decoder = new KeyDecoder();
        (ESC + "[200~/home/ana/family.db\r" + ESC + "[201~").chars().forEach(c -> decoder.take((char) c));
        assertEquals(
                new Key(Key.Kind.PASTE, '\0', "/home/ana/family.db"),
                Key.of(decoder.next().orElseThrow()));
        (ESC + "[200~" + "7".repeat(5000) + ESC + "[201~").chars().forEach(c -> decoder.take((char) c));
        assertEquals(Key.of(Key.Kind.OTHER), Key.of(decoder.next().orElseThrow()), "too long for any text");
        assertEquals(List.of("Unknown", "7"), keys(ESC + "[200~56\r" + ESC + "[A" + ESC + "[201~" + "7"));
        assertEquals(List.of("Unknown"), keys(ESC + "[200~5656"));
    }

    @Test
    void aSequenceThatBreaksOffEndsWithTheNextOne() {
        assertEquals(List.of("Unknown", "ArrowUp"), keys(ESC + "[12" + ESC + "[A"));
        assertEquals(List.of("Unknown", "Enter"), keys(ESC + "[12\r"));
        assertEquals(List.of("Unknown", "ArrowUp"), keys(ESC + "]0;56" + ESC + "[A"));
    }

    @Test
    void whatIsNoCharacterIsDropped() {
        assertEquals(List.of("7"), keys("\uFFFD7"));
        assertEquals(List.of("７", "é"), keys("７é"));
    }

    @Provide
    Arbitrary<String> controlSequences() {
        // ECMA-48, 5.4: parameters 3/0 to 3/15, intermediates 2/0 to 2/15, final 4/0 to 7/14.
        Arbitrary<String> parameters =
                Arbitraries.strings().withCharRange('0', '?').ofMaxLength(8).filter(text -> !text.equals("200"));
        Arbitrary<String> intermediates =
                Arbitraries.strings().withCharRange(' ', '/').ofMaxLength(2);
        Arbitrary<Character> last = Arbitraries.chars().range('@', '~').filter(c -> c != '[' && c != 'M');
        return net.jqwik.api.Combinators.combine(parameters, intermediates, last)
                .as((p, i, f) -> ESC + "[" + p + i + f);
    }

    @Property
    void everyControlSequenceIsOneKeyAndNoCharacter(@ForAll("controlSequences") String sequence) {
        List<String> keys = keys(sequence + "7");
        assertEquals(2, keys.size(), sequence);
        assertEquals("7", keys.get(1));
        assertTrue(keys.get(0).length() > 1, () -> sequence + " typed " + keys.get(0));
    }

    @Property
    void whateverCameBeforeSilenceLetsTheNextDigitThrough(@ForAll List<@IntRange(min = 0, max = 0xff) Integer> noise) {
        KeyDecoder decoder = new KeyDecoder();
        noise.forEach(c -> decoder.take((char) c.intValue()));
        decoder.silence();
        drain(decoder);
        decoder.take('7');
        assertEquals(List.of("7"), drain(decoder));
    }
}
