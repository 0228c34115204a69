// SPDX-License-Identifier: Apache-2.0
package fourfold.terminal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.googlecode.lanterna.TextCharacter;
import com.googlecode.lanterna.TextColor;
import fourfold.progress.Mastery;
import fourfold.screens.Colours;
import fourfold.words.Stones;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * Guards against letters that cannot be read: the contrast of Web Content Accessibility Guidelines 2.2, 4.5 to 1 for text
 * (1.4.3), 3 to 1 for graphics (1.4.11), as the colours leave the program at each depth.
 */
class ThemeTest {
    /** Relative luminance, as the guidelines define it. */
    private static double luminance(TextColor c) {
        return 0.2126 * part(c.getRed()) + 0.7152 * part(c.getGreen()) + 0.0722 * part(c.getBlue());
    }

    private static double part(int eight) {
        double s = eight / 255.0;
        return s <= 0.03928 ? s / 12.92 : Math.pow((s + 0.055) / 1.055, 2.4);
    }

    private static double contrast(TextColor a, TextColor b) {
        double light = Math.max(luminance(a), luminance(b));
        double dark = Math.min(luminance(a), luminance(b));
        return (light + 0.05) / (dark + 0.05);
    }

    /** #777777 on white is just under, #767676 just over 4.5: check values known in the trade, worked out again here. */
    @Test
    void theContrastIsCountedAsTheGuidelinesDo() {
        TextColor white = new TextColor.RGB(255, 255, 255);
        assertEquals(21, contrast(white, new TextColor.RGB(0, 0, 0)), 1e-9);
        assertEquals(4.4781, contrast(white, new TextColor.RGB(0x77, 0x77, 0x77)), 1e-4);
        assertEquals(4.5422, contrast(white, new TextColor.RGB(0x76, 0x76, 0x76)), 1e-4);
    }

    /** xterm's 256 colours: a cube of six steps 0, 95, 135, 175, 215, 255 from 16 on, and greys 8 + 10 n from 232 on. */
    private static TextColor.RGB published(int entry) {
        if (entry >= 232) {
            int grey = 8 + 10 * (entry - 232);
            return new TextColor.RGB(grey, grey, grey);
        }
        int[] steps = {0, 95, 135, 175, 215, 255};
        int cube = entry - 16;
        return new TextColor.RGB(steps[cube / 36], steps[cube / 6 % 6], steps[cube % 6]);
    }

    @ParameterizedTest
    @EnumSource(
            value = ColourDepth.class,
            names = {"FULL", "PALETTE"})
    void everythingCanBeReadOnADarkAndOnALightGround(ColourDepth depth) {
        for (Theme theme : List.of(Theme.DARK, Theme.LIGHT)) {
            TextColor ground = shown(depth, theme.ground());
            for (Ink ink : List.of(Ink.PLAIN, Ink.STRONG, Ink.CHOSEN, Ink.QUIET)) {
                assertTrue(contrast(shown(depth, theme.of(ink)), ground) >= 4.5, theme + " " + ink);
            }
            double before = 0;
            for (Mastery level : Mastery.values()) {
                double its = contrast(shown(depth, theme.of(Colours.of(level))), ground);
                assertTrue(its >= 3, theme + " " + level + " " + its);
                assertTrue(its > before, "a higher level stands out more: " + theme + " " + level);
                before = its;
            }
        }
    }

    /** The colour that is sent, as the standard palette shows it. */
    private static TextColor shown(ColourDepth depth, TextColor colour) {
        TextColor sent = depth.nearest(colour);
        assertTrue(sent instanceof TextColor.Indexed, sent.toString());
        int entry =
                Integer.parseInt(new String(sent.getForegroundSGRSequence(), java.nio.charset.StandardCharsets.US_ASCII)
                        .replace("38;5;", ""));
        assertTrue(entry >= 16, "the first sixteen have no known value");
        assertEquals(
                List.of(
                        published(entry).getRed(),
                        published(entry).getGreen(),
                        published(entry).getBlue()),
                List.of(sent.getRed(), sent.getGreen(), sent.getBlue()));
        return published(entry);
    }

    /** What is chosen is reversed and what is strong is bold, in each theme: in the plain one nothing else tells them. */
    @ParameterizedTest
    @EnumSource(Theme.class)
    void theStyleOfAnInkReachesTheScreen(Theme theme) {
        for (Ink ink : Ink.values()) {
            assertEquals(ink.style(), theme.cell('7', ink).getModifiers(), ink.toString());
            assertEquals(ink.style(), theme.cell('…', ink).getModifiers(), ink.toString());
        }
        assertTrue(theme.cell('7', Ink.CHOSEN).isReversed()
                && theme.cell('7', Ink.STRONG).isBold());
    }

    @Test
    void withSixteenColoursOnlyTheTerminalsOwnPairIsUsed() {
        for (Ink ink : Ink.values()) {
            TextCharacter cell = Theme.PLAIN.cell('7', ink);
            assertEquals(TextColor.ANSI.DEFAULT, cell.getForegroundColor());
            assertEquals(TextColor.ANSI.DEFAULT, cell.getBackgroundColor());
        }
        for (ColourDepth depth : List.of(ColourDepth.SIXTEEN, ColourDepth.EIGHT, ColourDepth.NONE)) {
            assertTrue(!depth.hasPalette());
        }
    }

    /** Every pair of levels, not only neighbours, on every terminal. */
    @Test
    void levelsDifferInShape() {
        for (boolean unicode : new boolean[] {true, false}) {
            for (Mastery a : Mastery.values()) {
                for (Mastery b : Mastery.values()) {
                    if (a != b) {
                        assertNotEquals(Stones.of(a, unicode), Stones.of(b, unicode));
                    }
                }
                assertEquals(Stones.WIDTH, Stones.of(a, unicode).length());
            }
        }
    }
}
