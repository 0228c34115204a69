package fourfold.home;

import fourfold.log.Answer;
import fourfold.log.Child;
import fourfold.log.DrillSession;
import fourfold.log.Problem;
import fourfold.log.Reason;
import fourfold.log.RecordsFailure;
import fourfold.records.AnswersCsv;
import fourfold.store.Failure;
import fourfold.store.Store;
import fourfold.terminal.SessionClock;
import java.io.FileNotFoundException;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;
import java.util.stream.Stream;

/**
 * A throw-away copy of an invented family's answers, moved in time by whole days so that the last drill was yesterday.
 */
final class Demo implements AutoCloseable {
    private static final String DATA = "/demo-data/family.csv";
    private static final int MINUTES = 8;

    private final Path folder;
    private final Store store;

    private Demo(Path folder, Store store) {
        this.folder = folder;
        this.store = store;
    }

    /**
     * Makes the demo.
     *
     * @throws RecordsFailure if the folder for temporary files can't take it
     */
    static Demo make(SessionClock moments) {
        // The answers are read while the file is made: each takes a good part of a second.
        FutureTask<Family> reading = new FutureTask<>(Family::read);
        Thread reader = new Thread(reading, "demo");
        reader.setDaemon(true);
        reader.start();
        try {
            Path folder = Files.createTempDirectory("fourfold-demo");
            Demo demo = new Demo(folder, Store.open(folder.resolve("demo.db")));
            // A demo that is left by a signal still leaves no files behind.
            Runtime.getRuntime().addShutdownHook(new Thread(demo::sweep));
            demo.fill(reading.get(), moments.now());
            return demo;
        } catch (IOException e) {
            throw failed(Failure.problem(e), e);
        } catch (ExecutionException e) {
            throw failed(Problem.of(Reason.PROGRAM_INCOMPLETE), e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(e);
        }
    }

    private static RecordsFailure failed(Problem problem, Exception cause) {
        return new RecordsFailure(
                RecordsFailure.Task.SET_UP_DEMO, System.getProperty("java.io.tmpdir"), problem, cause);
    }

    /** The invented family as it stands in the program. */
    private record Family(List<Child> children, List<Answer> answers) {
        static Family read() throws IOException {
            Map<String, Child> children = new LinkedHashMap<>();
            try (InputStream data = Demo.class.getResourceAsStream(DATA)) {
                if (data == null) {
                    throw new FileNotFoundException(DATA);
                }
                List<Answer> answers = AnswersCsv.read(
                        new InputStreamReader(data, StandardCharsets.UTF_8),
                        name -> children.computeIfAbsent(name, n -> new Child(UUID.randomUUID(), n, Instant.EPOCH))
                                .id());
                return new Family(List.copyOf(children.values()), answers);
            }
        }
    }

    Store store() {
        return store;
    }

    /**
     * Where pages go that are printed from the demo: beside it among the temporary files, and not among the family's
     * documents. They stay when the demo goes, as a browser may still be opening them.
     */
    Path pages() {
        return folder.resolveSibling(folder.getFileName() + "-pages");
    }

    private void fill(Family family, Instant now) {
        long newest =
                family.answers().stream().mapToLong(Answer::localDay).max().orElse(0);
        Duration shift = Duration.ofDays(now.getEpochSecond() / 86_400L - 1 - newest);
        List<Child> children = family.children().stream()
                .map(c -> new Child(c.id(), c.name(), now))
                .toList();
        List<Answer> moved = family.answers().stream().map(a -> moved(a, shift)).toList();
        store.takeIn(children, sessions(moved), moved);
    }

    private static Answer moved(Answer a, Duration shift) {
        return a.askedAt(a.askedAt().plus(shift));
    }

    private static List<DrillSession> sessions(List<Answer> answers) {
        Map<UUID, DrillSession> sessions = new LinkedHashMap<>();
        for (Answer a : answers) {
            sessions.computeIfAbsent(
                    a.drill(),
                    id -> new DrillSession(
                            id, a.child(), a.askedAt(), a.zoneOffsetMinutes(), Duration.ofMinutes(MINUTES), 0));
        }
        return new ArrayList<>(sessions.values());
    }

    @Override
    public void close() {
        sweep();
    }

    private void sweep() {
        if (!Files.exists(folder)) {
            return;
        }
        try (Stream<Path> files = Files.walk(folder)) {
            for (Path path : files.sorted(Comparator.reverseOrder()).toList()) {
                Files.deleteIfExists(path);
            }
        } catch (IOException | UncheckedIOException e) {
            // The system clears its temporary folder itself.
        }
    }
}
