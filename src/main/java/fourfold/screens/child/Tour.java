// SPDX-License-Identifier: Apache-2.0
package fourfold.screens.child;

import com.googlecode.lanterna.input.KeyStroke;
import com.googlecode.lanterna.input.KeyType;
import fourfold.drill.Phase;
import fourfold.drill.Phase.Asking;
import fourfold.terminal.PageLoop;
import fourfold.terminal.TerminalSession;
import java.time.Duration;
import java.util.ArrayDeque;
import java.util.Deque;

/**
 * Shows the program by itself: keys played at reading speed on an invented family's answers. A new child is added and
 * practises, with an introduction and an error; then a parent looks at the stairs and the plan. Any key ends it.
 */
public final class Tour {
    /** A key, and how long after the one before it is played. */
    private record Played(KeyStroke key, long millis) {}

    private static final Duration TICK = Duration.ofMillis(50);
    private static final long LOOK = 1000;
    private static final long THINK = 700;
    private static final long TYPE = 250;
    private static final long READ = 3000;
    /** So many questions from memory are enough of a drill. */
    private static final int QUESTIONS = 8;

    private static final Duration LONGEST_DRILL = Duration.ofSeconds(55);

    private final TerminalSession stage;
    private final PageLoop loop;
    private final Deque<Played> before = new ArrayDeque<>();
    private final Deque<Played> after = new ArrayDeque<>();
    private long last;
    private long drillBegan = Long.MIN_VALUE;
    private boolean erred;
    private boolean over;

    /**
     * A tour.
     *
     * @param children how many children the family has
     * @param name the name of the child that is added
     */
    public Tour(TerminalSession stage, PageLoop loop, int children, String name) {
        this.stage = stage;
        this.loop = loop;
        this.last = stage.now();
        before.add(digit(children + 1, READ));
        name.chars().forEach(c -> before.add(new Played(new KeyStroke((char) c, false, false), TYPE)));
        before.add(enter(LOOK));
        before.add(digit(children + 1, LOOK));
        before.add(enter(LOOK));
        after.add(new Played(new KeyStroke(KeyType.Escape), LOOK));
        after.add(new Played(new KeyStroke(KeyType.Escape), LOOK));
        after.add(enter(2 * READ));
        after.add(digit(children + 3, LOOK));
        after.add(digit(1, LOOK));
        after.add(new Played(new KeyStroke(KeyType.ArrowUp), READ));
        after.add(new Played(new KeyStroke('p', false, false), LOOK));
        after.add(new Played(new KeyStroke(KeyType.Escape), 3 * READ));
    }

    private static Played enter(long millis) {
        return new Played(new KeyStroke(KeyType.Enter), millis);
    }

    private static Played digit(int digit, long millis) {
        return new Played(new KeyStroke((char) ('0' + digit), false, false), millis);
    }

    /** Plays until it is over or a key is pressed. */
    public void run() {
        while (turn(TICK)) {
            // Each turn does its own work.
        }
    }

    /** One turn; false when it is over, a key was pressed, or the terminal is gone. */
    public boolean turn(Duration wait) {
        if (stage.next(wait).isPresent() || stage.ended() || !loop.turn(Duration.ZERO)) {
            return false;
        }
        Played next = next();
        if (over) {
            return false;
        }
        if (stage.now() - last >= Duration.ofMillis(next.millis()).toNanos()) {
            last = stage.now();
            return loop.play(next.key());
        }
        return true;
    }

    /** The key that comes next; it is taken from the script only when it is played. */
    private Played next() {
        boolean drilling =
                loop.page() instanceof DrillPage page && !page.drill().isFinished();
        if (!drilling || drillIsEnough()) {
            Deque<Played> script = before.isEmpty() ? after : before;
            if (script.isEmpty()) {
                over = stage.now() - last >= Duration.ofMillis(READ).toNanos();
                return new Played(new KeyStroke(KeyType.Escape), Long.MAX_VALUE / 2_000_000);
            }
            Played next = script.element();
            if (stage.now() - last >= Duration.ofMillis(next.millis()).toNanos()) {
                script.remove();
            }
            return next;
        }
        return inTheDrill(((DrillPage) loop.page()).drill().phase());
    }

    private boolean drillIsEnough() {
        if (!(loop.page() instanceof DrillPage page)) {
            return false;
        }
        if (drillBegan == Long.MIN_VALUE) {
            drillBegan = stage.now();
        }
        boolean tooLong = stage.now() - drillBegan >= LONGEST_DRILL.toNanos();
        long asked = page.drill().progress().drill().orElseThrow().answers().stream()
                .filter(a -> a.purpose().isFromMemory())
                .count();
        boolean between = !(page.drill().phase() instanceof Asking asking)
                || asking.typed().isEmpty();
        return between && (tooLong || (erred && asked >= QUESTIONS));
    }

    /** Types what is right, but for one error; where nothing is asked, Enter after a look. */
    private Played inTheDrill(Phase phase) {
        if (!(phase instanceof Asking asking)) {
            return enter(phase instanceof Phase.Right ? Long.MAX_VALUE / 2_000_000 : LOOK);
        }
        boolean err = asking.purpose().isFromMemory() && !erred;
        String wanted = Integer.toString(asking.prompt().expected() + (err ? 1 : 0));
        String typed = asking.typed();
        if (typed.length() < wanted.length() && wanted.startsWith(typed)) {
            return new Played(
                    new KeyStroke(wanted.charAt(typed.length()), false, false), typed.isEmpty() ? THINK : TYPE);
        }
        if (err && stage.now() - last >= Duration.ofMillis(LOOK).toNanos()) {
            erred = true;
        }
        return enter(err ? LOOK : TYPE);
    }
}
