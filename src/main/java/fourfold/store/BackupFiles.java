// SPDX-License-Identifier: Apache-2.0
package fourfold.store;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * The files that hold backups of a family's file: those in the folder {@code fourfold-backups} beside {@code fourfold.db},
 * and the copies beside it that were made before a migration. Here they are only found and read.
 */
public final class BackupFiles {
    /** How the name of a backup ends. */
    public static final String ENDING = ".db";

    private final Path file;
    private final Path folder;

    private BackupFiles(Path file) {
        this.file = file.toAbsolutePath().normalize();
        this.folder = this.file.resolveSibling(stem(this.file) + "-backups");
    }

    /** The backups of this file, whether there are any or not. */
    public static BackupFiles of(Path file) {
        return new BackupFiles(file);
    }

    /** The folder; it need not be there. */
    public Path folder() {
        return folder;
    }

    /**
     * All of them, the newest first by when they were made.
     *
     * @throws IOException if a folder can't be read
     */
    public List<Path> all() throws IOException {
        List<Path> found = new ArrayList<>(list(folder, ""));
        found.addAll(list(file.resolveSibling(""), stem(file) + "-before-"));
        List<Map.Entry<FileTime, Path>> made = new ArrayList<>();
        for (Path backup : found) {
            made.add(Map.entry(Files.getLastModifiedTime(backup), backup));
        }
        made.sort(Map.Entry.<FileTime, Path>comparingByKey()
                .thenComparing(e -> e.getValue().toString())
                .reversed());
        return made.stream().map(Map.Entry::getValue).toList();
    }

    private static List<Path> list(Path folder, String beginning) throws IOException {
        if (!Files.isDirectory(folder)) {
            return List.of();
        }
        try (Stream<Path> files = Files.list(folder)) {
            return files.filter(f -> f.toString().endsWith(ENDING)
                            && String.valueOf(f.getFileName()).startsWith(beginning))
                    .toList();
        }
    }

    /**
     * The newest that is whole today; damaged ones are passed over.
     *
     * @throws IOException if a folder can't be read
     */
    public Optional<Path> lastGood() throws IOException {
        return all().stream().filter(BackupFiles::isWhole).findFirst();
    }

    private static boolean isWhole(Path path) {
        try {
            DatabaseCopy.check(path);
            return FileHead.of(path) == FileHead.OURS;
        } catch (SQLException | IOException e) {
            return false;
        }
    }

    /** A file's name without its ending. */
    public static String stem(Path path) {
        String name = String.valueOf(path.getFileName());
        int dot = name.lastIndexOf('.');
        return dot > 0 ? name.substring(0, dot) : name;
    }
}
