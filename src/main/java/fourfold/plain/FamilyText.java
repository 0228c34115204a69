package fourfold.plain;

import fourfold.facts.Family;
import fourfold.facts.Trace;
import fourfold.home.Standing;
import fourfold.progress.FactMastery;
import fourfold.progress.Progress;
import fourfold.words.SafeText;
import fourfold.words.Stones;
import fourfold.words.Words;
import java.io.IOException;
import java.time.LocalDate;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** One family as plain text: its facts, and how each trace stands. */
public final class FamilyText {
    private FamilyText() {}

    /**
     * Writes the family.
     *
     * @param out where to
     * @param words the language
     * @param name the child's nickname
     * @param family the family
     * @param standing where the child stands
     * @param unicode false to use no signs beyond ASCII
     */
    public static void write(
            Appendable out, Words words, String name, Family family, Standing standing, boolean unicode)
            throws IOException {
        Progress progress = standing.progress();
        StringBuilder text = new StringBuilder(words.say(
                "plain.family.title",
                SafeText.safe(name),
                family.low(),
                family.high(),
                family.product(),
                Stones.of(standing.stones().highest(family), unicode).strip() + " "
                        + words.level(progress.level(family))));
        text.append(progress.isFocused(family) ? ", " + words.say("grid.focused") : "")
                .append(progress.isHeld(family) ? ", " + words.say("grid.held") : "")
                .append(tables(
                        words,
                        "grid.opened",
                        family,
                        Set.copyOf(progress.steering().opened())))
                .append(tables(words, "grid.closed", family, progress.steering().closed()))
                .append(progress.isKnownByTrial(family) ? ", " + words.say("grid.trial") : "")
                .append("\n\n");
        TextTable table = new TextTable(false, 18, 10, 12, 10, 1);
        table.row(List.of(
                words.say("plain.family.question"),
                words.say("family.level"),
                words.say("family.right"),
                words.say("family.thinking"),
                words.say("family.last")));
        for (Trace trace : family.traces()) {
            table.row(row(
                    words,
                    trace,
                    progress.mastery(trace),
                    Stones.of(standing.stones().highest(trace), unicode)));
        }
        out.append(Signs.printable(text.append(table.lines()).toString(), unicode));
    }

    private static String tables(Words words, String key, Family family, Set<Integer> tables) {
        return Stream.of(family.low(), family.high())
                .distinct()
                .filter(tables::contains)
                .map(table -> ", " + words.say(key, table))
                .collect(Collectors.joining());
    }

    private static List<String> row(Words words, Trace trace, FactMastery mastery, String stones) {
        return List.of(
                stones + " " + trace.questions().stream().map(words::asked).collect(Collectors.joining(", ")),
                words.level(mastery.level()),
                mastery.asked() == 0 ? "-" : words.say("drills.of", mastery.right(), mastery.asked()),
                mastery.medianThinking().map(words::seconds).orElse("-"),
                mastery.lastDay()
                        .map(d -> words.shortDate(LocalDate.ofEpochDay(d)))
                        .orElse("-"));
    }
}
