// SPDX-License-Identifier: Apache-2.0
package fourfold.drill;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.log.Answer;
import fourfold.log.DrillSession;
import fourfold.log.Surface;
import fourfold.progress.Progress;
import fourfold.progress.Steering;
import fourfold.scheduling.LastingGain;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.UUID;
import org.junit.jupiter.api.Test;

/**
 * Guards against a drill that breaks under what no child would do: any event at any moment, also with times that run
 * backwards or leap. More with {@code -Dfourfold.events=1000000}.
 */
class RandomEventsTest {
    private static final int EVENTS = Integer.getInteger("fourfold.events", 60_000);
    private static final Instant START = Instant.parse("2026-03-02T08:00:00Z");
    private static final UUID CHILD = new UUID(7, 7);

    private final SplittableRandom dice = new SplittableRandom(61);
    private final List<Answer> kept = new ArrayList<>();
    private Instant now = START;

    @Test
    void anyEventAtAnyMomentKeepsTheLaws() {
        Progress progress = Progress.blank(Steering.NONE);
        int events = 0;
        for (int number = 0; events < EVENTS; number++) {
            DrillSession session = new DrillSession(
                    new UUID(8, number), CHILD, now, 60, Duration.ofMinutes(1 + dice.nextInt(30)), number);
            Drill drill = Drill.ready(progress, session, new LastingGain(), Surface.TERMINAL);
            int before = kept.size();
            int begun = 0;
            for (int i = 0; i < 400 && !drill.isFinished(); i++) {
                Step step = drill.on(event(drill));
                begun += take(step, begun > 0);
                drill = step.next();
                events++;
            }
            drill = drill.on(new Event.Leave(now)).next();
            assertTrue(drill.isFinished());
            assertEquals(0, drill.on(new Event.Enter(now)).effects().size(), "nothing is kept after the end");
            List<Answer> given = kept.subList(before, kept.size());
            for (int i = 0; i < given.size(); i++) {
                assertEquals(i + 1, given.get(i).position());
            }
            progress = Progress.of(List.of(), kept);
            if (kept.size() > 3000) {
                kept.clear();
                progress = Progress.blank(Steering.NONE);
            }
        }
    }

    /** At most one thing is kept for one event, and nothing before the drill has begun. */
    private int take(Step step, boolean hasBegun) {
        assertTrue(step.effects().size() <= 1);
        for (Effect effect : step.effects()) {
            if (effect instanceof Effect.Begin) {
                assertFalse(hasBegun, "begun twice");
                return 1;
            }
            assertTrue(hasBegun, "kept before it began");
            kept.add(((Effect.Keep) effect).answer());
        }
        return 0;
    }

    private Event event(Drill drill) {
        now = now.plus(leap());
        int kind = dice.nextInt(100);
        if (kind < 25) {
            return new Event.Painted(now);
        } else if (kind < 50) {
            return drill.phase() instanceof Phase.Asking asking && dice.nextInt(3) > 0
                    ? new Event.Line(Integer.toString(asking.prompt().expected()), now)
                    : new Event.Digit(dice.nextInt(10), now);
        } else if (kind < 70) {
            return new Event.Enter(now);
        } else if (kind < 90) {
            return new Event.Tick(now);
        } else if (kind < 94) {
            return new Event.Erase(now);
        } else if (kind < 97) {
            return new Event.Pause(now);
        }
        return kind < 99 ? new Event.Line("", now) : new Event.Leave(now);
    }

    /** Mostly forward by less than two seconds, now and then backwards, or by a year. */
    private Duration leap() {
        int kind = dice.nextInt(2000);
        if (kind == 0) {
            return Duration.ofDays(365);
        } else if (kind == 1) {
            return Duration.ofDays(-365);
        }
        return Duration.ofMillis(kind < 20 ? -dice.nextInt(5000) : dice.nextInt(2000));
    }
}
