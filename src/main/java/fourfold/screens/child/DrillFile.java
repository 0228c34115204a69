package fourfold.screens.child;

import fourfold.drill.Effect;
import fourfold.home.FileWork;
import fourfold.home.Keeping;
import fourfold.log.Child;
import fourfold.log.DrillSession;
import fourfold.progress.Progress;
import fourfold.screens.PageContext;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.Future;
import java.util.function.Supplier;

/**
 * What a drill on the screen has to do with the file, done by {@link FileWork}. The page asks for it, goes on answering
 * keys, and looks with {@link #came} whether it is done.
 */
final class DrillFile {
    /**
     * What came of it.
     *
     * @param state what is kept and what is not
     * @param ending the picture of the drill's end, if it was asked for
     * @param advice what a grown-up should know of the drill's end
     */
    record Came(Keeping.State state, Optional<SummaryPicture> ending, Optional<String> advice) {}

    private final PageContext context;
    private final FileWork work;
    /** Used by the file's thread alone. */
    private final Keeping keeping;

    private Keeping.State state;
    private Optional<Future<Came>> open = Optional.empty();
    private int onTheWay;
    private boolean ended;

    DrillFile(PageContext context) {
        this.context = context;
        this.work = context.home().practice().fileWork();
        this.keeping = new Keeping(context.home().practice());
        this.state = keeping.state();
    }

    /** Keeps this. */
    void keep(List<Effect> effects, Instant at) {
        onTheWay += Keeping.answers(effects);
        begin(() -> {
            keeping.keep(effects, at);
            return done();
        });
    }

    /** Keeps the last there is to keep, and reads what the picture of the end shows. */
    void keepLast(List<Effect> effects, Instant at, Child child, Progress progress) {
        onTheWay += Keeping.answers(effects);
        begin(() -> {
            if (!keeping.keep(effects, at) && keeping.isGoingOn()) {
                keeping.tryNow(at);
            }
            Optional<SummaryPicture> ending = Optional.of(SummaryPicture.of(context, child, progress));
            return new Came(keeping.state(), ending, Optional.empty());
        });
    }

    /** Tries again to keep what is not kept. */
    void tryAgain(Instant at) {
        begin(() -> {
            keeping.tryNow(at);
            return done();
        });
    }

    /** Tries again if the child goes on without, and the file had its rest. */
    void tryFromTimeToTime(Instant at) {
        if (open.isEmpty() && state.goingOn() && state.isRested(at)) {
            keep(List.of(), at);
        }
    }

    /** The child goes on though something is not kept. */
    void goOn() {
        state = state.andGoesOn();
        begin(() -> {
            keeping.goOn();
            return done();
        });
    }

    /** The drill is over and all of it is kept: the time for the day's backup. */
    void end(DrillSession session, Instant at) {
        if (!ended) {
            ended = true;
            begin(() -> new Came(
                    keeping.state(),
                    Optional.empty(),
                    context.home().practice().ended(session, at).map(context.words()::failure)));
        }
    }

    /** A last try; what the disk does not take even now is lost, and is said to be. */
    void giveUp(Instant at) {
        begin(() -> {
            if (keeping.isBehind() && !keeping.tryNow(at)) {
                context.home().practice().lost(context.words().lost(keeping.answers(), keeping.failure()));
            }
            return done();
        });
    }

    /** The program is ending: keeps all, and the drill is over; or says what is lost. */
    void leave(DrillSession session, Instant at) {
        giveUp(at);
        boolean before = ended;
        ended = true;
        begin(() -> {
            if (!before && !keeping.isBehind()) {
                context.home().practice().ended(session, at);
            }
            return done();
        });
    }

    private Came done() {
        return new Came(keeping.state(), Optional.empty(), Optional.empty());
    }

    /** What was begun last is the only thing to look for: it is done after all others, and knows how they went. */
    private void begin(Supplier<Came> task) {
        open = Optional.of(work.begin(task));
    }

    /** What came, once everything that was begun is done; empty while it is not, and when it has been taken. */
    Optional<Came> came() {
        if (open.isEmpty() || !open.get().isDone()) {
            return Optional.empty();
        }
        Came came = result(open.get());
        open = Optional.empty();
        onTheWay = 0;
        state = came.state();
        return Optional.of(came);
    }

    private static Came result(Future<Came> done) {
        try {
            return done.get();
        } catch (ExecutionException e) {
            throw e.getCause() instanceof RuntimeException unforeseen ? unforeseen : new IllegalStateException(e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(e);
        }
    }

    /** Whether something was begun whose end was not yet looked at. */
    boolean isBusy() {
        return open.isPresent();
    }

    /** Gives what was begun a moment to be done, before the program stands still. */
    void finish(Duration longest) {
        work.finish(longest);
    }

    /** Whether the child goes on though something is not kept. */
    boolean isGoingOn() {
        return state.goingOn();
    }

    /** Whether anything is known to be only in memory. */
    boolean isBehind() {
        return state.behind();
    }

    /** How many answers are only in memory while the child goes on all the same. */
    int answersBehind() {
        return state.answers() + (state.goingOn() ? onTheWay : 0);
    }

    /** Why the disk did not take it, in one line. */
    String reason() {
        return state.failure().map(context.words()::failure).orElse("");
    }
}
