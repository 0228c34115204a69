// SPDX-License-Identifier: Apache-2.0
package fourfold.commands;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;

/** What lay in the file's folder when the program was killed: a copy that is only ever copied again. */
final class LeftBehind {
    private final Path place;
    private final String name;

    private LeftBehind(Path place, String name) {
        this.place = place;
        this.name = name;
    }

    /** Copies a file and all that stands beside it to a place of which nobody else knows. */
    static LeftBehind of(Path file, Path place) {
        LeftBehind left = new LeftBehind(emptyFolder(place), String.valueOf(file.getFileName()));
        copyAll(file.resolveSibling(""), place.resolve("left"));
        return left;
    }

    /** Makes a folder. */
    static Path emptyFolder(Path folder) {
        try {
            return Files.createDirectory(folder);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** A copy of everything; gives the family's file in it. */
    Path copy(String folder) {
        copyAll(place.resolve("left"), place.resolve(folder));
        return place.resolve(folder).resolve(name);
    }

    /** An empty folder. */
    Path scratch(String folder) {
        return emptyFolder(place.resolve(folder + " scratch"));
    }

    /** The drill that was begun last; it was begun before its first question was shown. */
    String drill() {
        return Rows.column(copy("drill"), "SELECT id FROM drill ORDER BY nr DESC LIMIT 1")
                .get(0);
    }

    /** Takes away all copies. */
    void remove() {
        try (Stream<Path> all = Files.walk(place)) {
            List<Path> deepestFirst = all.sorted(Comparator.reverseOrder()).toList();
            for (Path path : deepestFirst) {
                Files.delete(path);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static void copyAll(Path from, Path to) {
        try (Stream<Path> all = Files.walk(from)) {
            for (Path path : all.toList()) {
                Files.copy(path, to.resolve(from.relativize(path)));
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
