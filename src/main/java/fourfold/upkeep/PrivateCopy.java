package fourfold.upkeep;

import fourfold.store.Connections;
import fourfold.store.EarlierSlips;
import fourfold.store.Journal;
import fourfold.store.Rights;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.stream.Stream;

/**
 * A copy of a file with all that its log holds, in a folder for temporary files that only this person can read; it can be
 * brought up to date or checked without touching the file. It is one file, page by page as it was, damage and all.
 */
final class PrivateCopy implements AutoCloseable {
    private final Path folder;

    private PrivateCopy(Path folder) {
        this.folder = folder;
    }

    /** Makes the copy, with slips that an earlier program left beside the file; other programs may use it meanwhile. */
    static PrivateCopy of(Path file) throws IOException, SQLException {
        PrivateCopy copy = new PrivateCopy(Files.createTempDirectory("fourfold-copy"));
        try {
            Rights.makeFile(copy.file());
            if (Files.isWritable(Journal.beside(file, "").resolveSibling(""))) {
                try (Connection connection = Connections.reading(file)) {
                    Connections.run(connection, "backup to '" + copy.file() + "'");
                }
            } else {
                // To read a file that has its log takes a folder that can be written.
                Files.write(copy.file(), Files.readAllBytes(file));
                if (Journal.isHot(Journal.log(file))) {
                    Files.copy(Journal.log(file), Journal.log(copy.file()));
                }
            }
            Journal.intoOneFile(copy.file());
            EarlierSlips.copy(file, copy.file());
            return copy;
        } catch (IOException | SQLException | RuntimeException e) {
            copy.close();
            throw e;
        }
    }

    Path file() {
        return folder.resolve("copy.db");
    }

    /** The copy goes, and whatever was made beside it. */
    @Override
    public void close() {
        try (Stream<Path> files = Files.list(folder)) {
            for (Path file : files.toList()) {
                Files.deleteIfExists(file);
            }
            Files.deleteIfExists(folder);
        } catch (IOException e) {
            // The system clears its temporary folder itself.
        }
    }
}
