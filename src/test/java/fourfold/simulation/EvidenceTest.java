// SPDX-License-Identifier: Apache-2.0
package fourfold.simulation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.memory.ModelFigures;
import fourfold.memory.ModelFigures.Forgotten;
import fourfold.memory.ModelFigures.Spaced;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * Guards against a memory and children that nobody has ever met: what published data show, as bounds on the memory model
 * and on each kind of children. What misses a bound is named with its value of today. {@code -Dpictures=write} writes the
 * table anew.
 */
class EvidenceTest {
    private static final Path TABLE = Path.of("src/test/resources/evidence/table.txt");
    private static final Map<String, KindFigures> KINDS = figures();
    private static final String GAPS = "best gaps for 7, 35, 70, 350 days";
    private static final String RIGHT = "right, each question once a week";
    private static final String[] BEFORE = {"predictive", "multiscale", "two-strength", "activation", "forgetful"};

    /** A bound that a kind does not keep, and where it stands instead. */
    private record Miss(String kind, EvidenceRow row, double today) {}

    /** What was tried stands in simulation/kinds.md. */
    private static final List<Miss> MISSES = List.of();

    private static Map<String, KindFigures> figures() {
        Map<String, KindFigures> figures = new LinkedHashMap<>();
        for (MemoryKind kind : MemoryKind.all()) {
            figures.put(kind.name(), new KindFigures(kind));
        }
        return figures;
    }

    @ParameterizedTest
    @EnumSource
    void everyKindOfChildrenKeepsTheBound(EvidenceRow row) {
        KINDS.forEach((kind, figures) -> {
            double value = row.of(figures);
            String seen = kind + ", " + row.title() + ": " + value;
            List<Miss> miss = MISSES.stream()
                    .filter(m -> m.kind.equals(kind) && m.row == row)
                    .toList();
            if (miss.isEmpty()) {
                assertTrue(row.holds(value), seen);
            } else {
                assertEquals(miss.get(0).today, value, 0.02 * Math.max(1, Math.abs(value)), seen);
                assertFalse(row.holds(value), seen + " keeps its bound now");
            }
        });
    }

    private static List<Spaced> spaced() throws IOException {
        return EvidenceFiles.rows("published-spacing.csv").stream()
                .filter(row -> row[0].equals("C2008"))
                .map(row -> new Spaced(number(row[3]), number(row[4]), number(row[5]) / 100))
                .toList();
    }

    private static List<Forgotten> forgotten() throws IOException {
        return EvidenceFiles.rows("published-spacing.csv").stream()
                .filter(row -> row[0].equals("C2009 Exp 2a") && row[2].equals("forgetting"))
                .map(row -> new Forgotten(number(row[3]), number(row[5]) / 100))
                .toList();
    }

    private static double[] learned() throws IOException {
        return EvidenceFiles.rows("published-learning-curves.csv").stream()
                .filter(row -> row[0].equals("anderson1981") && !row[1].equals("1"))
                .mapToDouble(row -> number(row[2]))
                .toArray();
    }

    private static double number(String text) {
        return Double.parseDouble(text);
    }

    /** Cepeda, Vul, Rohrer, Wixted and Pashler 2008, 26 conditions. */
    @Test
    void theModelFollowsGapsAndRetentionIntervals() throws IOException {
        assertEquals(26, spaced().size());
        double error = ModelFigures.errorOfSpacing(spaced());
        assertTrue(error <= 0.08, "off by " + error);
    }

    /** Cepeda and others 2009, Experiment 2a. */
    @Test
    void theModelForgetsAsPeopleDo() throws IOException {
        assertEquals(6, forgotten().size());
        double error = ModelFigures.errorOfForgetting(forgotten());
        assertTrue(error <= 0.03, "off by " + error);
    }

    @Test
    void theModelsBestGapGrowsWithTheRetentionInterval() throws IOException {
        List<Spaced> points = spaced();
        double[] best = DoubleStream.of(7, 35, 70, 350)
                .map(retention -> ModelFigures.bestGap(points, retention))
                .toArray();
        assertTrue(IntStream.range(1, best.length).allMatch(i -> best[i] >= best[i - 1]));
        assertTrue(ModelFigures.gainOfSpacing(points, 35) >= 0.7);
        assertTrue(ModelFigures.keptToDay28(points) <= 0.75);
    }

    /**
     * Anderson 1981, blocks 2 to 8. The bound of .10 is missed: with the constants of 2005 the error is .091, but the
     * program's rate of forgetting, .22 in place of .177, is the one that follows the gaps and the forgetting of days.
     */
    @Test
    void theModelLearnsAListMoreSlowlyThanPeopleDo() throws IOException {
        double error = ModelFigures.errorOfLearning(195, learned());
        assertEquals(0.134, error, 0.001);
        assertTrue(error > 0.10, "the bound of .10 is kept now");
    }

    @Test
    void theTableShowsWhatIsMetAndWhatIsMissed() throws IOException {
        String table = table();
        if ("write".equals(System.getProperty("pictures"))) {
            Files.writeString(TABLE, table);
        }
        assertEquals(Files.readString(TABLE), table);
    }

    private static String table() throws IOException {
        StringBuilder text = new StringBuilder();
        line(text, "the memory model", List.of("people", "bound", "model"));
        List<Spaced> points = spaced();
        model(text, "26 conditions of gap and retention, RMSE", "<= .08", 0.08, ModelFigures.errorOfSpacing(points));
        model(text, "forgetting over 168 days, RMSE", "<= .03", 0.03, ModelFigures.errorOfForgetting(forgotten()));
        model(
                text,
                "a list of 20 pairs, blocks 2-8, RMSE",
                "<= .10",
                0.1,
                ModelFigures.errorOfLearning(195, learned()));
        text.append('\n');
        List<String> head = new ArrayList<>(List.of("people", "bound"));
        head.addAll(KINDS.keySet());
        line(text, "children", head);
        for (EvidenceRow row : EvidenceRow.values()) {
            List<String> cells = new ArrayList<>(List.of(row.people(), row.bound()));
            KINDS.values().forEach(kind -> cells.add(cell(row, row.of(kind))));
            line(text, row.title(), cells);
        }
        List<String> gaps = new ArrayList<>(List.of("1 11 21 21", "shown"));
        KINDS.values()
                .forEach(kind -> gaps.add(IntStream.of(kind.bestGaps())
                        .mapToObj(Integer::toString)
                        .reduce((a, b) -> a + " " + b)
                        .orElseThrow()));
        line(text, GAPS, gaps);
        List<String> right = new ArrayList<>(List.of("", "shown"));
        KINDS.values().forEach(kind -> right.add(EvidenceRow.number(kind.right())));
        line(text, RIGHT, right);
        text.append('\n');
        before(text);
        return text.append("\n* misses its bound\n").toString();
    }

    /** The children there were before these, with the figures they had. */
    private static void before(StringBuilder text) throws IOException {
        List<String> head = new ArrayList<>(List.of("people", "bound"));
        head.addAll(List.of(BEFORE));
        line(text, "children until 2026-11-26", head);
        for (String[] row : EvidenceFiles.rows("before.csv")) {
            if (row[0].equals("gaps") || row[0].equals("right")) {
                List<String> cells = new ArrayList<>(List.of("", "shown"));
                cells.addAll(List.of(row).subList(1, row.length));
                line(text, row[0].equals("gaps") ? GAPS : RIGHT, cells);
                continue;
            }
            EvidenceRow what = EvidenceRow.valueOf(row[0]);
            List<String> cells = new ArrayList<>(List.of(what.people(), what.bound()));
            List.of(row).subList(1, row.length).forEach(cell -> cells.add(cell(what, number(cell))));
            line(text, what.title(), cells);
        }
    }

    private static String cell(EvidenceRow row, double value) {
        return EvidenceRow.number(value) + (row.holds(value) ? "" : " *");
    }

    private static void model(StringBuilder text, String title, String bound, double most, double value) {
        line(text, title, List.of("0", bound, EvidenceRow.number(value) + (value <= most ? "" : " *")));
    }

    private static void line(StringBuilder text, String title, List<String> cells) {
        StringBuilder line = new StringBuilder(String.format(Locale.ROOT, "%-48s", title));
        cells.forEach(cell -> line.append(String.format(Locale.ROOT, "%15s", cell)));
        text.append(line).append('\n');
    }
}
