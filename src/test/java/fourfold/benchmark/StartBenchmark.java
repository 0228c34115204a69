// SPDX-License-Identifier: Apache-2.0
package fourfold.benchmark;

import java.io.IOException;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * From the start of the process to the first painted frame, against a bare program that opens the terminal library and
 * paints one frame; and to the end of a printed command, against a bare program that prints one line. All are started in
 * turn, so that what else the machine does falls on all alike.
 */
class StartBenchmark {
    private static final int ROUNDS = Integer.getInteger("fourfold.rounds", 25);
    private static final int ANSWERS = 10_000;

    @TempDir
    private Path folder;

    private interface Start {
        long nanos() throws Exception;
    }

    @Test
    void start() throws Exception {
        Path file = LongPractice.file(folder, "family.db", ANSWERS);
        Map<String, String> store = Map.of("FOURFOLD_STORE", file.toString());
        Map<String, Start> kinds = new LinkedHashMap<>();
        kinds.put("bare frame", () -> frame(Packaged.bare(BareFrame.class), store, "The frame is there."));
        kinds.put("first page", () -> frame(Packaged.opened(), store, "Who wants to practise?"));
        kinds.put("in a b/Übung ×, first page", inAnotherFolder(store));
        kinds.put("drill", () -> frame(Packaged.opened("drill"), store, "press Enter"));
        kinds.put("bare line", () -> Packaged.run(Packaged.bare(BareLine.class), Map.of("CLASSPATH", classPath())));
        kinds.put("grid", () -> Packaged.run(Packaged.opened("grid"), store));
        kinds.put("--demo grid", () -> Packaged.run(Packaged.opened("--demo", "--child", "Pip", "grid"), store));
        kinds.put("java -jar, first page", () -> frame(Packaged.program(), store, "Who wants to practise?"));
        kinds.put("java -jar, grid", () -> Packaged.run(Packaged.program("grid"), store));
        Map<String, Times> times = new LinkedHashMap<>();
        kinds.keySet().forEach(kind -> times.put(kind, new Times()));
        Report report = new Report("start", "Start: process start to the first painted frame, or to the end");
        report.line(Packaged.goFirst());
        for (int round = -2; round < ROUNDS; round++) {
            for (Map.Entry<String, Start> kind : kinds.entrySet()) {
                long nanos = kind.getValue().nanos();
                if (round >= 0) {
                    times.get(kind.getKey()).add(nanos);
                }
            }
        }
        report.line("A child of " + ANSWERS + " answers; " + ROUNDS + " rounds, interleaved; milliseconds.");
        report.line(
                "The program is opened as README says, with the archive of classes that the build makes and the quick"
                        + " compiler; \"java -jar\" goes without. The bare programs are started plainly.");
        double frame = times.get("bare frame").median();
        report.row("", "least", "median", "most", "median : bare frame");
        times.forEach((kind, t) -> report.row(kind, t.quantile(0), t.median(), t.most(), t.median() / frame));
        report.write();
    }

    /** The same from a copy in a folder whose name has more in it than plain letters. */
    private Start inAnotherFolder(Map<String, String> store) throws Exception {
        String project = "'" + folder.resolve("a b").resolve("Übung ×") + "'";
        String copy = "mkdir -p " + project + "/target && cp -rp target/fourfold.* target/lib " + project + "/target";
        Packaged.run(List.of("sh", "-c", copy), Map.of());
        String opened = "cd " + project + " && exec " + String.join(" ", Packaged.opened());
        return () -> frame(List.of("sh", "-c", opened), store, "Who wants to practise?");
    }

    private static String classPath() {
        return fourfold.terminal.PtyProgram.classPath();
    }

    private static long frame(List<String> command, Map<String, String> environment, String words) throws IOException {
        try (TimedPty program = TimedPty.start(environment, 80, 24, command)) {
            long shown = program.whenShown(words);
            program.type("\u0003");
            program.exitCode();
            return shown - program.started();
        }
    }
}
