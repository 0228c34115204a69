// SPDX-License-Identifier: Apache-2.0
package fourfold.memory;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;

/** Guards against a model that says it follows the published equations and does not. Sources stand in the tables. */
class PublishedValuesTest {
    private static final double EXACT = 1e-6;

    @Test
    void activation_decay_recall_and_latency_are_the_published_ones() throws IOException {
        for (String[] row : rows("activation-dependent-decay.csv")) {
            double[] times = numbers(row[0]);
            double at = Double.parseDouble(row[2]);
            double[] decays = PublishedEquations.decays(times, 0.217, 0.177);
            assertArrayEquals(numbers(row[1]), decays, EXACT);
            double activation = PublishedEquations.activationAt(at, times, decays, times.length);
            assertEquals(Double.parseDouble(row[3]), activation, EXACT);
            assertEquals(Double.parseDouble(row[4]), Equations.chanceOfRecall(activation, -0.704, 0.255), EXACT);
            assertEquals(Double.parseDouble(row[5]), PublishedEquations.latency(activation, 1, 0.3), EXACT);
        }
    }

    @Test
    void the_fading_sum_reaches_the_same_activations_within_its_bound() throws IOException {
        for (String[] row : rows("activation-dependent-decay.csv")) {
            double fading = fading(numbers(row[0]), Double.parseDouble(row[2]), 0.217, 0.177);
            assertEquals(Double.parseDouble(row[3]), fading, 1.5e-3);
        }
    }

    @Test
    void a_faster_rate_of_forgetting_means_a_slower_answer() throws IOException {
        double before = 0;
        for (String[] row : rows("rate-and-latency.csv")) {
            double rate = Double.parseDouble(row[0]);
            double[] times = {0, 10};
            double activation =
                    PublishedEquations.activationAt(40, times, PublishedEquations.decays(times, 0.25, rate), 2);
            assertEquals(Double.parseDouble(row[1]), activation, EXACT);
            double latency = PublishedEquations.latency(activation, 1, 0.3);
            assertEquals(Double.parseDouble(row[2]), latency, EXACT);
            assertTrue(latency > before);
            before = latency;
        }
    }

    /** One presentation of age 16, and two of ages 1 and 4, with the decay 0.5 of Anderson and Schooler 1991. */
    @Test
    void the_base_level_of_constant_decay_is_a_sum_of_powers() {
        assertEquals(-1.386294, PublishedEquations.activation(new double[] {16}, new double[] {0.5}), EXACT);
        assertEquals(0.405465, PublishedEquations.activation(new double[] {1, 4}, new double[] {0.5, 0.5}), EXACT);
    }

    private static double fading(double[] times, double at, double scale, double rate) {
        double[] terms = new double[FadingSum.TERMS];
        double[] left = new double[FadingSum.TERMS];
        double clock = times[0];
        for (double time : times) {
            FadingSum.fade(time - clock, left);
            FadingSum.apply(terms, 0, left);
            double strength = Arrays.stream(terms).sum();
            FadingSum.add(terms, 0, rate + scale * strength, 1);
            clock = time;
        }
        return Math.log(FadingSum.read(terms, at - clock));
    }

    private static double[] numbers(String text) {
        return Arrays.stream(text.split(" ", -1))
                .mapToDouble(Double::parseDouble)
                .toArray();
    }

    private static List<String[]> rows(String name) throws IOException {
        try (InputStream in = PublishedValuesTest.class.getResourceAsStream("/memory/" + name)) {
            String text = new String(Objects.requireNonNull(in).readAllBytes(), StandardCharsets.UTF_8);
            List<String[]> rows = text.lines()
                    .filter(line -> !line.startsWith("#"))
                    .skip(1)
                    .map(line -> line.split(",", -1))
                    .toList();
            assertTrue(rows.size() >= 5);
            return rows;
        }
    }
}
