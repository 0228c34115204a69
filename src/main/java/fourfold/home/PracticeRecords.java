package fourfold.home;

import fourfold.insight.LifetimeProgress;
import fourfold.insight.Timings;
import fourfold.log.ActionRecord;
import fourfold.log.Answer;
import fourfold.log.Child;
import fourfold.log.DrillSession;
import fourfold.log.RecordsFailure;
import fourfold.progress.Progress;
import fourfold.progress.Steering;
import fourfold.store.Store;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.Consumer;

/** What is recorded of a child's practice, and what it adds up to. Every method may fail with {@link RecordsFailure}. */
public final class PracticeRecords {
    private final Store store;

    PracticeRecords(Store store) {
        this.store = store;
    }

    /** Where a child stands. */
    public Progress progress(Child child) {
        return folded(child, new Progress.Fold(steering(child)));
    }

    /** How far the child has come, several times as fast as {@link #progress}; it can't choose or foresee. */
    public Progress levels(Child child) {
        return folded(child, Progress.Fold.ofLevels(steering(child)));
    }

    private Steering steering(Child child) {
        return Steering.of(actions(child));
    }

    private Progress folded(Child child, Progress.Fold fold) {
        read(child, fold);
        return fold.progress();
    }

    /** Hands over each of the child's answers, oldest first. */
    public void read(Child child, Consumer<Answer> each) {
        store.readAnswers(child.id(), each);
    }

    /** How far the child's own stairs are filled. */
    public LifetimeProgress lifetime(Child child) {
        LifetimeProgress lifetime = new LifetimeProgress();
        read(child, lifetime);
        return lifetime;
    }

    /** The child's one-minute timings. */
    public Timings timings(Child child) {
        Timings timings = new Timings();
        read(child, timings);
        return timings;
    }

    /** All actions of a parent for a child, oldest first. */
    public List<ActionRecord> actions(Child child) {
        return store.acts(child.id());
    }

    /** The drills of a child, oldest first. */
    public List<DrillSession> sessions(Child child) {
        return store.sessions(child.id());
    }

    /** Past drills, newest first. */
    public List<PastDrill> drills(Child child) {
        Map<UUID, int[]> counts = new HashMap<>();
        read(child, answer -> {
            if (answer.purpose().isFromMemory()) {
                int[] count = counts.computeIfAbsent(answer.drill(), d -> new int[2]);
                count[0]++;
                count[1] += answer.isCorrect() ? 1 : 0;
            }
        });
        List<PastDrill> drills = new ArrayList<>();
        for (DrillSession session : sessions(child)) {
            int[] count = counts.getOrDefault(session.id(), new int[2]);
            drills.add(0, new PastDrill(session, count[0], count[1]));
        }
        return drills;
    }
}
