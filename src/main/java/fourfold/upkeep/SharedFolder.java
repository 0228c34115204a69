// SPDX-License-Identifier: Apache-2.0
package fourfold.upkeep;

import fourfold.log.Problem;
import fourfold.log.Reason;
import fourfold.log.RecordsFailure;
import fourfold.log.RecordsFailure.Task;
import fourfold.store.Connections;
import fourfold.store.DatabaseCopy;
import fourfold.store.Disk;
import fourfold.store.Failure;
import fourfold.store.Rights;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import java.util.zip.CRC32C;

/**
 * A folder in which two computers meet: on a stick, or in one that the family's own service synchronises. Each computer
 * lays a file of its own there, {@code fourfold-kitchen-1a2b3c4d.db}, with all its records but without the grown-ups' PIN
 * and what is set for the household; it is checked, written whole and renamed. Nobody writes another's, so no two versions of one
 * file can arise, and the living file is never in there. What the others laid is merged through the door for foreign files.
 */
public final class SharedFolder {
    private static final String BEGINNING = "fourfold-";
    private static final String ENDING = ".db";

    private final Path folder;

    private SharedFolder(Path folder) {
        this.folder = folder;
    }

    /**
     * The folder.
     *
     * @param family the family's file, which must not be in it
     * @throws RecordsFailure if there is no such folder, it can't be written, or the family's file is in it
     */
    public static SharedFolder of(Path folder, Path family) {
        Path whole = folder.toAbsolutePath().normalize();
        if (!Files.isDirectory(whole)) {
            throw new RecordsFailure(
                    Task.SHARE, Failure.shown(whole), Problem.of(Reason.NO_FOLDER, Failure.shown(whole)));
        }
        try {
            if (whole.toRealPath()
                    .equals(Optional.ofNullable(
                                    fourfold.store.Journal.real(family).getParent())
                            .orElse(whole))) {
                throw new RecordsFailure(Task.SHARE, Failure.shown(whole), Problem.of(Reason.LIVING_FILE_THERE));
            }
        } catch (IOException e) {
            throw failed(whole, Failure.problem(e), e);
        }
        return new SharedFolder(whole);
    }

    /**
     * A file that a computer laid there.
     *
     * @param computer its name and number, as in {@code kitchen-1a2b3c4d}
     * @param at when it was laid, by that computer's clock
     * @param file the file
     */
    public record Laid(String computer, Instant at, Path file) {}

    /** What lies there, the newest first. What isn't named as ours is passed over. */
    public List<Laid> all() {
        try (Stream<Path> files = Files.list(folder)) {
            List<Laid> all = new java.util.ArrayList<>();
            for (Path file : files.sorted().toList()) {
                String name = String.valueOf(file.getFileName());
                if (name.matches("fourfold-[A-Za-z0-9]{1,20}-[0-9a-f]{8}\\.db")) {
                    all.add(new Laid(
                            name.substring(BEGINNING.length(), name.length() - ENDING.length()),
                            Files.getLastModifiedTime(file).toInstant(),
                            file));
                }
            }
            all.sort(java.util.Comparator.comparing(Laid::at).reversed());
            return all;
        } catch (IOException e) {
            throw failed(folder, Failure.problem(e), e);
        }
    }

    /** The file of a computer, whether it is there or not. */
    public Path file(String computer) {
        return folder.resolve(BEGINNING + computer + ENDING);
    }

    /**
     * Lays the family's records there under this computer's name, in place of those it laid before.
     *
     * @return the stamp of the new file
     */
    public String lay(Path family, String computer) {
        Path unfinished = folder.resolve(BEGINNING + computer + ".unfinished");
        try (PrivateFolder apart = PrivateFolder.make()) {
            Path copy = apart.file("laid.db");
            Rights.makeFile(copy);
            try (Connection connection = Connections.reading(family)) {
                DatabaseCopy.fill(copy, connection);
            }
            try (Connection connection = Connections.fresh(copy)) {
                Connections.run(connection, "DELETE FROM gate");
                // Where a page was printed must not matter; all else that is remembered is this computer's.
                Connections.run(connection, "DELETE FROM home_setting WHERE name NOT GLOB '" + MergedRows.PAGES + "'");
                Connections.run(connection, "VACUUM");
            }
            DatabaseCopy.check(copy);
            Files.deleteIfExists(unfinished);
            Rights.makeFile(unfinished);
            Disk.REAL.fill(copy, unfinished);
            Disk.REAL.rename(unfinished, file(computer));
            return stamp(file(computer));
        } catch (IOException e) {
            throw failed(folder, Failure.problem(e), e);
        } catch (SQLException e) {
            throw failed(folder, Failure.problem(e), e);
        }
    }

    /** Takes this computer's file away again. */
    public void takeAway(String computer) {
        try {
            Files.deleteIfExists(file(computer));
        } catch (IOException e) {
            throw failed(folder, Failure.problem(e), e);
        }
    }

    /** What a file's content is known by: its length and a check sum (CRC-32C). */
    public static String stamp(Path file) {
        try {
            byte[] all = Files.readAllBytes(file);
            CRC32C sum = new CRC32C();
            sum.update(all);
            return all.length + "-" + Long.toHexString(sum.getValue());
        } catch (IOException e) {
            throw failed(file, Failure.problem(e), e);
        }
    }

    private static RecordsFailure failed(Path place, Problem problem, Exception cause) {
        return new RecordsFailure(Task.SHARE, Failure.shown(place), problem, cause);
    }
}
