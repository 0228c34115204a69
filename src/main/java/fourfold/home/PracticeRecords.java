// SPDX-License-Identifier: Apache-2.0
package fourfold.home;

import fourfold.insight.DrillScores;
import fourfold.insight.LifetimeProgress;
import fourfold.insight.Timings;
import fourfold.insight.Today;
import fourfold.insight.YearView;
import fourfold.log.ActionRecord;
import fourfold.log.Answer;
import fourfold.log.Child;
import fourfold.log.DrillSession;
import fourfold.log.RecordsFailure;
import fourfold.progress.Calendar;
import fourfold.progress.Progress;
import fourfold.progress.Steering;
import fourfold.records.AnswersCsv;
import fourfold.store.Store;
import fourfold.terminal.SessionClock;
import java.io.IOException;
import java.io.Writer;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;

/** What is recorded of a child's practice, and what it adds up to. Every method may fail with {@link RecordsFailure}. */
public final class PracticeRecords {
    private final Store store;
    private final SessionClock moments;

    PracticeRecords(Store store, SessionClock moments) {
        this.store = store;
        this.moments = moments;
    }

    /** Today, where the home is. */
    public LocalDate today() {
        return LocalDate.ofInstant(moments.now(), moments.zone());
    }

    /** Dated today: the calendar says what is open. */
    private Progress dated(Progress.Fold fold) {
        return fold.progress().on(today().toEpochDay());
    }

    /** The child's progress: the fold over all answers. */
    public Progress progress(Child child) {
        return folded(child, new Progress.Fold(steering(child)));
    }

    /** The child's levels alone, several times as fast as {@link #progress}; no questions can be chosen from it. */
    public Progress levels(Child child) {
        return folded(child, Progress.Fold.ofLevels(steering(child)));
    }

    /** The child's progress and stones, read together. */
    public Standing standing(Child child) {
        return standing(child, new Progress.Fold(steering(child)));
    }

    /** As {@link #standing}, of the levels alone. */
    public Standing standingOfLevels(Child child) {
        return standing(child, Progress.Fold.ofLevels(steering(child)));
    }

    /** The school year in which a day lies. */
    public YearView year(Child child, LocalDate day) {
        return YearView.of(levels(child), sessions(child), day);
    }

    /** What a day holds for the child, and what was done of it. */
    public Today today(Child child, LocalDate day) {
        // Two days more than the week: a drill's day is the day where it was.
        Instant from =
                Calendar.monday(day).minusDays(2).atStartOfDay(ZoneOffset.UTC).toInstant();
        return Today.of(steering(child), store.sessionsSince(child.id(), from), day);
    }

    /** The child's levels as they were at an instant, under what the parent has chosen today. */
    public Progress levelsAt(Child child, Instant then) {
        Progress.Fold fold = Progress.Fold.ofLevels(steering(child));
        read(child, answer -> {
            if (answer.askedAt().isBefore(then)) {
                fold.accept(answer);
            }
        });
        return fold.progress();
    }

    private Standing standing(Child child, Progress.Fold fold) {
        LifetimeProgress stones = new LifetimeProgress(actions(child));
        read(child, fold.andThen(stones));
        return new Standing(dated(fold), stones);
    }

    private Steering steering(Child child) {
        return Steering.of(actions(child));
    }

    private Progress folded(Child child, Progress.Fold fold) {
        read(child, fold);
        return dated(fold);
    }

    /** Hands over each of the child's answers, oldest first. */
    public void read(Child child, Consumer<Answer> each) {
        store.readAnswers(child.id(), each);
    }

    /** Writes the children's answers as CSV. */
    public void write(List<Child> whose, Writer writer) throws IOException {
        AnswersCsv.Sheet sheet = new AnswersCsv.Sheet(writer);
        for (Child one : whose) {
            read(one, answer -> sheet.write(answer, one.name()));
        }
        sheet.flush();
    }

    /** The stones of the child's stairs. */
    public LifetimeProgress lifetime(Child child) {
        LifetimeProgress lifetime = new LifetimeProgress(actions(child));
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
        return store.actions(child.id());
    }

    /** The drills of a child, oldest first. */
    public List<DrillSession> sessions(Child child) {
        return store.sessions(child.id());
    }

    /** Past drills, newest first. */
    public List<PastDrill> drills(Child child) {
        DrillScores scores = new DrillScores();
        read(child, scores);
        List<PastDrill> drills = new ArrayList<>();
        for (DrillSession session : sessions(child)) {
            DrillScores.Score score = scores.of(session.id());
            drills.add(0, new PastDrill(session, score.asked(), score.right(), score.given()));
        }
        return drills;
    }
}
