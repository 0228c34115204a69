// SPDX-License-Identifier: Apache-2.0
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

/**
 * A copy of a family's own file with all that its log holds, in a {@link PrivateFolder}; it can be brought up to date,
 * merged into or checked without touching the file. It is one file, page by page as it was, damage and all. For a file
 * from elsewhere there is {@link ForeignFile}.
 */
final class PrivateCopy implements AutoCloseable {
    private final PrivateFolder folder;

    private PrivateCopy(PrivateFolder folder) {
        this.folder = folder;
    }

    /** Makes the copy, with slips that an earlier program left beside the file; other programs may use it meanwhile. */
    static PrivateCopy of(Path file) throws IOException, SQLException {
        return of(file, Advance.UNSEEN);
    }

    /** The same, and says when it is done. */
    static PrivateCopy of(Path file, Advance advance) throws IOException, SQLException {
        PrivateCopy copy = new PrivateCopy(PrivateFolder.make());
        try {
            Rights.makeFile(copy.file());
            if (!Journal.unfinishedWrite(file)
                    && Files.isWritable(Journal.beside(file, "").resolveSibling(""))) {
                try (Connection connection = Connections.reading(file)) {
                    Connections.run(connection, "backup to '" + copy.file() + "'");
                }
            } else {
                // To read a file that has its log, or a write to be finished, takes a folder that can be written.
                ForeignFile.copyBytes(file, copy.file());
            }
            Journal.intoOneFile(copy.file());
            EarlierSlips.copy(file, copy.file());
            advance.to(100);
            return copy;
        } catch (IOException | SQLException | RuntimeException e) {
            copy.close();
            throw e;
        }
    }

    Path file() {
        return folder.file("copy.db");
    }

    /** The copy goes, and whatever was made beside it. */
    @Override
    public void close() {
        folder.close();
    }
}
