// SPDX-License-Identifier: Apache-2.0
package fourfold.benchmark;

import fourfold.log.Child;
import fourfold.progress.Progress;
import fourfold.progress.Steering;
import fourfold.store.Store;
import fourfold.upkeep.Backups;
import fourfold.upkeep.Merge;
import fourfold.upkeep.Salvage;
import fourfold.upkeep.Verification;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;

/** A fresh process that does one kind of upkeep on a large file, once, and prints how many milliseconds it took. */
final class ScaleProbe {
    private ScaleProbe() {}

    /** What to do, the file, and what else that needs: another file, or a child's name. */
    public static void main(String[] arguments) throws IOException {
        Path file = Path.of(arguments[1]);
        Store.loadDriver();
        long begun = System.nanoTime();
        switch (arguments[0]) {
            case "make" -> make(file, arguments);
            case "verify" -> check(Verification.of(file).isEmpty());
            case "backup" ->
                Files.delete(Backups.of(file).to(Path.of(arguments[2])).file());
            case "merge preview" -> preview(file, Path.of(arguments[2]));
            case "salvage" -> {
                Salvage.of(file, List.of(), Path.of(arguments[2]), number -> "N" + number);
                Files.delete(Path.of(arguments[2]));
            }
            case "page" -> page(file, arguments[2]);
            default -> throw new IllegalArgumentException(arguments[0]);
        }
        System.out.printf(Locale.ROOT, "%.1f%n", (System.nanoTime() - begun) / 1e6);
    }

    private static void make(Path file, String... arguments) {
        try (Store store = Store.open(file)) {
            for (int i = 2; i < arguments.length; i++) {
                LongPractice.write(store, arguments.length * 10 + i, Integer.parseInt(arguments[i]));
            }
        }
    }

    private static void preview(Path file, Path other) {
        try (Store store = Store.open(file)) {
            Merge.preview(store, other, new Merge.Said(Set.of(), Map.of(), Instant.EPOCH, 0));
        }
    }

    /** What a child's page needs before it is drawn: the file open, and the child's answers read and folded. */
    private static void page(Path file, String name) {
        try (Store store = Store.open(file)) {
            Child child = store.children().stream()
                    .filter(c -> c.name().equals(name))
                    .findFirst()
                    .orElseThrow();
            Progress.Fold fold = new Progress.Fold(Steering.of(store.actions(child.id())));
            store.readAnswers(child.id(), fold);
            check(fold.progress().answers() > 0);
        }
    }

    private static void check(boolean holds) {
        if (!holds) {
            throw new IllegalStateException("not as it must be");
        }
    }
}
