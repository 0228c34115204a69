package fourfold.screens;

import java.util.List;
import java.util.Locale;
import java.util.ResourceBundle;

/**
 * What the program says, in one language. The texts stand in one resource bundle, {@code words.properties} for English
 * and {@code words_de.properties} for German; a gap in a text is written as in {@link java.util.Formatter}.
 */
public final class Words {
    /** The languages that are complete, the usual one first. */
    public static final List<Locale> LANGUAGES = List.of(Locale.ENGLISH, Locale.GERMAN);

    private static final String BUNDLE = "fourfold.screens.words";

    private final ResourceBundle texts;
    private final Locale language;

    private Words(Locale language) {
        this.language = language;
        this.texts = ResourceBundle.getBundle(
                BUNDLE,
                language,
                ResourceBundle.Control.getNoFallbackControl(ResourceBundle.Control.FORMAT_PROPERTIES));
    }

    /** The words of a language; English for one that is not there. */
    public static Words of(Locale wanted) {
        Locale language = LANGUAGES.stream()
                .filter(l -> l.getLanguage().equals(wanted.getLanguage()))
                .findFirst()
                .orElse(Locale.ENGLISH);
        return new Words(language);
    }

    /** English. */
    public static Words english() {
        return new Words(Locale.ENGLISH);
    }

    /** The language. */
    public Locale language() {
        return language;
    }

    /**
     * A text with its gaps filled.
     *
     * @throws java.util.MissingResourceException if there is no text of that key
     */
    public String say(String key, Object... gaps) {
        String text = texts.getString(key);
        return gaps.length == 0 ? text : String.format(language, text, gaps);
    }
}
