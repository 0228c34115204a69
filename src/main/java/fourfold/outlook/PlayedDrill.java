// SPDX-License-Identifier: Apache-2.0
package fourfold.outlook;

import fourfold.drill.Drill;
import fourfold.drill.Effect;
import fourfold.drill.Event;
import fourfold.drill.Phase;
import fourfold.drill.Phase.Asking;
import fourfold.drill.Step;
import fourfold.facts.Question;
import fourfold.log.Answer;
import fourfold.log.DrillSession;
import fourfold.log.Surface;
import fourfold.progress.Progress;
import fourfold.scheduling.Scheduler;
import java.time.Duration;
import java.time.Instant;
import java.util.function.Consumer;

/**
 * One drill of a learner, through the real drill, in simulated time. How long a right answer stands, when help comes and
 * what has to be typed is the drill's own doing; the learner gives the times of its hands. Only looking is reckoned here:
 * at each part of a new family's picture, at the whole of it, at a fact in view, at a page between.
 */
public final class PlayedDrill {
    private static final Duration MEETING = Duration.ofSeconds(4);
    private static final Duration ONE_MORE = Duration.ofMillis(700);
    private static final Duration NOTICING = Duration.ofSeconds(2);
    private static final int MOST_STEPS = 20_000;

    private final Learner child;
    private final Scheduler scheduler;
    private final Consumer<Answer> kept;
    private Instant now = Instant.EPOCH;

    /**
     * A learner at the keyboard.
     *
     * @param child who practises
     * @param scheduler chooses the questions
     * @param kept takes every answer as it is kept
     */
    public PlayedDrill(Learner child, Scheduler scheduler, Consumer<Answer> kept) {
        this.child = child;
        this.scheduler = scheduler;
        this.kept = kept;
    }

    /** Plays the drill to its end; gives what the child has reached then. */
    public Progress play(Progress before, DrillSession session) {
        now = session.startedAt();
        Drill drill = apply(Drill.ready(before, session, scheduler, Surface.TERMINAL), new Event.Enter(now));
        for (int steps = 0; !drill.isFinished(); steps++) {
            if (steps > MOST_STEPS) {
                throw new IllegalStateException(
                        "the drill of " + session.startedAt() + " does not end: " + drill.phase());
            }
            drill = turn(drill);
        }
        return drill.progress();
    }

    /** When the drill ended. */
    public Instant now() {
        return now;
    }

    private Drill turn(Drill drill) {
        if (drill.phase() instanceof Asking asking) {
            return answer(drill, asking);
        }
        if (drill.phase() instanceof Phase.Right right) {
            now = right.until();
            return apply(drill, new Event.Tick(now));
        }
        boolean lookedAll = drill.phase() instanceof Phase.Meeting meeting && meeting.isWhole();
        boolean looks = drill.phase() instanceof Phase.Meeting && !lookedAll;
        now = now.plus(
                looks ? ONE_MORE : lookedAll ? MEETING : drill.phase() instanceof Phase.HandsOff ? MEETING : NOTICING);
        return apply(drill, new Event.Enter(now));
    }

    private Drill answer(Drill drill, Asking asking) {
        Drill shown = apply(drill, new Event.Painted(now));
        Reply reply = replyTo(asking);
        if (reply.typed().isEmpty()) {
            now = now.plus(drill.progress().steering().settings().calm());
            return apply(shown, new Event.Tick(now));
        }
        Instant begin = now;
        long rest = reply.whole().minus(reply.firstKey()).toMillis();
        long between = rest / reply.typed().length();
        Drill typing = shown;
        for (int i = 0; i < reply.typed().length(); i++) {
            Instant key = begin.plus(reply.firstKey()).plusMillis(between * i);
            typing = apply(typing, new Event.Digit(reply.typed().charAt(i) - '0', key));
        }
        now = begin.plus(reply.whole());
        return apply(typing, new Event.Enter(now));
    }

    private Reply replyTo(Asking asking) {
        if (asking.question().isPresent()) {
            Question question = asking.question().get();
            if (asking.purpose().isFromMemory()) {
                return child.reply(question, now);
            }
            child.shown(question.fact(), now.plus(NOTICING));
            Reply copied = child.copy(Integer.toString(question.expected()), now);
            return new Reply(
                    copied.typed(),
                    copied.firstKey().plus(NOTICING),
                    copied.whole().plus(NOTICING));
        }
        return child.copy(Integer.toString(asking.prompt().expected()), now);
    }

    private Drill apply(Drill drill, Event event) {
        Step step = drill.on(event);
        for (Effect effect : step.effects()) {
            if (effect instanceof Effect.Keep keep) {
                kept.accept(keep.answer());
                child.known(step.next().progress());
            }
        }
        return step.next();
    }
}
