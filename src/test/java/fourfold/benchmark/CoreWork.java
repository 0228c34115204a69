// SPDX-License-Identifier: Apache-2.0
package fourfold.benchmark;

import fourfold.drill.Drill;
import fourfold.drill.Event;
import fourfold.drill.Phase;
import fourfold.drill.Step;
import fourfold.insight.Grid;
import fourfold.log.Answer;
import fourfold.log.Child;
import fourfold.log.DrillSession;
import fourfold.log.Surface;
import fourfold.progress.Progress;
import fourfold.progress.Steering;
import fourfold.scheduling.LastingGain;
import fourfold.scheduling.Scheduler;
import fourfold.scheduling.Turn;
import fourfold.store.Store;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;

/** The pure core at work for a child of ten thousand answers, each beside a floor: the least that such work must do. */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
public class CoreWork {
    private static final Instant AT = LongPractice.END;
    private static final int TRACES = 155;

    private Progress progress;
    private Answer answer;
    private Drill asking;
    private Scheduler scheduler;
    private Object[] states;

    /** A drill that has come to its first question. */
    @Setup
    public void practise() throws IOException {
        Path folder = Files.createTempDirectory("core");
        Path file = LongPractice.file(folder, "family.db", 10_000);
        Child child;
        List<Answer> log;
        try (Store store = Store.open(file)) {
            child = store.children().get(0);
            log = store.answers(child.id());
        }
        try (var files = Files.list(folder)) {
            for (Path left : files.toList()) {
                Files.delete(left);
            }
        }
        Files.delete(folder);
        Progress.Fold fold = new Progress.Fold(Steering.of(List.of()));
        log.forEach(fold);
        DrillSession session = new DrillSession(new UUID(5, 5), child.id(), AT, 60, Duration.ofMinutes(8), 5);
        progress = fold.progress().beginning(session);
        answer = log.get(log.size() - 1);
        scheduler = new LastingGain();
        states = new Object[TRACES];
        asking = Drill.ready(fold.progress(), session, scheduler, Surface.TERMINAL)
                .on(new Event.Enter(AT))
                .next();
        asking = asking.on(new Event.Painted(AT.plusMillis(5))).next();
        if (!(asking.phase() instanceof Phase.Asking)) {
            throw new IllegalStateException("no question");
        }
    }

    /** A key and what follows from it. */
    @Benchmark
    public Step drillOnADigit() {
        return asking.on(new Event.Digit(4, AT.plusMillis(900)));
    }

    /** One answer taken into account: level, hands, memory. */
    @Benchmark
    public Progress progressAfterAnAnswer() {
        return progress.after(answer);
    }

    /** Which question comes next. */
    @Benchmark
    public Optional<Turn> nextQuestion() {
        return scheduler.next(progress, AT.plusSeconds(5), 5);
    }

    /** All families at a glance. */
    @Benchmark
    public Grid grid() {
        return Grid.of(progress, Instant.ofEpochSecond(20_000 * 86_400L));
    }

    /** The floor of the grid: every trace's level read. */
    @Benchmark
    public int floorLevelsRead() {
        int sum = 0;
        for (int trace = 0; trace < TRACES; trace++) {
            sum += progress.mastery(trace).level().ordinal();
        }
        return sum;
    }

    /** The floor of a key: one small object made. */
    @Benchmark
    public Object floorOneObject() {
        return new Event.Digit(4, AT);
    }

    /** The floor of an answer: the states of all traces copied, as nothing may be changed in place. */
    @Benchmark
    public Object[] floorStatesCopied() {
        return states.clone();
    }

    /** The floor of a choice: what every trace's activation is now. */
    @Benchmark
    public double[] floorActivations() {
        return progress.memory().activations(AT.plusSeconds(5).toEpochMilli());
    }
}
