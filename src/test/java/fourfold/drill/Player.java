// SPDX-License-Identifier: Apache-2.0
package fourfold.drill;

import fourfold.drill.Phase.Asking;
import fourfold.facts.Prompt;
import fourfold.log.Answer;
import fourfold.log.DrillSession;
import fourfold.log.Purpose;
import fourfold.log.Surface;
import fourfold.progress.Progress;
import fourfold.scheduling.Scheduler;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;

/** Plays drills through {@link Drill#on} with a hand-set clock; what is typed for a prompt is given by the test. */
public final class Player {
    /** What a test's child does with a prompt. */
    @FunctionalInterface
    public interface Child {
        /** The digits to type, empty for none, after so many milliseconds. */
        Reply to(Prompt prompt, Purpose purpose, int position);
    }

    /** Digits and how long they take. */
    public record Reply(String digits, long millis) {}

    private final Scheduler scheduler;
    private final UUID child = new UUID(1, 1);
    private final List<Answer> log = new ArrayList<>();
    private Instant now;
    private Progress progress;

    public Player(Scheduler scheduler, Progress progress, Instant start) {
        this.scheduler = scheduler;
        this.progress = progress;
        this.now = start;
    }

    /** All answers kept so far. */
    public List<Answer> log() {
        return log;
    }

    public Progress progress() {
        return progress;
    }

    public void rest(Duration pause) {
        now = now.plus(pause);
    }

    public Instant now() {
        return now;
    }

    /** One whole drill; gives the answers kept in it. */
    public List<Answer> drill(int minutes, long seed, Child hand) {
        DrillSession session =
                new DrillSession(new UUID(2, log.size() + 1L), child, now, 0, Duration.ofMinutes(minutes), seed);
        Drill drill = Drill.ready(progress, session, scheduler, Surface.TERMINAL);
        List<Answer> kept = new ArrayList<>();
        drill = apply(drill, new Event.Enter(now), kept);
        for (int steps = 0; !drill.isFinished(); steps++) {
            if (steps > 20_000) {
                throw new AssertionError("the drill does not end: " + drill.phase());
            }
            if (drill.phase() instanceof Asking asking) {
                drill = apply(drill, new Event.Painted(now), kept);
                Reply reply = hand.to(asking.prompt(), asking.purpose(), kept.size() + 1);
                now = now.plusMillis(reply.millis());
                if (reply.digits().isEmpty()) {
                    drill = apply(drill, new Event.Tick(now.plusSeconds(60)), kept);
                    now = now.plusSeconds(20);
                } else {
                    for (char c : reply.digits().toCharArray()) {
                        drill = apply(drill, new Event.Digit(c - '0', now), kept);
                    }
                    now = now.plusMillis(300);
                    drill = apply(drill, new Event.Enter(now), kept);
                }
            } else if (drill.phase() instanceof Phase.Right right) {
                now = right.until();
                drill = apply(drill, new Event.Tick(now), kept);
            } else {
                now = now.plusSeconds(3);
                drill = apply(drill, new Event.Enter(now), kept);
            }
        }
        log.addAll(kept);
        progress = drill.progress();
        return kept;
    }

    private static Drill apply(Drill drill, Event event, List<Answer> kept) {
        Step step = drill.on(event);
        for (Effect effect : step.effects()) {
            if (effect instanceof Effect.Keep keep) {
                kept.add(keep.answer());
            }
        }
        return step.next();
    }
}
