// SPDX-License-Identifier: Apache-2.0
package fourfold.simulation;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.DoubleStream;
import org.junit.jupiter.api.Test;

/** Guards against a figure of people that is not in their data: those of {@link EvidenceRow}, reckoned from the files. */
class PeopleTest {
    private static final int ENOUGH_TIMES = 5;

    private static double number(String text) {
        return Double.parseDouble(text);
    }

    private static double mean(DoubleStream values) {
        return values.average().orElseThrow();
    }

    private static List<String[]> timed(String size) throws IOException {
        return EvidenceFiles.rows("children-verify-products-by-child.csv").stream()
                .filter(row -> row[2].equals(size) && !row[6].isEmpty() && number(row[6]) >= ENOUGH_TIMES)
                .toList();
    }

    /** Children with at least five timed answers of each size in a session. */
    @Test
    void largeProductsTakeAFifthLonger() throws IOException {
        Map<String, Double> small = new HashMap<>();
        timed("small").forEach(row -> small.put(row[0] + row[1], number(row[7])));
        double effect = mean(timed("large").stream()
                .filter(row -> small.containsKey(row[0] + row[1]))
                .mapToDouble(row -> number(row[7]) - Objects.requireNonNull(small.get(row[0] + row[1]))));
        assertEquals(0.206, effect, 5e-4);
    }

    @Test
    void timesSpreadWithinAChild() throws IOException {
        assertEquals(0.34, mean(timed("small").stream().mapToDouble(row -> number(row[8]))), 5e-3);
        assertEquals(0.39, mean(timed("large").stream().mapToDouble(row -> number(row[8]))), 5e-3);
    }

    @Test
    void threeRightInARowPromiseAFourth() throws IOException {
        for (String[] row : EvidenceFiles.rows("children-run-of-right.csv")) {
            if (row[1].equals("3")) {
                assertEquals(row[0].equals("small") ? 0.934 : 0.854, number(row[3]), 1e-9);
            }
        }
    }

    @Test
    void theBestGapGrowsAndGainsMuch() throws IOException {
        Map<Double, Double> bestGap = new HashMap<>();
        Map<Double, Double> best = new HashMap<>();
        Map<Double, Double> none = new HashMap<>();
        for (String[] row : EvidenceFiles.rows("published-spacing.csv")) {
            if (!row[0].equals("C2008")) {
                continue;
            }
            double retention = number(row[4]);
            double recall = number(row[5]) / 100;
            if (recall > best.getOrDefault(retention, 0.0)) {
                best.put(retention, recall);
                bestGap.put(retention, number(row[3]));
            }
            if (number(row[3]) == 0) {
                none.put(retention, recall);
            }
        }
        assertEquals(Map.of(7.0, 1.0, 35.0, 11.0, 70.0, 21.0, 350.0, 21.0), bestGap);
        double gain = logOdds(best.getOrDefault(35.0, 0.5)) - logOdds(none.getOrDefault(35.0, 0.5));
        assertEquals(1.44, gain, 5e-3);
    }

    private static double logOdds(double p) {
        return Math.log(p / (1 - p));
    }

    @Test
    void halfOfWhatIsRecalledAfterADayIsRecalledAfterFourWeeks() throws IOException {
        Map<String, Double> recall = new HashMap<>();
        for (String[] row : EvidenceFiles.rows("published-spacing.csv")) {
            if (row[0].equals("C2009 Exp 2a") && row[2].equals("forgetting")) {
                recall.put(row[3], number(row[5]));
            }
        }
        assertEquals(0.52, recall.getOrDefault("28", 0.0) / recall.getOrDefault("1", 1.0), 5e-3);
    }

    @Test
    void englandsChildrenReachTwentyOfTwentyFive() throws IOException {
        double[] means = EvidenceFiles.rows("england-tables-check.csv").stream()
                .filter(row -> !row[1].isEmpty())
                .mapToDouble(row -> number(row[1]))
                .toArray();
        assertEquals(19.8, means[0], 1e-9);
        assertEquals(21.0, means[means.length - 1], 1e-9);
    }
}
