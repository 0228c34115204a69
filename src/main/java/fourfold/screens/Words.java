package fourfold.screens;

import fourfold.drill.Bridge;
import fourfold.drill.Depiction;
import fourfold.drill.Mixup;
import fourfold.facts.Fact;
import fourfold.facts.Family;
import fourfold.facts.Operation;
import fourfold.facts.Question;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.ResourceBundle;
import java.util.function.Function;
import java.util.stream.Collectors;

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

    /** The text for one or for many: the key with {@code .one} or {@code .many} after it. */
    public String counted(String key, int count, Object... gaps) {
        return say(key + (count == 1 ? ".one" : ".many"), gaps);
    }

    /** So many minutes, rounded. */
    public String minutes(Duration time) {
        long minutes = time.plusSeconds(30).toMinutes();
        return minutes < 1 ? say("count.minutes.none") : counted("count.minutes", (int) minutes, minutes);
    }

    /**
     * A name inside a sentence, kept to itself whichever way its letters run (Unicode Standard Annex 9, first strong
     * isolate).
     */
    public static String isolated(String name) {
        return "\u2068" + name + "\u2069";
    }

    /** How this language writes the sign of an operation: × or ·, ÷ or a colon. */
    public char sign(Operation operation) {
        return say(operation == Operation.MULTIPLY ? "sign.multiply" : "sign.divide")
                .charAt(0);
    }

    /** A question, as in {@code 56 ÷ 7}. */
    public String asked(Question question) {
        return question.left() + " " + sign(question.operation()) + " " + question.right();
    }

    /** A fact, as in {@code 56 ÷ 7 = 8}. */
    public String fact(Fact fact) {
        return asked(fact.question()) + " = " + fact.result();
    }

    /** A family by its product, as in {@code 7 × 8}. */
    public String name(Family family) {
        return asked(Question.product(family.low(), family.high()));
    }

    /** Families by their products, the first few of them. */
    public String names(List<Family> families, int most) {
        String names = families.stream().limit(most).map(this::name).collect(Collectors.joining(", "));
        return families.size() > most ? names + " …" : names;
    }

    /** What a wrong answer belongs to, in one calm line. */
    public String mixup(Mixup mixup) {
        return mixup(mixup, this::asked);
    }

    /** The same with questions told in another way. */
    public String mixup(Mixup mixup, Function<Question, String> told) {
        Question fits = mixup.fits();
        if (mixup.kind() == Mixup.Kind.SUM) {
            return say("mixup.product", fits.left() + " + " + fits.right());
        }
        return fits.operation() == Operation.MULTIPLY
                ? say("mixup.product", told.apply(fits))
                : say("mixup.quotient", fits.expected(), told.apply(fits));
    }

    /** A way to a fact from what the child knows. */
    public String bridge(Bridge bridge) {
        return bridge(bridge, question -> fact(question.fact()));
    }

    /** The same with facts told in another way. */
    public String bridge(Bridge bridge, Function<Question, String> told) {
        List<Object> gaps = new ArrayList<>(bridge.from().stream().map(told).toList());
        gaps.add(bridge.group());
        return say("bridge." + bridge.way().name().toLowerCase(Locale.ROOT), gaps.toArray());
    }

    /** The whole picture of a question's fact in words. */
    public String picture(Depiction depiction, Question question) {
        return FactPicture.of(depiction, question).words(this);
    }

    /**
     * A picture in words.
     *
     * @param split whether the whole is taken apart, as in a division
     */
    public String picture(Depiction depiction, boolean split, int groups, int each) {
        String key = "picture." + depiction.name().toLowerCase(Locale.ROOT) + (split ? ".split" : "");
        return counted(key, groups, groups, each, groups * each);
    }
}
