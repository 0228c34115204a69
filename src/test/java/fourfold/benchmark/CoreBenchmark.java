// SPDX-License-Identifier: Apache-2.0
package fourfold.benchmark;

import fourfold.terminal.PictureWork;
import java.util.Collection;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.openjdk.jmh.results.RunResult;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.options.OptionsBuilder;
import org.openjdk.jmh.runner.options.TimeValue;

/** The pure core under JMH (the OpenJDK's harness for small measurements), each piece of work beside its floor. */
class CoreBenchmark {
    private static final int SECONDS = Integer.getInteger("fourfold.seconds", 1);

    @Test
    void core() throws RunnerException {
        Report report = new Report("core", "Pure core: nanoseconds for one piece of work, warm");
        Collection<RunResult> results = new Runner(new OptionsBuilder()
                        .include(CoreWork.class.getName())
                        .include(PictureWork.class.getName())
                        .forks(1)
                        .warmupIterations(4)
                        .measurementIterations(5)
                        .warmupTime(TimeValue.seconds(SECONDS))
                        .measurementTime(TimeValue.seconds(SECONDS))
                        .build())
                .run();
        Map<String, Double> scores = new TreeMap<>();
        Map<String, Double> errors = new TreeMap<>();
        for (RunResult result : results) {
            String size = result.getParams().getParam("size");
            String name = result.getPrimaryResult().getLabel() + (size == null ? "" : " " + size);
            scores.put(name, result.getPrimaryResult().getScore());
            errors.put(name, result.getPrimaryResult().getScoreError());
        }
        report.row("work", "floor", "ours", "± (99.9 %)", "ratio");
        row(report, scores, errors, "drillOnADigit", "floorOneObject");
        row(report, scores, errors, "progressAfterAnAnswer", "floorStatesCopied");
        row(report, scores, errors, "nextQuestion", "floorActivations");
        row(report, scores, errors, "grid", "floorLevelsRead");
        row(report, scores, errors, "pictureDifference 80x24", "floorCellsCompared 80x24");
        row(report, scores, errors, "pictureDifference 200x60", "floorCellsCompared 200x60");
        report.write();
    }

    private static void row(
            Report report, Map<String, Double> scores, Map<String, Double> errors, String work, String floor) {
        report.row(work, scores.get(floor), scores.get(work), errors.get(work), scores.get(work) / scores.get(floor));
    }
}
