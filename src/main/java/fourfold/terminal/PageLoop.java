package fourfold.terminal;

import com.googlecode.lanterna.input.KeyStroke;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Optional;

/**
 * The one place where a key goes in and a picture comes out. One thread does everything but work on the file of which
 * a page says so, whose end wakes it; keys were stamped by the reader when they arrived.
 */
public final class PageLoop {
    private static final Duration TICK = Duration.ofMillis(50);

    /** Turns follow each other within {@link #TICK}, but a grown-up's page may wait some seconds for a file: more is no turn. */
    private static final Duration STANDSTILL = Duration.ofSeconds(15);

    private final TerminalSession session;
    private final SessionClock clock;
    private final String tooSmall;
    private final Deque<Page> pages = new ArrayDeque<>();
    private Picture shown;
    private Theme theme = Theme.TERMINAL;
    private boolean fresh = true;

    /**
     * A loop that begins with one page.
     *
     * @param tooSmall what a window says that is too small for any page
     */
    public PageLoop(TerminalSession session, SessionClock clock, Page first, String tooSmall) {
        this.session = session;
        this.clock = clock;
        this.tooSmall = tooSmall;
        this.shown = new Picture(1, 1, session.unicode());
        pages.push(first);
    }

    /** Runs until the last page is closed, the program is left, or the terminal is gone. */
    public void run() {
        while (turn(TICK)) {
            // Each turn does its own work.
        }
    }

    /** One turn: waits for a key, at most for {@code wait}. False when the program is over. */
    public boolean turn(Duration wait) {
        if (fresh) {
            fresh = false;
            paint(true);
        }
        Optional<KeyPress> press = session.next(wait);
        boolean changed = asleep();
        while (press.isPresent()) {
            changed = true;
            if (!key(press.get())) {
                return false;
            }
            press = session.next(Duration.ZERO);
        }
        if (session.ended()) {
            leave();
            return false;
        }
        boolean all = session.resized();
        changed |= pages.element().tick(clock.now());
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
        Optional<Instant> since = clock.sleptSince(STANDSTILL);
        since.ifPresent(at -> {
            pages.element().interrupted(at);
            clock.catchUp();
        });
        return since.isPresent();
    }

    /** Does what a key does, as if it were pressed now; false when the program is over. */
    public boolean play(KeyStroke key) {
        boolean going = key(new KeyPress(key, session.now()));
        if (going) {
            paint(false);
        }
        return going;
    }

    private boolean key(KeyPress press) {
        Key key = Key.of(press.key());
        Instant at = clock.at(press.nanos());
        switch (key.kind()) {
            case INTERRUPT -> {
                leave();
                return false;
            }
            case SUSPEND -> {
                pages.element().interrupted(at);
                session.suspend();
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
        Instant now = clock.now();
        pages.forEach(page -> page.leave(now));
    }

    private void paint(boolean all) {
        Picture next = new Picture(session.size().getColumns(), session.size().getRows(), session.unicode());
        if (next.width() < 40 || next.height() < 12) {
            next.text(0, 0, tooSmall);
            pages.element().interrupted(clock.now());
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
        next.show(session.screen(), all || other ? new Picture(1, 1, session.unicode()) : shown, theme);
        shown = next;
        session.paint(all);
        long left = clock.reading();
        if (pages.element().painted(clock.at(left))) {
            session.dropKeysBefore(left);
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
