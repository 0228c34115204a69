package fourfold.upkeep;

import fourfold.log.Problem;
import fourfold.log.Reason;
import fourfold.log.RecordsFailure;
import fourfold.log.RecordsFailure.Task;
import fourfold.store.Disk;
import fourfold.store.EarlierSlips;
import fourfold.store.Failure;
import fourfold.store.FittingRows;
import fourfold.store.Journal;
import fourfold.store.Refusal;
import fourfold.store.Rights;
import fourfold.store.Store;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.Optional;
import java.util.function.LongFunction;

/**
 * What could be saved from a damaged file into a new one. The damaged file is only read, and comes in by the same door as
 * every file from elsewhere ({@link ForeignFile}); no library opens it. An answer with a value that
 * was changed into another possible one is lost and counted so; in what else there is such a value can't be told from a
 * true one.
 *
 * @param saved what was written to the new file
 * @param lost how many rows were there and could not be made out, or belong to a drill or child that is gone
 */
public record Salvage(RowCounts saved, int lost) {
    /**
     * Writes what can be read to a new file.
     *
     * @param damaged the damaged file
     * @param backup a good backup, which shows to whom drills and answers belong where that is destroyed
     * @param fresh the new file; it must not be there yet
     * @param nameless how a child is called whose name is destroyed, by the number of its row
     * @throws RecordsFailure if the damaged file can't be read at all, or the new one not be written
     */
    public static Salvage of(Path damaged, Optional<Path> backup, Path fresh, LongFunction<String> nameless) {
        return of(damaged, backup, fresh, nameless, Advance.UNSEEN);
    }

    /** The same, and tells how far it has come. */
    public static Salvage of(
            Path damaged, Optional<Path> backup, Path fresh, LongFunction<String> nameless, Advance advance) {
        if (Files.exists(fresh)) {
            throw new RecordsFailure(Task.SALVAGE_TO, Failure.shown(fresh), Problem.of(Reason.FILE_EXISTS));
        }
        try (ForeignFile taken = ForeignFile.bytes(damaged);
                PrivateFolder apart = PrivateFolder.make()) {
            LeafPages pages = LeafPages.of(taken.copy());
            SalvagedRows rows = SalvagedRows.of(pages, advance.part(0, 10));
            if (backup.isPresent()) {
                fill(rows, backup.get());
            }
            rows.nameTheNameless(nameless);
            Path made = apart.file("saved.db");
            Store.open(made).close();
            Journal.intoOneFile(made);
            Salvage saved;
            try (FittingRows filling = FittingRows.in(made)) {
                saved = rows.writeTo(filling, pages, nameless, advance.part(10, 95));
                filling.end();
            }
            EarlierSlips.copy(taken.copy(), made);
            // The new file is often carried elsewhere: it is to be whole by itself.
            Store.open(made).close();
            Journal.intoOneFile(made);
            name(made, fresh);
            return saved;
        } catch (Refusal e) {
            throw new RecordsFailure(Task.SALVAGE, Failure.shown(damaged), e.problem(), e);
        } catch (SQLException e) {
            throw new RecordsFailure(Task.SALVAGE_TO, Failure.shown(fresh), Failure.problem(e), e);
        } catch (IOException e) {
            throw new RecordsFailure(Task.SALVAGE, Failure.shown(damaged), Failure.problem(e), e);
        }
    }

    private static void fill(SalvagedRows rows, Path backup) throws IOException, SQLException {
        try (ForeignFile good = ForeignFile.of(backup, Task.SALVAGE, Reason.NO_BACKUP)) {
            rows.fillFrom(SalvagedRows.of(LeafPages.of(good.file()), Advance.UNSEEN));
        }
    }

    /** Written beside and renamed: whoever is killed here leaves no half file under that name. */
    private static void name(Path made, Path fresh) throws IOException {
        Path unfinished = fresh.resolveSibling(fresh.getFileName() + ".unfinished");
        Files.deleteIfExists(unfinished);
        Rights.makeFile(unfinished);
        Disk.REAL.fill(made, unfinished);
        Disk.REAL.rename(unfinished, fresh);
    }
}
