// SPDX-License-Identifier: Apache-2.0
package fourfold.benchmark;

import fourfold.facts.Families;
import fourfold.facts.Question;
import fourfold.insight.Grid;
import fourfold.log.Answer;
import fourfold.log.Child;
import fourfold.log.DrillSession;
import fourfold.log.Moment;
import fourfold.log.Purpose;
import fourfold.log.Surface;
import fourfold.progress.Progress;
import fourfold.progress.Steering;
import fourfold.scheduling.LastingGain;
import fourfold.scheduling.Scheduler;
import fourfold.scheduling.Turn;
import fourfold.store.Store;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.UUID;

/**
 * A fresh process that does what the program does with a child's file, once, and prints how long each part took: opening,
 * reading the answers and folding them, the grid, the next questions, and appending answers.
 */
final class GrowthProbe {
    private static final int ASKED = 400;
    private static final int APPENDED = 2_000;

    /** The first questions of a process are chosen, and its first answers kept, by code that is not yet compiled; they are told apart. */
    private static final int COLD = 20;

    private static final int PAGE = 4096;

    private GrowthProbe() {}

    /** The file, the child's name, and whether to append. Prints numbers, see {@link GrowthBenchmark}. */
    public static void main(String[] arguments) throws IOException {
        Path file = Path.of(arguments[0]);
        Store.loadDriver();
        long begun = System.nanoTime();
        try (Store store = Store.open(file)) {
            long opened = System.nanoTime();
            Child child = store.children().stream()
                    .filter(c -> c.name().equals(arguments[1]))
                    .findFirst()
                    .orElseThrow();
            boolean looking = arguments[2].equals("look");
            Progress.Fold fold = new Progress.Fold(Steering.of(store.actions(child.id())));
            store.readAnswers(child.id(), fold);
            Progress progress = fold.progress();
            long folded = System.nanoTime();
            Grid grid = Grid.of(progress, LongPractice.END);
            long drawn = System.nanoTime();
            if (grid.toString().isEmpty()) {
                throw new IllegalStateException();
            }
            long most = peak();
            Times next = new Times();
            Times append = new Times();
            Times sync = new Times();
            if (!looking) {
                ask(child, progress, next);
            }
            if (arguments[2].equals("append")) {
                append(store, child, file, append, sync);
            }
            System.out.printf(
                    java.util.Locale.ROOT,
                    "%d %.3f %.3f %.3f %.1f %.3f %.3f %.3f %.3f %.3f %.3f%n",
                    progress.answers(),
                    (opened - begun) / 1e6,
                    (folded - opened) / 1e6,
                    (drawn - folded) / 1e6,
                    most / 1e6,
                    next.median(),
                    next.p99(),
                    append.median(),
                    append.p99(),
                    sync.median(),
                    sync.p99());
        }
    }

    /** Bytes of the heap at its fullest so far. */
    private static long peak() {
        return java.lang.management.ManagementFactory.getMemoryPoolMXBeans().stream()
                .filter(pool -> pool.getType() == java.lang.management.MemoryType.HEAP)
                .mapToLong(pool -> pool.getPeakUsage().getUsed())
                .sum();
    }

    private static void ask(Child child, Progress before, Times next) {
        Scheduler scheduler = new LastingGain();
        Instant at = LongPractice.END;
        DrillSession session = session(child);
        Progress progress = before.beginning(session);
        for (int i = 1; i <= ASKED; i++) {
            long from = System.nanoTime();
            Optional<Turn> turn = scheduler.next(progress, at, session.seed());
            long chosen = System.nanoTime() - from;
            if (i > COLD) {
                next.add(chosen);
            }
            if (turn.isEmpty()) {
                return;
            }
            progress = progress.after(
                    answer(session, i, turn.get().purpose(), turn.get().question(), at));
            at = at.plusSeconds(4);
        }
    }

    private static DrillSession session(Child child) {
        return new DrillSession(UUID.randomUUID(), child.id(), LongPractice.END, 60, Duration.ofMinutes(30), 5);
    }

    private static Answer answer(DrillSession session, int position, Purpose purpose, Question question, Instant at) {
        return new Answer(
                Answer.Place.in(session, position),
                new Moment(at, 60),
                purpose,
                question,
                new Answer.Typing(
                        Integer.toString(question.expected()),
                        new Answer.Times(Optional.of(Duration.ofMillis(1200)), Optional.of(Duration.ofMillis(1700))),
                        0),
                Surface.TERMINAL);
    }

    /** Keeps answers as the program does; before each, the floor of the same disk. */
    private static void append(Store store, Child child, Path file, Times append, Times sync) throws IOException {
        DrillSession session = session(child);
        store.begin(session);
        try (FileChannel floor = floor(file)) {
            for (int i = 1; i <= APPENDED; i++) {
                Question question =
                        Families.questions().get(i % Families.questions().size());
                Answer answer = answer(session, i, Purpose.PRACTISE, question, LongPractice.END.plusSeconds(i));
                long synced = synced(floor);
                long from = System.nanoTime();
                store.keep(answer);
                long kept = System.nanoTime();
                if (i > COLD) {
                    sync.add(synced);
                    append.add(kept - from);
                }
            }
        }
    }

    private static FileChannel floor(Path file) throws IOException {
        return FileChannel.open(file.resolveSibling("floor.bin"), StandardOpenOption.CREATE, StandardOpenOption.WRITE);
    }

    /** One page overwritten and forced to the disk: what the file system itself takes. */
    private static long synced(FileChannel floor) throws IOException {
        ByteBuffer page = ByteBuffer.allocate(PAGE);
        page.putLong(0, System.nanoTime());
        long from = System.nanoTime();
        floor.write(page, 0);
        floor.force(true);
        return System.nanoTime() - from;
    }
}
