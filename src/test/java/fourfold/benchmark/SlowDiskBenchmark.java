// SPDX-License-Identifier: Apache-2.0
package fourfold.benchmark;

import static org.junit.jupiter.api.Assumptions.assumeTrue;

import fourfold.log.Child;
import fourfold.store.Store;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * From Enter to the last byte of the next picture, with the answer kept in between, on the disk as it is and on one whose
 * every forced write lasts 50 ms longer; beside a program that does nothing but force a page to the same disk. Needs Linux
 * and a C compiler called {@code cc}.
 */
class SlowDiskBenchmark {
    private static final int ANSWERS = Integer.getInteger("fourfold.answers", 60);
    private static final int SLOW_MS = 50;

    @TempDir
    private Path folder;

    @Test
    void enterToTheNextPicture() throws Exception {
        Path library = folder.resolve("slow-disk.so");
        assumeTrue(compiled(library), "no C compiler called cc");
        Report report = new Report("slow-disk", "A slow disk: from Enter to the last byte of the next picture");
        report.line(Packaged.goFirst());
        report.line(ANSWERS + " answers each, the first of them numbers to copy; milliseconds.");
        report.row("", "times", "median", "p99", "most", "median in forced writes");
        measure(report, "the disk as it is", Map.of());
        Map<String, String> slow = Map.of("LD_PRELOAD", library.toString(), "SLOW_DISK_MS", Integer.toString(SLOW_MS));
        measure(report, "every forced write " + SLOW_MS + " ms longer", slow);
        report.write();
    }

    private boolean compiled(Path library) throws Exception {
        try {
            return new ProcessBuilder(
                                    "cc", "-shared", "-fPIC", "-O2", "-o", library.toString(), "src/test/c/slow-disk.c")
                            .inheritIO()
                            .start()
                            .waitFor()
                    == 0;
        } catch (IOException e) {
            return false;
        }
    }

    private void measure(Report report, String disk, Map<String, String> environment) throws Exception {
        Times floor = forced(disk, environment);
        Times ours = drilled(disk, environment);
        row(report, "one forced write, " + disk, floor, floor);
        row(report, "Enter to the next picture, " + disk, ours, floor);
    }

    private static void row(Report report, String name, Times times, Times floor) {
        report.row(name, times.count(), times.median(), times.p99(), times.most(), times.median() / floor.median());
    }

    private Times forced(String disk, Map<String, String> environment) throws IOException {
        List<String> command =
                Packaged.bare(BareForce.class, folder.resolve(disk + ".bin").toString(), Integer.toString(ANSWERS));
        ProcessBuilder builder = new ProcessBuilder(command).redirectError(ProcessBuilder.Redirect.INHERIT);
        builder.environment().putAll(environment);
        builder.environment().put("CLASSPATH", System.getProperty("java.class.path"));
        Process process = builder.start();
        Times times = new Times();
        new String(process.getInputStream().readAllBytes(), StandardCharsets.US_ASCII)
                .lines()
                .forEach(line -> times.add(Long.parseLong(line)));
        return times;
    }

    private Times drilled(String disk, Map<String, String> environment) throws IOException {
        Path file = folder.resolve(disk + ".db");
        try (Store store = Store.open(file)) {
            store.add(new Child(new UUID(92, 1), "Mina", LongPractice.END));
        }
        Map<String, String> all = new HashMap<>(environment);
        all.put("FOURFOLD_STORE", file.toString());
        try (TimedPty program = TimedPty.start(all, 80, 24, Packaged.opened("drill", "--minutes", "10"))) {
            Sitter sitter = new Sitter(program, 1);
            sitter.sit(ANSWERS);
            return sitter.enterPaints();
        }
    }
}
