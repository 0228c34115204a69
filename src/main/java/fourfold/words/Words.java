// SPDX-License-Identifier: Apache-2.0
package fourfold.words;

import fourfold.drill.Depiction;
import fourfold.facts.Fact;
import fourfold.facts.Family;
import fourfold.facts.MissingFactor;
import fourfold.facts.Operation;
import fourfold.facts.Prompt;
import fourfold.facts.Question;
import fourfold.log.Problem;
import fourfold.log.RecordsFailure;
import fourfold.progress.Hint;
import fourfold.progress.Mastery;
import fourfold.progress.Rates;
import fourfold.progress.Setting;
import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.time.DayOfWeek;
import java.time.Duration;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.ResourceBundle;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * What the program says, in one language. The texts stand in one resource bundle, {@code words.properties} for English
 * and such as {@code words_de.properties} for another language; to add one, add its files. A gap in a text is written as
 * in {@link java.util.Formatter}.
 */
public final class Words {
    private static final String BUNDLE = "fourfold.words.words";
    private static final String HELP = "fourfold.words.help";

    private final Locale language;
    /** Read when the first text is said. */
    private @Nullable ResourceBundle texts;

    private Words(Locale language) {
        this.language = language;
    }

    private ResourceBundle texts() {
        if (texts == null) {
            texts = ResourceBundle.getBundle(
                    BUNDLE,
                    language,
                    ResourceBundle.Control.getNoFallbackControl(ResourceBundle.Control.FORMAT_PROPERTIES));
        }
        return texts;
    }

    /** The words of a language; English for one that is not there. */
    public static Words of(Locale wanted) {
        String language = wanted.getLanguage();
        return Languages.isThere(language) ? new Words(Locale.forLanguageTag(language)) : english();
    }

    /** English. */
    public static Words english() {
        return new Words(Locale.ENGLISH);
    }

    /** The texts of the command line's help, in the form that its library reads. */
    public ResourceBundle help() {
        return ResourceBundle.getBundle(
                HELP, language, ResourceBundle.Control.getNoFallbackControl(ResourceBundle.Control.FORMAT_PROPERTIES));
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
        String text = texts().getString(key);
        return gaps.length == 0 ? text : String.format(language, text, gaps);
    }

    /**
     * The text for one or for many.
     *
     * @param key the key without its ending {@code .one} or {@code .many}
     * @param count decides which; it fills no gap by itself
     */
    public String counted(String key, int count, Object... gaps) {
        return say(key + (count == 1 ? ".one" : ".many"), gaps);
    }

    /** A day, as in 5 Sep 2026; the names of the months are ours, since those of Java change from version to version. */
    public String date(LocalDate day) {
        return say("date", day.getDayOfMonth(), named("date.months", day.getMonthValue()), day.getYear());
    }

    /** A day without its year, as in 5 Sep. */
    public String dayOfYear(LocalDate day) {
        return say("date.day", day.getDayOfMonth(), named("date.months", day.getMonthValue()));
    }

    /** A day in ten characters, for columns: 2026-09-05 in English (ISO 8601), 05.09.2026 in German. */
    public String shortDate(LocalDate day) {
        return say("date.short", day);
    }

    /** A number with one decimal and the language's decimal sign: 2.3, or 2,3 in German. */
    public String number(double value) {
        return String.format(language, "%.1f", value);
    }

    /** A change, as {@link #number}, with + or - before it. */
    public String change(double value) {
        return String.format(language, "%+.1f", value);
    }

    /** Digits and facts correct a minute, each five and four characters wide. */
    public String rates(Rates rates) {
        return String.format(language, "%5.1f / %4.1f", rates.digitsPerMinute(), rates.factsPerMinute());
    }

    /** A time in seconds with one decimal. */
    public String seconds(Duration time) {
        return say("number.seconds", number(time.toMillis() / 1000.0));
    }

    /** A day with its name, as in Sat 5 Sep 2026. */
    public String namedDate(LocalDate day) {
        return named("date.days", day.getDayOfWeek().getValue()) + " " + date(day);
    }

    /** The short name of a day of the week. */
    public String dayName(DayOfWeek day) {
        return named("date.days", day.getValue());
    }

    private String named(String key, int number) {
        return say(key).split(" ", -1)[number - 1];
    }

    /** A duration in minutes, rounded; less than half a minute has a text of its own. */
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

    /** A name between this language's quotation marks. */
    public String quoted(String name) {
        return say("quoted", name);
    }

    /** Why a new file could not be made and what to do, in one line. */
    public String notWritten(Path file, IOException why) {
        if (why instanceof FileAlreadyExistsException) {
            return say("file.there", file);
        }
        if (why instanceof NoSuchFileException) {
            return say("file.unwritten", file, say("file.nofolder"));
        }
        if (why instanceof AccessDeniedException) {
            return say("file.unwritten", file, say("file.denied"));
        }
        boolean reasoned = why instanceof FileSystemException system && system.getReason() != null;
        String reason = reasoned ? ((FileSystemException) why).getReason() : why.getMessage();
        return say("file.unwritten", file, String.valueOf(reason));
    }

    /** How this language writes the sign of an operation: × or ·, ÷ or a colon. */
    public char sign(Operation operation) {
        return say(operation == Operation.MULTIPLY ? "sign.multiply" : "sign.divide")
                .charAt(0);
    }

    /** A question, as in {@code 56 ÷ 7} or {@code 7 × ? = 56}. */
    public String asked(Prompt prompt) {
        if (prompt instanceof MissingFactor hidden) {
            return hidden.known() + " " + sign(Operation.MULTIPLY) + " ? = " + hidden.product();
        }
        return prompt instanceof Question question
                ? question.left() + " " + sign(question.operation()) + " " + question.right()
                : Integer.toString(prompt.expected());
    }

    /** A fact, as in {@code 56 ÷ 7 = 8}. */
    public String fact(Fact fact) {
        return asked(fact.question()) + " = " + fact.result();
    }

    /** What a lesson shows: a fact, or a product with a factor hidden, as in {@code 7 × ? = 56}. */
    public String shown(Prompt prompt) {
        return prompt instanceof Question question ? fact(question.fact()) : asked(prompt);
    }

    /** A level in this language. */
    public String level(Mastery level) {
        return say("level." + level.word());
    }

    /** A setting's value: a number with its unit, or the name of the choice. */
    public String value(Setting setting, String value) {
        String few = setting != Setting.DAYS ? "" : value.equals("1") ? ".one" : ".many";
        boolean choice = !Character.isDigit(value.charAt(0));
        return choice ? say("settings.value." + value) : say("settings." + setting.key() + ".unit" + few, value);
    }

    /** A family by its product, as in {@code 7 × 8}. */
    public String name(Family family) {
        return asked(Question.product(family.low(), family.high()));
    }

    /**
     * Families by their products.
     *
     * @param most how many are named; of the others it is said that there are more
     */
    public String names(List<Family> families, int most) {
        String names = families.stream().limit(most).map(this::name).collect(Collectors.joining(", "));
        return families.size() > most ? say("names.more", names) : names;
    }

    /**
     * A way to a fact from what the child knows.
     *
     * @param inWords how a question with its result is written here
     */
    public String hint(Hint hint, Function<Question, String> inWords) {
        List<Object> gaps = new ArrayList<>(
                hint.from().stream().map(fact -> inWords.apply(fact.question())).toList());
        gaps.add(hint.step());
        return say("way." + hint.way().key(), gaps.toArray());
    }

    /** The whole picture of a question's fact in words. */
    public String picture(Depiction depiction, Question question) {
        int groups = depiction.groups(question);
        boolean split = question.operation() == Operation.DIVIDE;
        return picture(depiction, split, groups, split ? question.left() / groups : question.right());
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

    /** What could not be kept or read, in which file, why, and what to do: one line. */
    public String failure(RecordsFailure failure) {
        List<Object> gaps = new ArrayList<>(failure.places());
        gaps.add(problem(failure.problem()));
        return say("failure.task." + key(failure.task()), gaps.toArray());
    }

    /** A problem in one line. */
    public String problem(Problem problem) {
        Object[] gaps = problem.details().stream()
                .map(detail -> detail instanceof Problem deeper ? problem(deeper) : detail)
                .toArray();
        return say("failure.reason." + key(problem.reason()), gaps);
    }

    private static String key(Enum<?> one) {
        return one.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /**
     * What of a drill is lost, and why, for the parent when the program ends.
     *
     * @param answers how many answers, 0 if only the drill itself is lost
     */
    public String lost(int answers, Optional<RecordsFailure> failure) {
        String why = failure.map(this::failure).orElse("");
        return answers == 0 ? say("failure.lost.none", why) : counted("failure.lost", answers, answers, why);
    }
}
