// SPDX-License-Identifier: Apache-2.0
package fourfold.home;

import fourfold.store.Store;
import fourfold.upkeep.Advance;
import fourfold.upkeep.Backups;
import fourfold.upkeep.Merge;
import java.nio.file.Path;
import java.util.Optional;

/** Takes in what another computer's file holds. */
public final class MergeFile {
    private final Store store;
    private final Optional<Path> file;

    MergeFile(Store store, Optional<Path> file) {
        this.store = store;
        this.file = file;
    }

    /** What would be taken in from the other file, and what is still to be settled; nothing is changed. */
    public Merge preview(Path from, Merge.Said said, Advance advance) {
        return Merge.preview(store, from, said, advance);
    }

    /**
     * Takes it in, after a backup.
     *
     * @return the folder of the backup; empty where backups are not kept
     */
    public Optional<Path> merge(Path from, Merge.Said said) {
        Optional<Backups> backups = file.map(Backups::of);
        backups.ifPresent(b -> b.named("before-merge"));
        Merge.of(store, from, said);
        return backups.map(Backups::folder);
    }
}
