package fourfold.plain;

import fourfold.facts.Family;
import fourfold.facts.Question;
import fourfold.facts.Trace;
import fourfold.progress.FactMastery;
import fourfold.progress.Progress;
import fourfold.words.SafeText;
import java.io.IOException;
import java.time.LocalDate;
import java.util.Locale;
import java.util.stream.Collectors;

/** One family as plain text: its facts, and how each trace stands. */
public final class FamilyText {
    private FamilyText() {}

    /**
     * Writes the family.
     *
     * @param out where to
     * @param name the child's nickname
     * @param family the family
     * @param progress where the child stands
     * @param unicode false to use ASCII only
     */
    public static void write(Appendable out, String name, Family family, Progress progress, boolean unicode)
            throws IOException {
        StringBuilder text = new StringBuilder();
        text.append(SafeText.safe(name)).append(": ");
        text.append(family.low())
                .append(", ")
                .append(family.high())
                .append(" and ")
                .append(family.product());
        text.append(", ").append(progress.level(family).word());
        text.append(progress.isFocused(family) ? ", in focus" : "").append(progress.isHeld(family) ? ", on hold" : "");
        text.append("\n\n");
        text.append(String.format(
                Locale.ROOT, "%-15s %-10s %-12s %-10s %s%n", "question", "level", "right", "thinking", "last asked"));
        for (Trace trace : family.traces()) {
            FactMastery standing = progress.standing(trace);
            text.append(String.format(
                    Locale.ROOT,
                    "%-15s %-10s %-12s %-10s %s%n",
                    trace.questions().stream().map(Question::toString).collect(Collectors.joining(", ")),
                    standing.level().word(),
                    standing.asked() == 0 ? "-" : standing.right() + " of " + standing.asked(),
                    standing.medianThinking()
                            .map(t -> String.format(Locale.ROOT, "%.1f s", t.toMillis() / 1000.0))
                            .orElse("-"),
                    standing.lastDay()
                            .map(d -> LocalDate.ofEpochDay(d).toString())
                            .orElse("-")));
        }
        String all = text.toString().replace(System.lineSeparator(), "\n");
        out.append(unicode ? all : all.replace('×', 'x').replace('÷', '/'));
    }
}
