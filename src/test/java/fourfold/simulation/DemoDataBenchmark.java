// SPDX-License-Identifier: Apache-2.0
package fourfold.simulation;

import fourfold.log.Answer;
import fourfold.records.AnswersCsv;
import fourfold.scheduling.LastingGain;
import java.io.IOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * Writes the invented family that the demo shows: three simulated children at different stages. Not a measurement, but
 * run like one. System properties: {@code demo.folder} ({@code demo-data} by default) and {@code demo.seed} (2023).
 */
class DemoDataBenchmark {
    /** The Friday of every child's last drill; the demo moves all of them to yesterday. */
    private static final LocalDate LAST_DAY = LocalDate.of(2026, 3, 27);

    private static final List<Invented> FAMILY = List.of(
            new Invented("Pip", "short-buffer", 10, "about ten weeks in: the easy tables sit, the middle ones grow"),
            new Invented(
                    "Juno", "activation", 23, "about twenty-three weeks in: most families are open, many are fluent"),
            new Invented("Bo", "predictive", 1, "has just begun"));

    /** One invented child. */
    private record Invented(String name, String kind, int weeks, String stage) {}

    @Test
    void demoData() throws IOException {
        Path folder = Path.of(System.getProperty("demo.folder", "demo-data"));
        long seed = Long.getLong("demo.seed", 2023);
        Files.createDirectories(folder);
        try (Writer writer = Files.newBufferedWriter(folder.resolve("family.csv"), StandardCharsets.UTF_8)) {
            write(writer, seed);
        }
        Files.writeString(folder.resolve("README.md"), readMe(seed));
    }

    /** Writes all answers of the family as CSV. */
    static void write(Writer writer, long seed) throws IOException {
        AnswersCsv.Sheet sheet = new AnswersCsv.Sheet(writer);
        for (int i = 0; i < FAMILY.size(); i++) {
            for (Answer answer : answers(FAMILY.get(i), seed + i)) {
                sheet.write(answer, FAMILY.get(i).name());
            }
        }
        sheet.flush();
    }

    private static List<Answer> answers(Invented child, long seed) {
        SimulatedLearner learner =
                SimulatedLearnerKind.named(List.of(child.kind())).get(0).create(seed);
        List<Answer> answers = new ArrayList<>();
        new SchoolYear(learner, new LastingGain(), seed, answers::add).run(child.weeks());
        long newest = answers.get(answers.size() - 1).localDay();
        return answers.stream()
                .map(a -> moved(a, LAST_DAY.toEpochDay() - newest))
                .toList();
    }

    private static Answer moved(Answer a, long days) {
        return a.askedAt(a.askedAt().plus(Duration.ofDays(days)));
    }

    /** The page that stands beside the file. */
    static String readMe(long seed) {
        StringBuilder text = new StringBuilder("""
                # The invented family

                `family.csv` holds the answers of three children who do not exist. They are simulated children, run
                through the real drill. `fourfold --demo` opens a throw-away copy of them.

                """);
        for (int i = 0; i < FAMILY.size(); i++) {
            Invented child = FAMILY.get(i);
            text.append(
                    "- %s: %s (kind `%s`, seed %d).\n".formatted(child.name(), child.stage(), child.kind(), seed + i));
        }
        return text.append("""

                        The last drill of each is on %s. Made with `mvn clean verify -Dbenchmark=DemoData -Ddemo.seed=%d`;
                        run it again after a change to the scheduler or the simulated children.
                        """.formatted(LAST_DAY, seed)).toString();
    }
}
