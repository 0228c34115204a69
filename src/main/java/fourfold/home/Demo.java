// SPDX-License-Identifier: Apache-2.0
package fourfold.home;

import fourfold.log.Problem;
import fourfold.log.Reason;
import fourfold.log.RecordsFailure;
import fourfold.store.Failure;
import fourfold.store.Store;
import fourfold.terminal.SessionClock;
import fourfold.upkeep.ShownFile;
import java.io.FileNotFoundException;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.stream.Stream;

/**
 * A throw-away copy of an invented family's file, moved in time by whole days so that the last drill was yesterday.
 */
final class Demo implements AutoCloseable {
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
        try {
            Path folder = Files.createTempDirectory("fourfold-demo");
            // A demo that is left by a signal still leaves no files behind.
            Runtime.getRuntime().addShutdownHook(new Thread(() -> sweep(folder)));
            Path file = folder.resolve("demo.db");
            try (InputStream made = Demo.class.getResourceAsStream(DemoFile.RESOURCE)) {
                if (made == null) {
                    throw failed(Problem.of(Reason.PROGRAM_INCOMPLETE), new FileNotFoundException(DemoFile.RESOURCE));
                }
                Files.copy(made, file);
            }
            Store store = Store.open(file);
            ShownFile.moveTo(store, moments.now());
            return new Demo(folder, store);
        } catch (IOException e) {
            throw failed(Failure.problem(e), e);
        }
    }

    private static RecordsFailure failed(Problem problem, Exception cause) {
        return new RecordsFailure(
                RecordsFailure.Task.SET_UP_DEMO, System.getProperty("java.io.tmpdir"), problem, cause);
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

    @Override
    public void close() {
        sweep(folder);
    }

    private static void sweep(Path folder) {
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
