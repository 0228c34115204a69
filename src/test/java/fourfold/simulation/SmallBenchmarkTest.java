// SPDX-License-Identifier: Apache-2.0
package fourfold.simulation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/**
 * A small benchmark, on every kind of children for twelve weeks, must stand as it stood: {@code small.txt} has the means
 * over kinds. Whoever changes the program's policy will change its rows, and nothing but a change of the children may
 * change the others. {@code -Dpictures=write} writes the file anew; its difference is reviewed like code.
 */
class SmallBenchmarkTest {
    private static final Path STOOD = Path.of("src/test/resources/simulation/small.txt");
    private static final int WEEKS = 12;
    private static final List<String> POLICIES = List.of("none", "activation", "2026-11-27", "knows-and-plans", "ours");

    /** What is pinned, and the room it has: another processor may round a power otherwise, and a year then goes another way. */
    private enum Pinned {
        FLUENT(Measure.WEEK_12, 1.5),
        KEPT(Measure.KEPT_14, 0.02),
        RIGHT(Measure.RIGHT, 0.01),
        MET(Measure.MET, 1.5),
        FIRM(Measure.FIRM, 0.03),
        CYCLE(Measure.CYCLE, 1.5),
        PER_MINUTE(Measure.PER_MINUTE, 0.5);

        private final Measure measure;
        private final double room;

        Pinned(Measure measure, double room) {
            this.measure = measure;
            this.room = room;
        }
    }

    /** A kind whose year ends after twelve weeks. */
    private record TwelveWeeks(SimulatedLearnerKind kind) implements SimulatedLearnerKind {
        @Override
        public String name() {
            return kind.name();
        }

        @Override
        public SimulatedLearner create(long seed) {
            return kind.create(seed);
        }

        @Override
        public Calendar calendar(long seed) {
            Calendar whole = kind.calendar(seed);
            return new Calendar() {
                @Override
                public int weeks() {
                    return Math.min(WEEKS, whole.weeks());
                }

                @Override
                public List<Instant> drills() {
                    return whole.drills();
                }

                @Override
                public List<Lesson> lessons() {
                    return whole.lessons();
                }
            };
        }
    }

    @Test
    void aSmallBenchmarkStandsAsItStood() throws IOException {
        Benchmark small = new Benchmark(
                SimulatedLearnerKind.all().stream()
                        .<SimulatedLearnerKind>map(TwelveWeeks::new)
                        .toList(),
                POLICIES.stream().map(Policies::named).toList(),
                List.of(2L));
        BenchmarkTable table = new BenchmarkTable(
                small.tasks().parallelStream().map(Benchmark.Task::run).toList());
        if (System.getProperty("pictures", "").equals("write")) {
            Files.writeString(STOOD, text(table));
        }
        List<String> stood = Files.readAllLines(STOOD);
        assertEquals(POLICIES.size() + 1, stood.size());
        assertEquals(text(table).lines().findFirst().orElseThrow(), stood.get(0));
        for (int i = 0; i < POLICIES.size(); i++) {
            String[] words = stood.get(i + 1).split(" +", -1);
            assertEquals(POLICIES.get(i), words[0]);
            for (Pinned pinned : Pinned.values()) {
                double was = Double.parseDouble(words[pinned.ordinal() + 1]);
                double is = table.overKinds(words[0], pinned.measure).mean();
                assertEquals(was, is, pinned.room, () -> words[0] + " " + pinned + "\n" + text(table));
                assertFalse(Double.isNaN(was) != Double.isNaN(is), () -> words[0] + " " + pinned);
            }
        }
    }

    private static String text(BenchmarkTable table) {
        List<String> lines = new ArrayList<>();
        lines.add(line("policy", Stream.of(Pinned.values()).map(p -> p.measure.heading())));
        for (String policy : POLICIES) {
            lines.add(line(policy, Stream.of(Pinned.values()).map(p -> {
                double mean = table.overKinds(policy, p.measure).mean();
                return String.format(Locale.ROOT, "%.3f", mean);
            })));
        }
        return String.join("\n", lines) + "\n";
    }

    private static String line(String name, Stream<String> cells) {
        StringBuilder line = new StringBuilder(String.format(Locale.ROOT, "%-16s", name));
        cells.forEach(cell -> line.append(String.format(Locale.ROOT, " %9s", cell)));
        return line.toString();
    }
}
