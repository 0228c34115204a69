package fourfold.terminal;

import com.googlecode.lanterna.input.KeyStroke;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Optional;

/**
 * The one place where a key goes in and a picture comes out. One thread does everything but work on the file of which
 * a page says so, whose end wakes it; keys were stamped by the stage's reader when they arrived.
 */
public final class PageLoop {
    private static final Duration TICK = Duration.ofMillis(50);

    /** Turns follow each other within {@link #TICK}, but a grown-up's page may wait some seconds for a file: more is no turn. */
    private static final Duration STANDSTILL = Duration.ofSeconds(15);

    private final TerminalSession stage;
    private final SessionClock moments;
    private final Deque<Page> pages = new ArrayDeque<>();
    private Picture shown;
    private Theme theme = Theme.TERMINAL;
    private boolean fresh = true;

    /** A loop that begins with one page. */
    public PageLoop(TerminalSession stage, SessionClock moments, Page first) {
        this.stage = stage;
        this.moments = moments;
        this.shown = new Picture(1, 1, stage.unicode());
        pages.push(first);
    }

    /** Runs until the last page is closed, the program is left, or the terminal is gone. */
    public void run() {
        while (turn(TICK)) {
            // Each turn does its own work.
        }
    }

    /** One turn: waits for a key at most so long. False when the program is over. */
    public boolean turn(Duration wait) {
        if (fresh) {
            fresh = false;
            paint(true);
        }
        Optional<KeyPress> press = stage.next(wait);
        boolean changed = asleep();
        while (press.isPresent()) {
            changed = true;
            if (!key(press.get())) {
                return false;
            }
            press = stage.next(Duration.ZERO);
        }
        if (stage.ended()) {
            leave();
            return false;
        }
        boolean all = stage.resized();
        changed |= pages.element().tick(moments.now());
        Navigation next = pages.element().next();
        if (next != Navigation.STAY) {
            changed = true;
            if (!move(next)) {
                return false;
            }
        }
        if (changed || all) {
            paint(all);
        }
        return true;
    }

    /** Whether the computer slept: what was going on then is interrupted, as by a pause. */
    private boolean asleep() {
        Optional<Instant> since = moments.sleptSince(STANDSTILL);
        since.ifPresent(at -> {
            pages.element().interrupted(at);
            moments.catchUp();
        });
        return since.isPresent();
    }

    /** Does what a key does, as if it were pressed now; false when the program is over. */
    public boolean play(KeyStroke key) {
        boolean going = key(new KeyPress(key, stage.now()));
        if (going) {
            paint(false);
        }
        return going;
    }

    private boolean key(KeyPress press) {
        Key key = Key.of(press.key());
        Instant at = moments.at(press.nanos());
        switch (key.kind()) {
            case INTERRUPT -> {
                leave();
                return false;
            }
            case SUSPEND -> {
                pages.element().interrupted(at);
                stage.suspend();
                paint(true);
                return true;
            }
            case REDRAW -> {
                paint(true);
                return true;
            }
            default -> {
                return move(pages.element().on(key, at));
            }
        }
    }

    private boolean move(Navigation move) {
        if (move instanceof Navigation.Open open) {
            pages.push(open.page());
        } else if (move instanceof Navigation.Replace replace) {
            pages.pop();
            pages.push(replace.page());
        } else if (move instanceof Navigation.Back) {
            pages.pop();
            if (pages.isEmpty()) {
                return false;
            }
            pages.element().returned();
        } else if (move instanceof Navigation.Home) {
            while (pages.size() > 1) {
                pages.pop();
            }
            pages.element().returned();
        } else if (move instanceof Navigation.LeaveProgram) {
            leave();
            return false;
        }
        return true;
    }

    private void leave() {
        Instant now = moments.now();
        pages.forEach(page -> page.leave(now));
    }

    private void paint(boolean all) {
        Picture next = new Picture(stage.size().getColumns(), stage.size().getRows(), stage.unicode());
        if (next.width() < 40 || next.height() < 12) {
            next.text(0, 0, "This window is too small. Please make it larger.");
            pages.element().interrupted(moments.now());
        } else {
            pages.element().draw(next);
        }
        // The page in front comes first.
        Theme wanted = pages.stream()
                .map(Page::theme)
                .flatMap(Optional::stream)
                .findFirst()
                .orElse(Theme.TERMINAL);
        boolean other = wanted != theme;
        theme = wanted;
        next.show(stage.screen(), all || other ? new Picture(1, 1, stage.unicode()) : shown, theme);
        shown = next;
        stage.paint(all);
        long left = moments.reading();
        if (pages.element().painted(moments.at(left))) {
            stage.dropKeysBefore(left);
        }
    }

    /** The picture that is on the screen. */
    public Picture shown() {
        return shown;
    }

    /** The page in front. */
    public Page page() {
        return pages.element();
    }
}
