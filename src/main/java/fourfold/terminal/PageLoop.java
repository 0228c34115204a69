// SPDX-License-Identifier: Apache-2.0
package fourfold.terminal;

import com.googlecode.lanterna.input.KeyStroke;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.Future;

/**
 * The one place where a key goes in and a picture comes out. One thread does everything but what a page asks of the world
 * outside, whose end wakes it; keys were stamped by the reader when they arrived. Keys that come while a page waits for
 * the world outside are seen to come, and have their turn afterwards.
 */
public final class PageLoop {
    private static final Duration TICK = Duration.ofMillis(50);

    /** Turns follow each other within {@link #TICK}, but the processor may be busy for some seconds: more is no turn. */
    private static final Duration STANDSTILL = Duration.ofSeconds(15);

    private final TerminalSession session;
    private final SessionClock clock;
    private final Performer performer;
    private final Deque<OpenPage> pages = new ArrayDeque<>();
    private final Deque<KeyPress> held = new ArrayDeque<>();
    private WaitSign sign;
    private Picture shown;
    private boolean fresh = true;
    private boolean over;
    private long paintedNanos;

    /** A page as it is now, and what it waits for. */
    private static final class OpenPage {
        private final Deque<Waiting> waiting = new ArrayDeque<>();
        private Page page;

        OpenPage(Page page) {
            this.page = page;
        }

        boolean holdsKeys() {
            return waiting.stream().anyMatch(w -> w.effect().holdsKeys());
        }

        /** How far the first thing that is waited for has come, if it says so. */
        OptionalInt percent() {
            Waiting first = waiting.peek();
            return first == null ? OptionalInt.empty() : first.effect().percent();
        }
    }

    private record Waiting(PageEffect.Outside effect, Future<PageEffect.Outcome> outcome) {}

    /** A loop that begins with one page. */
    public PageLoop(TerminalSession session, SessionClock clock, Performer performer, Page first) {
        this.session = session;
        this.clock = clock;
        this.performer = performer;
        this.sign = new WaitSign(performer.oneMoment());
        this.shown = new Picture(1, 1, session.unicode());
        pages.push(new OpenPage(first));
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
            tell(new PageEvent.Opened(clock.now()));
            paint(true);
        }
        Optional<KeyPress> press = session.next(wait);
        boolean changed = asleep();
        changed |= outcomes();
        while (press.isPresent() && !over) {
            changed = true;
            key(press.get());
            press = session.next(Duration.ZERO);
        }
        if (!over && session.ended()) {
            leave();
        }
        if (over) {
            return false;
        }
        boolean all = session.resized();
        changed |= outcomes();
        if (!over) {
            changed |= tick(clock.now());
        }
        if (!over && (changed || all)) {
            paint(all);
        }
        return !over;
    }

    /** Whether the computer slept: what was going on then is interrupted, as by a pause. */
    private boolean asleep() {
        Optional<Instant> since = clock.sleptSince(STANDSTILL);
        since.ifPresent(at -> {
            tell(new PageEvent.Interrupted(at));
            clock.catchUp();
        });
        return since.isPresent();
    }

    /** Does what a key does, as if it were pressed now; false when the program is over. */
    public boolean play(KeyStroke key) {
        key(new KeyPress(key, session.now()));
        if (!over) {
            paint(false);
        }
        return !over;
    }

    private void key(KeyPress press) {
        Key key = Key.of(press.key());
        Instant at = clock.at(press.nanos());
        switch (key.kind()) {
            case INTERRUPT -> leave();
            case SUSPEND -> {
                tell(new PageEvent.Interrupted(at));
                session.suspend();
                paint(true);
            }
            case REDRAW -> paint(true);
            default -> {
                if (isHeld()) {
                    held.add(press);
                    sign = sign.early(at);
                } else {
                    tell(new PageEvent.Pressed(
                            key, at, session.size().getColumns(), session.size().getRows()));
                }
            }
        }
    }

    /** Whether keys wait their turn. */
    private boolean isHeld() {
        return front().holdsKeys();
    }

    /** Whether the page in front waits for anything in the world outside that is no mere calculation. */
    boolean isWaiting() {
        return front().waiting.stream().anyMatch(w -> !(w.effect() instanceof PageEffect.Calculation));
    }

    private OpenPage front() {
        return pages.element();
    }

    /** Tells the page in front what came of its wishes, then gives it the keys that waited; true if there was any. */
    private boolean outcomes() {
        boolean any = false;
        while (!over) {
            Waiting first = front().waiting.peek();
            if (first != null && first.outcome().isDone()) {
                front().waiting.remove();
                tell(new PageEvent.Done(result(first.outcome()), clock.now()));
            } else if (!isHeld() && !held.isEmpty()) {
                key(held.remove());
            } else {
                break;
            }
            any = true;
        }
        return any;
    }

    private static PageEffect.Outcome result(Future<PageEffect.Outcome> done) {
        try {
            return done.get();
        } catch (ExecutionException e) {
            throw e.getCause() instanceof RuntimeException unforeseen ? unforeseen : new IllegalStateException(e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(e);
        }
    }

    /** Time goes by; true if the picture changes. */
    private boolean tick(Instant now) {
        boolean changed = tell(new PageEvent.Tick(now));
        WaitSign before = sign;
        sign = over || !isHeld() ? sign.end() : sign.isWaiting() ? sign.tick(now, front().percent()) : sign.begin(now);
        return changed || !before.shown().equals(sign.shown());
    }

    /** Tells the page in front; true if it has changed or wants something. */
    private boolean tell(PageEvent event) {
        return tell(front(), event);
    }

    private boolean tell(OpenPage open, PageEvent event) {
        PageResult result = open.page.on(event);
        boolean changed = result.next() != open.page || !result.effects().isEmpty();
        open.page = result.next();
        result.effects().forEach(effect -> perform(open, effect));
        return changed;
    }

    private void perform(OpenPage by, PageEffect effect) {
        if (effect instanceof PageEffect.Outside outside) {
            by.waiting.add(new Waiting(outside, performer.begin(outside)));
            if (outside.holdsKeys()) {
                sign = sign.begin(clock.now());
            }
        } else if (effect instanceof PageEffect.Open open) {
            open(open.page());
        } else if (effect instanceof PageEffect.Replace replace) {
            pages.pop();
            open(replace.page());
        } else if (effect instanceof PageEffect.Back) {
            back(pages.size() - 1);
        } else if (effect instanceof PageEffect.First) {
            back(1);
        } else if (effect instanceof PageEffect.LeaveProgram) {
            leave();
        } else if (effect instanceof PageEffect.DropEarlierKeys) {
            session.dropKeysBefore(paintedNanos);
        } else if (effect instanceof PageEffect.Settle settle) {
            performer.finish(settle.longest());
        }
    }

    private void open(Page page) {
        pages.push(new OpenPage(page));
        tell(new PageEvent.Opened(clock.now()));
    }

    private void back(int left) {
        while (pages.size() > left) {
            pages.pop();
        }
        over = pages.isEmpty();
        if (!over) {
            tell(new PageEvent.Returned(clock.now()));
        }
    }

    private void leave() {
        over = true;
        Instant now = clock.now();
        List.copyOf(pages).forEach(open -> tell(open, new PageEvent.Leave(now)));
    }

    private void paint(boolean all) {
        Picture next = new Picture(session.size().getColumns(), session.size().getRows(), session.unicode());
        if (next.width() < 40 || next.height() < 12) {
            next.text(0, 0, performer.windowTooSmall());
            tell(new PageEvent.Interrupted(clock.now()));
        } else {
            front().page.draw(next);
            if (isHeld() && !sign.shown().isEmpty()) {
                next.centred(next.height() - 2, "  " + sign.shown() + "  ", Ink.PLAIN);
            }
        }
        next.show(session.screen(), all ? new Picture(1, 1, session.unicode()) : shown, session.theme());
        shown = next;
        session.paint(all);
        paintedNanos = clock.reading();
        tell(new PageEvent.Painted(clock.at(paintedNanos)));
    }

    /** The picture that is on the screen. */
    public Picture shown() {
        return shown;
    }

    /** The page in front, as it is now. */
    public Page page() {
        return front().page;
    }
}
