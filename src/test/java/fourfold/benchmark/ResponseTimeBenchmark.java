// SPDX-License-Identifier: Apache-2.0
package fourfold.benchmark;

import fourfold.log.Answer;
import fourfold.log.Child;
import fourfold.store.Store;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.UUID;
import java.util.concurrent.locks.LockSupport;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * How far the times in the file are from the times at which keys were sent, over ten-minute drills of the packaged
 * program, each answer being written to the disk; beside a bare program that reads keys in the same minutes. Then the
 * same with every processor busy. One of the drills runs in a heap of 64 MB, and tells its pauses.
 */
class ResponseTimeBenchmark {
    private static final int MINUTES = Integer.getInteger("fourfold.minutes", 10);
    private static final int DRILLS = Integer.getInteger("fourfold.drills", 5);
    private static final Child CHILD = new Child(new UUID(92, 1), "Mina", LongPractice.END);

    @TempDir
    private Path folder;

    private final Report report = new Report("response-time", "Response times: recorded minus sent, milliseconds");

    /** Recorded minus sent, of first keys and of whole times, in the order of the answers. */
    private record Errors(Times firstKey, Times whole) {
        Errors() {
            this(new Times(), new Times());
        }

        void add(Errors more) {
            for (int i = 0; i < more.firstKey.count(); i++) {
                firstKey.add(more.firstKey.at(i));
                whole.add(more.whole.at(i));
            }
        }
    }

    @Test
    void recordedAgainstSent() throws Exception {
        report.line(Packaged.goFirst());
        measure("quiet", MINUTES, DRILLS, 0);
        measure(
                "busy",
                Math.max(1, MINUTES * 3 / 10),
                DRILLS,
                Runtime.getRuntime().availableProcessors() - 1);
        report.write();
    }

    private void measure(String name, int minutes, int drills, int busy) throws Exception {
        List<Process> burning = new ArrayList<>();
        for (int i = 0; i < busy; i++) {
            burning.add(new ProcessBuilder("chrt", "-o", "0", "sh", "-c", "while :; do :; done").start());
        }
        List<Session> sessions = new ArrayList<>();
        List<Thread> threads = new ArrayList<>();
        for (int drill = 0; drill < drills; drill++) {
            Session session = new Session(folder.resolve(name + drill), minutes, drill);
            sessions.add(session);
            threads.add(new Thread(session::sit, name + drill));
        }
        Errors[] bare = {new Errors()};
        Thread floor = new Thread(() -> bare[0] = bare(folder.resolve(name + "-bare.txt"), minutes), "bare");
        threads.add(floor);
        threads.forEach(Thread::start);
        for (Thread thread : threads) {
            thread.join();
        }
        burning.forEach(Process::destroyForcibly);
        Errors ours = new Errors();
        for (Session session : sessions) {
            ours.add(session.errors());
        }
        String what = busy == 0
                ? drills + " drills of " + minutes + " minutes at once, every answer written to the disk"
                : "the same for " + minutes + " minutes with " + busy + " of the processors kept busy";
        report.line(what + "; sent and recorded times are in milliseconds, the recorded ones cut to whole ones.");
        report.row("", "answers", "median", "p99", "most");
        row("bare program, first key", bare[0].firstKey);
        row("ours, first key", ours.firstKey);
        row("bare program, whole", bare[0].whole);
        row("ours, whole", ours.whole);
        report.line("p99 above the floor: first key %.2f ms, whole %.2f ms."
                .formatted(ours.firstKey.p99() - bare[0].firstKey.p99(), ours.whole.p99() - bare[0].whole.p99()));
        if (busy == 0) {
            Times first = new Times();
            Times last = new Times();
            for (Session session : sessions) {
                Times t = session.errors().whole;
                addAll(first, t.part(0, t.count() / 5));
                addAll(last, t.part(t.count() - t.count() / 5, t.count()));
            }
            report.line("Drift, median of whole: first fifth of the drills %.2f, last fifth %.2f."
                    .formatted(first.median(), last.median()));
            report.line(sessions.get(0).pauses());
        }
    }

    private void row(String name, Times times) {
        report.row(name, times.count(), times.median(), times.p99(), times.most());
    }

    private static void addAll(Times into, Times more) {
        for (int i = 0; i < more.count(); i++) {
            into.add(more.at(i));
        }
    }

    /** One drill of the packaged program. */
    private static final class Session {
        private final Path file;
        private final Path pauses;
        private final int minutes;
        private final long seed;
        private List<Sitter.Sent> sent = List.of();

        Session(Path folder, int minutes, long seed) throws IOException {
            Files.createDirectories(folder);
            this.file = folder.resolve("family.db");
            this.pauses = folder.resolve("gc.txt");
            this.minutes = minutes;
            this.seed = seed;
            try (Store store = Store.open(file)) {
                store.add(CHILD);
            }
        }

        void sit() {
            List<String> options = List.of("-Xmx64m", "-Xlog:gc,safepoint:file=" + pauses);
            List<String> command =
                    Packaged.opened(seed == 0 ? options : List.of(), "drill", "--minutes", Integer.toString(minutes));
            try (TimedPty program = TimedPty.start(Map.of("FOURFOLD_STORE", file.toString()), 80, 24, command)) {
                Sitter sitter = new Sitter(program, seed);
                sitter.sit(Integer.MAX_VALUE);
                sent = sitter.sent();
                program.type("\r");
                program.exitCode();
            } catch (IOException e) {
                throw new java.io.UncheckedIOException(e);
            }
        }

        Errors errors() {
            Errors errors = new Errors();
            List<Answer> kept;
            try (Store store = Store.open(file)) {
                kept = store.answers(CHILD.id());
            }
            if (kept.size() != sent.size()) {
                throw new IllegalStateException(sent.size() + " answers sent, " + kept.size() + " kept");
            }
            for (int i = 0; i < kept.size(); i++) {
                errors.firstKey.add(nanos(kept.get(i).firstKey().orElseThrow())
                        - sent.get(i).first());
                errors.whole.add(
                        nanos(kept.get(i).whole().orElseThrow()) - sent.get(i).whole());
            }
            return errors;
        }

        private static long nanos(Duration time) {
            return time.toNanos();
        }

        /** What the virtual machine says of its pauses in the drill that had 64 MB. */
        String pauses() throws IOException {
            Times collections = new Times();
            Times stops = new Times();
            for (String line : Files.readAllLines(pauses)) {
                add(collections, Pattern.compile("Pause.* ([0-9.]+)ms").matcher(line), 1e6);
                add(stops, Pattern.compile("Total: *([0-9]+) ns").matcher(line), 1);
            }
            return "In a heap of 64 MB the drill of %d minutes ran to its end: %d pauses to collect garbage, the longest"
                            .formatted(minutes, collections.count())
                    + " %.2f ms; %d stops of any kind, the longest %.2f ms."
                            .formatted(
                                    collections.count() == 0 ? 0 : collections.most(),
                                    stops.count(),
                                    stops.count() == 0 ? 0 : stops.most());
        }

        private static void add(Times times, Matcher matcher, double unit) {
            if (matcher.find()) {
                times.add((long) (Double.parseDouble(matcher.group(1)) * unit));
            }
        }
    }

    /** Keys sent in the same manner to a program with nothing around it. */
    private static Errors bare(Path notes, int minutes) {
        SplittableRandom dice = new SplittableRandom(7);
        List<Sitter.Sent> sent = new ArrayList<>();
        List<String> command = Packaged.bare(BareKeys.class, notes.toString(), "60");
        try (TimedPty program = TimedPty.start(Map.of(), 80, 24, command)) {
            program.whenShown("ready");
            long until = System.nanoTime() + minutes * 60_000_000_000L;
            int seen = 0;
            while (System.nanoTime() < until) {
                program.moreThan(seen, 2_000);
                LockSupport.parkNanos(15_000_000);
                long shown = program.lastArrival();
                LockSupport.parkNanos(300_000_000L + dice.nextInt(400_000_000));
                long first = program.type("4")[0];
                LockSupport.parkNanos(60_000_000L + dice.nextInt(100_000_000));
                seen = program.length();
                long enter = program.type("\r")[0];
                sent.add(new Sitter.Sent(first - shown, enter - shown));
            }
            program.moreThan(seen, 2_000);
            program.type("\u0003");
            program.exitCode();
            Errors errors = new Errors();
            List<String> lines = Files.readAllLines(notes);
            for (int i = 0; i < Math.min(lines.size(), sent.size()); i++) {
                String[] noted = lines.get(i).split(" ", -1);
                errors.firstKey.add(Long.parseLong(noted[0]) - sent.get(i).first());
                errors.whole.add(Long.parseLong(noted[1]) - sent.get(i).whole());
            }
            return errors;
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }
}
