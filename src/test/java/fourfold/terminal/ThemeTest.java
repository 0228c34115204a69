package fourfold.terminal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.googlecode.lanterna.TextColor;
import fourfold.progress.Mastery;
import fourfold.progress.Setting;
import fourfold.progress.Settings;
import fourfold.screens.Colours;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * Guards against letters that cannot be read: the contrast of Web Content Accessibility Guidelines 2.2, 4.5 to 1 for text
 * (1.4.3), 7 to 1 where the contrast is to be strong (1.4.6), 3 to 1 for graphics (1.4.11).
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

    @ParameterizedTest
    @CsvSource({"DARK, 7, 4.5, 3", "LIGHT, 7, 4.5, 3", "CONTRAST, 21, 7, 7"})
    void everythingCanBeReadInEveryTheme(Theme theme, double text, double quiet, double levels) {
        for (Ink ink : List.of(Ink.PLAIN, Ink.STRONG, Ink.CHOSEN)) {
            assertTrue(contrast(theme.of(ink), theme.ground()) >= text, theme + " " + ink);
        }
        assertTrue(contrast(theme.of(Ink.QUIET), theme.ground()) >= quiet, theme.toString());
        for (Mastery level : Mastery.values()) {
            double its = contrast(theme.of(Colours.of(level)), theme.ground());
            assertTrue(its >= levels, theme + " " + level + " " + its);
        }
    }

    @ParameterizedTest
    @EnumSource(value = Theme.class, mode = EnumSource.Mode.EXCLUDE, names = "TERMINAL")
    void aHigherLevelStandsOutMore(Theme theme) {
        double before = 0;
        for (Mastery level : List.of(Mastery.ACQUIRING, Mastery.ACCURATE, Mastery.FLUENT, Mastery.LASTING)) {
            double its = contrast(theme.of(Colours.of(level)), theme.ground());
            assertTrue(its > before, theme + " " + level);
            before = its;
        }
    }

    @Test
    void everyChoiceOfTheParentHasItsTheme() {
        List<Theme> themes = Setting.COLOURS.offered().stream()
                .map(c -> Colours.of(Settings.USUAL.with(Setting.COLOURS.key(), c)))
                .toList();
        assertEquals(List.of(Theme.values()), themes);
        assertEquals(Theme.LIGHT, Colours.shared(List.of(Theme.LIGHT, Theme.LIGHT)));
        assertEquals(Theme.TERMINAL, Colours.shared(List.of(Theme.LIGHT, Theme.DARK)));
        assertEquals(Theme.TERMINAL, Colours.shared(List.of()));
    }
}
