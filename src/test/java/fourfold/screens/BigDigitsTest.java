// SPDX-License-Identifier: Apache-2.0
package fourfold.screens;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.screens.BigDigits.Size;
import fourfold.terminal.Picture;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Guards against digits that a child takes for one another, and rows that do not line up. */
class BigDigitsTest {
    private static String picture(String text, Size size, boolean unicode) {
        return String.join(
                "\n",
                BigDigits.rows(text, size, unicode).stream()
                        .map(String::stripTrailing)
                        .toList());
    }

    @Test
    void tallInHalfBlocks() {
        assertEquals("""
                ██████          ▄▄  ▄▄          ▄████▄
                   ▄█▀           ▀██▀           ██  ██          ██████
                  ▄█▀            ▄██▄            ████
                  ██            ▀▀  ▀▀          ██  ██          ██████
                  ██                            ▀████▀""".stripTrailing(), picture("7 × 8 =", Size.TALL, true));
    }

    @Test
    void tallInAscii() {
        assertEquals("""
                ######   ####             ##              ##
                ##      ##                               ###
                #####   #####           ######            ##
                    ##  ##  ##                            ##
                #####    ####             ##            ######""", picture("56 ÷ 1", Size.TALL, false));
    }

    @Test
    void smallInHalfBlocks() {
        assertEquals("""
                ▄▀▀▄ ▄▀▀  ▄▀▀▄ ▄▀▀▄ ▄█   ▀▀▀█
                █  █ █▀▀▄ ▄▀▀▄ ▀▄▄█  █     █
                ▀▄▄▀ ▀▄▄▀ ▀▄▄▀  ▄▄▀ ▄█▄   █""", picture("068917", Size.SMALL, true));
    }

    @Test
    void smallInAscii() {
        assertEquals("""
                 __   __   __   __        __
                |  | |__  |__| |__|  /|     /
                |__| |__| |__|  __|  _|_   /""", picture("068917", Size.SMALL, false));
    }

    @Test
    void tallerInHalfBlocksHasStrokesOfOneThickness() {
        assertEquals("""
                 ▄▄▄▄▄▄▄                ▄▄▄▄▄▄▄▄
                █████████   ███   ███   █████████
                ███   ███    ▀▀███▀▀          ███
                ▀██▄▄▄██▀      ███       ▄▄▄▄▄██▀
                 ███████     ▄▄███▄▄     ███████
                ███   ███   ███   ███         ███
                ███▄▄▄███               ▄▄▄▄▄▄███
                ▀███████▀               ████████▀""", picture("8×3", Size.TALLER, true));
    }

    @Test
    void theLongestQuestionWithItsAnswerAndAPictureHaveRoomOnEverySheetThatHasTallerDigits() {
        for (int width = 76; width <= 240; width++) {
            for (int height = 22; height <= 80; height++) {
                TallDigits digits = TallDigits.on(new Picture(width, height, true));
                assertTrue(digits.width("100÷10=10".length()) < width, digits + " on " + width + "x" + height);
                boolean taller = digits.compareTo(TallDigits.TALL) > 0;
                assertTrue(!taller || 2 * (digits.height() + 1) + 10 + 9 <= height, digits + " on " + height + " rows");
            }
        }
        assertEquals(TallDigits.TALL, TallDigits.on(new Picture(80, 24, true)));
        assertEquals(TallDigits.TALLER, TallDigits.on(new Picture(120, 40, true)));
        assertEquals(TallDigits.TALLEST, TallDigits.on(new Picture(200, 60, true)));
    }

    @Test
    void noTwoSignsAreAlikeAndDigitsDifferPlainly() {
        String signs = "0123456789×÷=? ";
        for (Size size : Size.values()) {
            for (boolean unicode : new boolean[] {true, false}) {
                for (int i = 0; i < signs.length(); i++) {
                    for (int j = 0; j < i; j++) {
                        assertTrue(difference(signs.charAt(i), signs.charAt(j), size, unicode) > 0);
                    }
                }
                assertTrue(difference('1', '7', size, unicode) >= 4);
            }
        }
    }

    private static int difference(char a, char b, Size size, boolean unicode) {
        String one = String.join("", BigDigits.rows(String.valueOf(a), size, unicode));
        String other = String.join("", BigDigits.rows(String.valueOf(b), size, unicode));
        int cells = 0;
        for (int i = 0; i < one.length(); i++) {
            cells += one.charAt(i) == other.charAt(i) ? 0 : 1;
        }
        return cells;
    }

    @Test
    void otherCharactersAreRefused() {
        assertThrows(IllegalArgumentException.class, () -> BigDigits.rows("7x8", Size.TALL, true));
    }

    @Test
    void theLongestQuestionFitsTheSmallestScreen() {
        assertTrue(BigDigits.width("100 ÷ 10", Size.TALL) <= 62);
        assertTrue(BigDigits.width("100 ÷ 10 = ??", Size.SMALL) <= 60 + 4);
        assertEquals(0, BigDigits.width("", Size.TALL));
    }

    @Provide
    Arbitrary<String> texts() {
        return Arbitraries.strings().withChars("0123456789×÷=? ").ofMaxLength(12);
    }

    @Property
    void everyRowIsAsLongAsToldAndAsciiStaysAscii(@ForAll("texts") String text, @ForAll Size size) {
        for (boolean unicode : new boolean[] {true, false}) {
            List<String> rows = BigDigits.rows(text, size, unicode);
            assertEquals(size.rows(), rows.size());
            for (String row : rows) {
                assertEquals(BigDigits.width(text, size), row.length());
                assertTrue(unicode || row.chars().allMatch(c -> c < 0x80));
            }
        }
    }

    /** A ÷ whose upper dot touches its line would be read as a plus. */
    @ParameterizedTest
    @EnumSource(BigDigits.Size.class)
    void timesAndDividedByAreTheSameAboveAndBelow(BigDigits.Size size) {
        for (String sign : List.of("×", "÷")) {
            List<String> dots = new ArrayList<>();
            for (String row : BigDigits.rows(sign, size, true)) {
                dots.add(row.replace('▀', '█').replace('▄', ' '));
                dots.add(row.replace('▀', ' ').replace('▄', '█'));
            }
            List<String> ink = dots.subList(first(dots), dots.size());
            List<String> turned = new ArrayList<>(dots);
            Collections.reverse(turned);
            List<String> other = turned.subList(first(turned), turned.size());
            assertEquals(trimmed(ink), trimmed(other), sign + " " + size);
        }
    }

    private static int first(List<String> dots) {
        int first = 0;
        while (dots.get(first).isBlank()) {
            first++;
        }
        return first;
    }

    private static String trimmed(List<String> dots) {
        return String.join("\n", dots).stripTrailing();
    }
}
