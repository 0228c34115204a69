// SPDX-License-Identifier: Apache-2.0
package fourfold.benchmark;

import fourfold.log.Child;
import fourfold.store.Store;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.locks.LockSupport;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * From a key to the last byte of what it changes on the screen, at two sizes of window, beside a bare program that answers
 * each key with as many bytes. The keys of all programs take turns.
 */
class PaintBenchmark {
    private static final int KEYS = Integer.getInteger("fourfold.keys", 1000);
    private static final int WARM = 60;
    private static final long QUIET_MILLIS = 12;

    @TempDir
    private Path folder;

    @Test
    void keyToLastByte() throws IOException {
        Report report = new Report("paint", "Painting: from a key to the last byte of the repaint");
        report.line(Packaged.goFirst());
        Path small = file("small");
        Path large = file("large");
        try (TimedPty bare = TimedPty.start(
                        Map.of(),
                        80,
                        24,
                        Packaged.bare(BareKeys.class, folder.resolve("n").toString(), "200"));
                TimedPty ours = drill(small, 80, 24);
                TimedPty wide = drill(large, 200, 60)) {
            bare.whenShown("ready");
            begun(ours);
            begun(wide);
            Times[] times = {new Times(), new Times(), new Times()};
            for (int key = -WARM; key < KEYS; key++) {
                // A digit and then its erasure: nothing is ever answered, and the screen changes every time.
                String typed = key % 2 == 0 ? "7" : "\u007f";
                TimedPty[] programs = {bare, ours, wide};
                for (int i = 0; i < programs.length; i++) {
                    long nanos = paint(programs[i], typed);
                    if (key >= 0) {
                        times[i].add(nanos);
                    }
                }
            }
            report.line(
                    KEYS + " keys each, a digit and its erasure in turn, after " + WARM + " to warm up; milliseconds.");
            report.row("", "median", "p99", "most", "p99 above the floor");
            report.row("bare program, 200 bytes", times[0].median(), times[0].p99(), times[0].most(), 0.0);
            report.row(
                    "drill, 80 x 24",
                    times[1].median(),
                    times[1].p99(),
                    times[1].most(),
                    times[1].p99() - times[0].p99());
            report.row(
                    "drill, 200 x 60",
                    times[2].median(),
                    times[2].p99(),
                    times[2].most(),
                    times[2].p99() - times[0].p99());
        }
        report.write();
    }

    private Path file(String name) {
        Path file = folder.resolve(name + ".db");
        try (Store store = Store.open(file)) {
            store.add(new Child(new UUID(92, 1), "Mina", LongPractice.END));
        }
        return file;
    }

    private static TimedPty drill(Path file, int columns, int rows) throws IOException {
        return TimedPty.start(
                Map.of("FOURFOLD_STORE", file.toString()), columns, rows, Packaged.opened("drill", "--minutes", "30"));
    }

    /** The greeting is over and the first number stands. */
    private static void begun(TimedPty drill) {
        drill.whenShown("press Enter");
        drill.type("\r");
        drill.whenShown("█");
    }

    private static long paint(TimedPty program, String key) {
        int before = program.length();
        long typed = program.type(key)[0];
        if (!program.moreThan(before, 2_000)) {
            throw new IllegalStateException("the key changed nothing:\n" + program.text());
        }
        int length = program.length();
        while (program.moreThan(length, QUIET_MILLIS)) {
            length = program.length();
        }
        long nanos = program.lastArrival() - typed;
        LockSupport.parkNanos(8_000_000);
        return nanos;
    }
}
