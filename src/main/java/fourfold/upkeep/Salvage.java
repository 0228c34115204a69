// SPDX-License-Identifier: Apache-2.0
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
import java.util.ArrayList;
import java.util.List;
import java.util.function.LongFunction;

/**
 * What could be saved from a damaged file into a new one. The damaged file is only read, and comes in by the same door as
 * every file from elsewhere ({@link ForeignFile}); no library opens it. An answer with a value that
 * was changed into another possible one is lost and counted so; in what else there is such a value can't be told from a
 * true one.
 *
 * @param saved what was written to the new file
 * @param lost how many rows were there and could not be made out, or belong to a drill or child that is gone
 * @param passedOver why backups were of no help that are newer than the one that helped
 */
public record Salvage(RowCounts saved, int lost, List<RecordsFailure> passedOver) {
    public Salvage {
        passedOver = List.copyOf(passedOver);
    }

    /** With no backup passed over. */
    public Salvage(RowCounts saved, int lost) {
        this(saved, lost, List.of());
    }

    /**
     * Writes what can be read to a new file.
     *
     * @param damaged the damaged file
     * @param backups the newest first; the first good one shows to whom drills and answers belong where that is destroyed
     * @param fresh the new file; it must not be there yet
     * @param nameless how a child is called whose name is destroyed, by the number of its row
     * @throws RecordsFailure if the damaged file can't be read at all, or the new one not be written
     */
    public static Salvage of(Path damaged, List<Path> backups, Path fresh, LongFunction<String> nameless) {
        return of(damaged, backups, fresh, nameless, Advance.UNSEEN);
    }

    /** The same, and tells how far it has come. */
    public static Salvage of(
            Path damaged, List<Path> backups, Path fresh, LongFunction<String> nameless, Advance advance) {
        if (Files.exists(fresh)) {
            throw new RecordsFailure(Task.SALVAGE_TO, Failure.shown(fresh), Problem.of(Reason.FILE_EXISTS));
        }
        try (ForeignFile taken = ForeignFile.bytes(damaged);
                PrivateFolder apart = PrivateFolder.make()) {
            LeafPages pages = LeafPages.of(taken.copy());
            SalvagedRows rows = SalvagedRows.of(pages, advance.part(0, 10));
            List<RecordsFailure> passedOver = fill(rows, backups);
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
            advance.to(100);
            return new Salvage(saved.saved(), saved.lost(), passedOver);
        } catch (Refusal e) {
            throw new RecordsFailure(Task.SALVAGE, Failure.shown(damaged), e.problem(), e);
        } catch (SQLException e) {
            throw new RecordsFailure(Task.SALVAGE_TO, Failure.shown(fresh), Failure.problem(e), e);
        } catch (IOException e) {
            throw new RecordsFailure(Task.SALVAGE, Failure.shown(damaged), Failure.problem(e), e);
        }
    }

    private static List<RecordsFailure> fill(SalvagedRows rows, List<Path> backups) throws IOException, SQLException {
        List<RecordsFailure> passedOver = new ArrayList<>();
        for (Path backup : backups) {
            try (ForeignFile good = ForeignFile.of(backup, Task.SALVAGE, Reason.NO_BACKUP)) {
                rows.fillFrom(SalvagedRows.of(LeafPages.of(good.file()), Advance.UNSEEN));
                break;
            } catch (RecordsFailure e) {
                passedOver.add(e);
            }
        }
        return passedOver;
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
