package fourfold.upkeep;

import fourfold.log.ActionRecord;
import fourfold.log.Answer;
import fourfold.log.Child;
import fourfold.log.DrillSession;
import fourfold.log.Problem;
import fourfold.log.Reason;
import fourfold.log.RecordsFailure;
import fourfold.log.RecordsFailure.Task;
import fourfold.store.EarlierSlips;
import fourfold.store.Failure;
import fourfold.store.FittingRows;
import fourfold.store.Journal;
import fourfold.store.Store;
import fourfold.upkeep.RowCounts.Kind;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.List;
import java.util.Optional;
import java.util.function.LongFunction;

/**
 * What could be saved from a damaged file into a new one. The damaged file is only read. A value that was changed into
 * another possible value can't be distinguished from a true one.
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
        if (Files.exists(fresh)) {
            throw new RecordsFailure(Task.SALVAGE_TO, Failure.shown(fresh), Problem.of(Reason.FILE_EXISTS));
        }
        try {
            SalvagedRows rows = SalvagedRows.of(damaged);
            if (backup.isPresent()) {
                rows.fillFrom(SalvagedRows.of(backup.get()));
            }
            rows.nameTheNameless(nameless);
            EarlierSlips.copy(damaged, fresh);
            Salvage saved = write(rows, fresh);
            // The new file is often carried elsewhere: it is to be whole by itself.
            Store.open(fresh).close();
            Journal.intoOneFile(fresh);
            return saved;
        } catch (SQLException e) {
            throw new RecordsFailure(Task.SALVAGE_TO, Failure.shown(fresh), Failure.problem(e), e);
        } catch (IOException e) {
            throw new RecordsFailure(Task.SALVAGE, Failure.shown(damaged), Failure.problem(e), e);
        }
    }

    private static Salvage write(SalvagedRows rows, Path fresh) {
        try (Store store = Store.open(fresh)) {
            List<Child> children = rows.children();
            List<DrillSession> sessions = rows.sessions();
            List<Answer> answers = rows.answers();
            List<ActionRecord> actions = rows.actions();
            List<Object> refused = FittingRows.keep(store.database(), children, sessions, answers, actions);
            RowCounts saved = RowCounts.NONE
                    .plus(Kind.CHILD, kept(children, refused, Child.class))
                    .plus(Kind.DRILL, kept(sessions, refused, DrillSession.class))
                    .plus(Kind.ANSWER, kept(answers, refused, Answer.class))
                    .plus(Kind.ACTION, kept(actions, refused, ActionRecord.class));
            return new Salvage(saved, refused.size() + rows.impossible());
        }
    }

    private static <T> int kept(List<T> all, List<Object> refused, Class<T> kind) {
        return all.size() - (int) refused.stream().filter(kind::isInstance).count();
    }
}
