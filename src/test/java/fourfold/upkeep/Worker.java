// SPDX-License-Identifier: Apache-2.0
package fourfold.upkeep;

import fourfold.store.Later;
import fourfold.store.Store;
import fourfold.store.StoreFile;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Instant;
import java.util.Map;
import java.util.Set;

/** A program of its own that does one kind of work over and over until it is killed. */
final class Worker {
    private Worker() {}

    /**
     * Works.
     *
     * @param arguments the kind of work, the family's file, and another file that the work needs
     */
    public static void main(String[] arguments) throws IOException {
        Path file = Path.of(arguments[1]);
        Path other = Path.of(arguments[2]);
        Store.open(other).close();
        System.out.println("works");
        System.out.flush();
        while (true) {
            switch (arguments[0]) {
                case "backup" -> Backups.of(file).named("round");
                case "restore" -> Restoration.of(file, other);
                case "merge" -> merge(file, other);
                case "remove" -> remove(file, other);
                case "migrate" -> migrate(file, other);
                default -> throw new IllegalArgumentException(arguments[0]);
            }
        }
    }

    private static void merge(Path file, Path other) {
        try (Store store = Store.open(file)) {
            Merge.Said nothing = new Merge.Said(Set.of(), Map.of(), Instant.EPOCH, 0);
            Merge.of(store, other, nothing);
        }
    }

    /** Each round begins with the file as it was before, and removes its first child after a backup. */
    private static void remove(Path file, Path before) throws IOException {
        putBack(file, before);
        try (Store store = Store.open(file)) {
            Backups.of(file).named("round");
            store.remove(store.children().get(0).id(), Instant.EPOCH);
        }
    }

    private static void putBack(Path file, Path before) throws IOException {
        Path again = file.resolveSibling("again.tmp");
        Files.copy(before, again, StandardCopyOption.REPLACE_EXISTING);
        Files.move(again, file, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
        Files.deleteIfExists(file.resolveSibling(file.getFileName() + "-journal"));
    }

    /** Each round begins with the file as it was before; a later step of the schema is then done. */
    private static void migrate(Path file, Path older) throws IOException {
        putBack(file, older);
        StoreFile.open(file, StoreFile.PATIENCE, Later.schema()).close();
    }
}
