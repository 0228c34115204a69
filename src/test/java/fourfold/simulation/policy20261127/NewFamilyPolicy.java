// SPDX-License-Identifier: Apache-2.0
package fourfold.simulation.policy20261127;

import fourfold.facts.Families;
import fourfold.facts.Family;
import fourfold.facts.Question;
import fourfold.facts.Trace;
import fourfold.log.Answer;
import fourfold.log.Purpose;
import fourfold.progress.Steering;
import fourfold.scheduling.Turn;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;

/** When a new family joins, and how: asked first where the child has mostly known them, taught otherwise. */
final class NewFamilyPolicy {
    /** A handful of families makes practice possible; until then nothing else can be asked. Our own choice. */
    private static final int FEWEST = 3;

    /** With fewer families neighbours cannot be kept apart. Our own choice. */
    static final int HANDFUL = 12;

    /** A new family needs so much of the drill to be asked again in it. Our own choice. */
    private static final Duration ROOM = Duration.ofSeconds(100);

    /**
     * Asked before it is taught while at least this share turned out to be known lately: a question costs a few seconds, a
     * lesson not needed costs half a minute and a place in the drill's limit. Our own choice.
     */
    private static final double WORTH_ASKING = 0.1;

    private final ChoiceContext here;
    private final Rules rules;

    NewFamilyPolicy(ChoiceContext here, Rules rules) {
        this.here = here;
        this.rules = rules;
    }

    /** A family that was asked first and not known: it is taught at once. */
    Optional<Turn> teach() {
        Optional<Answer> last = here.drill.last();
        if (last.isEmpty() || last.get().purpose() != Purpose.INTRODUCE) {
            return Optional.empty();
        }
        Family family = last.get().question().orElseThrow().family();
        for (int division : ChoiceContext.divisionsOf(family.index())) {
            if (here.isMet(division)) {
                return Optional.empty();
            }
        }
        if (here.progress.steering().settings().divisionsLater() && (family.isSquare() || isTurnedAround(family))) {
            return Optional.empty();
        }
        return here.isHeld(family.index()) ? Optional.empty() : Optional.of(introduce(family));
    }

    /** Whether both orders of the family's product were typed in view in this drill. */
    private boolean isTurnedAround(Family family) {
        boolean lowFirst = false;
        boolean highFirst = false;
        for (Answer answer : here.drill.newestFirst()) {
            if (answer.purpose() == Purpose.INTRODUCE) {
                lowFirst |= answer.prompt().equals(Question.product(family.low(), family.high()));
                highFirst |= answer.prompt().equals(Question.product(family.high(), family.low()));
            }
        }
        return lowFirst && highFirst;
    }

    /** Whether every family was met: then what is due need not be counted. */
    boolean isOver() {
        for (int f = 0; f < Families.COUNT; f++) {
            if (!here.isFamilyMet(f)) {
                return false;
            }
        }
        return true;
    }

    /**
     * A new family, if one may join now.
     *
     * @param waiting how many traces are due
     * @param weak how many traces are weak
     */
    Optional<Turn> join(int waiting, int weak) {
        int metFamilies = 0;
        for (int f = 0; f < Families.COUNT; f++) {
            metFamilies += here.isFamilyMet(f) ? 1 : 0;
        }
        if (metFamilies == Families.COUNT || !mayJoin(metFamilies, waiting, weak)) {
            return Optional.empty();
        }
        // Among a handful of families all are neighbours; waiting for others between them would be waiting for ever.
        boolean handful = metFamilies < HANDFUL;
        return here.progress
                .nextNew()
                .filter(f -> handful ? !here.repeats(f) : here.allows(f))
                .map(this::first);
    }

    /** The family that comes next, whatever the rules of pace say. */
    Optional<Turn> atLast() {
        return here.progress.nextNew().map(this::introduce);
    }

    private Turn first(Family family) {
        boolean ask = here.memory.chanceKnown() >= WORTH_ASKING;
        return ask ? new Turn(Question.product(family.low(), family.high()), Purpose.PROBE) : introduce(family);
    }

    private Turn introduce(Family family) {
        return new Turn(Question.product(family.low(), family.high()), Purpose.INTRODUCE);
    }

    private boolean mayJoin(int metFamilies, int waiting, int weak) {
        Duration left = here.drill.session().planned().minus(here.practised);
        if (left.compareTo(ROOM) <= 0) {
            return false;
        }
        if (metFamilies < FEWEST) {
            return true;
        }
        int most = Math.min(rules.mostNew(), here.progress.steering().settings().newInDrill());
        return waiting <= rules.mostWaiting()
                && here.shaky() < rules.mostShaky()
                && paced(most)
                && (weak <= rules.mostWeak() || here.leastAsked() >= rules.longestWait() || isWished());
    }

    /** Whether the parent asked for the family that comes next: by a focus, or by opening its table by hand. */
    private boolean isWished() {
        Steering steering = here.progress.steering();
        if (steering.focused().isEmpty() && steering.opened().isEmpty()) {
            return false;
        }
        return here.progress
                .nextNew()
                .filter(f -> steering.focused().contains(f)
                        || steering.opened().stream().anyMatch(f::contains))
                .isPresent();
    }

    /** Whether fewer families than the limit were taught in this drill, and the last of them long enough ago. */
    private boolean paced(int most) {
        int taught = 0;
        boolean[] seen = new boolean[Families.COUNT];
        Optional<Instant> latest = Optional.empty();
        for (Answer answer : here.drill.newestFirst()) {
            if (answer.purpose() != Purpose.INTRODUCE) {
                continue;
            }
            Family family = answer.question().orElseThrow().family();
            if (seen[family.index()] || !isNewToday(family)) {
                continue;
            }
            seen[family.index()] = true;
            taught++;
            latest = latest.isEmpty() ? Optional.of(answer.askedAt()) : latest;
        }
        boolean restedEnough = latest.map(
                        l -> here.now - l.toEpochMilli() >= rules.newEvery().toMillis())
                .orElse(true);
        return taught < most && restedEnough;
    }

    private boolean isNewToday(Family family) {
        for (Trace trace : family.traces()) {
            if (here.progress.mastery(trace.index()).asked() > here.asked.times(trace)) {
                return false;
            }
        }
        return true;
    }
}
