// SPDX-License-Identifier: Apache-2.0
package fourfold.home;

import fourfold.store.Store;
import fourfold.upkeep.Backups;
import java.io.Reader;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Optional;

/** Takes in answers from CSV, all of them or none. */
public final class ImportAnswers {
    private final Store store;
    private final Optional<Path> file;

    ImportAnswers(Store store, Optional<Path> file) {
        this.store = store;
        this.file = file;
    }

    /**
     * Reads a log that was exported and checks it against what is here; nothing is changed.
     *
     * @throws fourfold.log.InvalidValue with the line number and what is wrong in it
     */
    public ImportedAnswers read(Reader csv, Instant now) {
        return ImportedAnswers.read(store, csv, now);
    }

    /** Keeps all that is new, or nothing, after a backup. */
    public void keep(ImportedAnswers imported) {
        file.map(Backups::of).ifPresent(b -> b.named("before-import"));
        imported.keep();
    }
}
