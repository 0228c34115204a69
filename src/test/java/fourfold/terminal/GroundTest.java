// SPDX-License-Identifier: Apache-2.0
package fourfold.terminal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.googlecode.lanterna.input.KeyStroke;
import com.googlecode.lanterna.input.KeyType;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Guards against yellow on white, and against a terminal's reply that types digits into a child's answer. */
class GroundTest {
    private static final String FOREGROUND = "\u001b]10;rgb:eeee/eeee/eeee\u0007";
    private static final String BACKGROUND = "\u001b]11;rgb:2020/3030/3030\u0007";
    private static final String KIND = "\u001b[?64;1;2c";

    private static final class Heard {
        private final KeyDecoder decoder = new KeyDecoder();
        private final Ground ground = new Ground();
        private final List<KeyStroke> keys = new ArrayList<>();

        Heard() {
            decoder.awaiting(true);
        }

        Heard take(String text) {
            text.chars().forEach(c -> decoder.take((char) c));
            drain();
            return this;
        }

        Heard silence() {
            decoder.silence();
            drain();
            return this;
        }

        private void drain() {
            for (Optional<KeyStroke> k = decoder.next(); k.isPresent(); k = decoder.next()) {
                keys.add(k.get());
            }
            for (Optional<String> r = decoder.reply(); r.isPresent(); r = decoder.reply()) {
                ground.take(r.get());
            }
        }

        List<String> typed() {
            return keys.stream()
                    .filter(k -> k.getKeyType() == KeyType.Character)
                    .map(k -> k.getCharacter().toString())
                    .toList();
        }
    }

    @Test
    void aWholeReplyIsNoKeyAndSaysWhatTheGroundIs() {
        Heard heard = new Heard().take(FOREGROUND + BACKGROUND + KIND);
        assertEquals(List.of(), heard.keys);
        assertTrue(heard.ground.isAnswered());
        assertEquals(Optional.of(Theme.DARK), heard.ground.theme(0));
    }

    /** Whatever the line does to a reply: cut at any place, with a silence between, nothing of it is typed. */
    @ParameterizedTest
    @ValueSource(strings = {FOREGROUND, BACKGROUND, KIND, "\u001b]11;rgb:ff/ff/ff\u001b\\"})
    void aReplyCutAnywhereTypesNothing(String reply) {
        for (int cut = 1; cut < reply.length(); cut++) {
            Heard slow = new Heard().take(reply.substring(0, cut)).take(reply.substring(cut));
            assertEquals(List.of(), slow.keys, "cut at " + cut);
            Heard late = new Heard().take(reply.substring(0, cut)).silence().take(reply.substring(cut));
            assertEquals(List.of(), late.typed(), "cut at " + cut + " for long");
            late.take("7");
            assertEquals(List.of("7"), late.typed(), "and the next digit counts");
        }
    }

    @Test
    void aReplyThatNeverEndsIsSwallowedForSixtyFourCharacters() {
        Heard heard = new Heard().take("\u001b]11;rgb:").take("2".repeat(80));
        assertTrue(heard.typed().size() < 40, heard.typed().toString());
        Heard short_ = new Heard().take("\u001b]11;rgb:2020/30").silence();
        short_.decoder.awaiting(false);
        short_.silence().take("5");
        assertEquals(List.of("5"), short_.typed(), "after two seconds keys are keys again");
    }

    @Test
    void anEscapeKeyIsStillOne() {
        Heard heard = new Heard().take("\u001b").silence().take("5");
        assertEquals(List.of("5"), heard.typed());
        assertEquals(KeyType.Escape, heard.keys.get(0).getKeyType());
    }

    @Test
    void aTerminalThatOnlySaysItsKindKnowsNoColours() {
        Heard heard = new Heard().take(KIND);
        assertTrue(heard.ground.isAnswered());
        assertEquals(Optional.empty(), heard.ground.theme(0));
    }

    @ParameterizedTest
    @CsvSource({
        "rgb:0000/0000/0000, rgb:ffff/ffff/ffff, LIGHT",
        "rgb:ff/ff/ff, rgb:0/0/0, DARK",
        "rgba:8/8/8/f, rgb:123/123/123, DARK",
        "'', rgb:7575/7575/7575, DARK",
        "'', rgb:8080/8080/8080, LIGHT",
        "'', rgb:fdfd/f6f6/e3e3, LIGHT"
    })
    void darkIsWhatTheForegroundIsLighterThan(String foreground, String background, Theme theme) {
        Ground ground = new Ground();
        if (!foreground.isEmpty()) {
            ground.take("10;" + foreground);
        }
        ground.take("11;" + background);
        assertEquals(Optional.of(theme), ground.theme(0));
    }

    @ParameterizedTest
    @CsvSource({
        "TERM=xterm-256color, true",
        "TERM=tmux-256color, true",
        "TERM=xterm, false",
        "TERM=linux, false",
        "TERM=dumb, false",
        "TERM=vt100, false",
        "TERM=screen-256color, false",
        "TERM=screen-256color TERM_PROGRAM=tmux, true",
        "TERM=xterm-256color NO_COLOR=1, false"
    })
    void aTerminalIsAskedOnlyWhereThatDoesNoHarm(String variables, boolean asked) {
        assertEquals(asked, Ground.mayBeAsked(environment(variables)));
    }

    @ParameterizedTest
    @CsvSource({"15;0, DARK", "0;15, LIGHT", "12;default;8, DARK", "0;7, LIGHT", "default;default, ", "'', "})
    void theVariableTellsWhereNobodyAnswers(String value, Theme theme) {
        assertEquals(Optional.ofNullable(theme), Ground.told(Map.of("COLORFGBG", value)));
    }

    private static Map<String, String> environment(String variables) {
        Map<String, String> environment = new HashMap<>();
        for (String variable : variables.split(" ")) {
            environment.put(variable.split("=")[0], variable.split("=")[1]);
        }
        return environment;
    }

    @Test
    void aReplyIsNothingToWaitForWhereNobodyAsked() {
        KeyDecoder decoder = new KeyDecoder();
        (BACKGROUND + KIND).chars().forEach(c -> decoder.take((char) c));
        assertEquals(KeyType.Unknown, decoder.next().orElseThrow().getKeyType());
        assertFalse(decoder.reply().isPresent());
    }
}
