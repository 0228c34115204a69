// SPDX-License-Identifier: Apache-2.0
package fourfold.simulation.policy20261127;

import fourfold.facts.Families;
import fourfold.facts.Family;
import fourfold.facts.Question;
import fourfold.facts.Trace;
import fourfold.log.Answer;
import fourfold.progress.DrillSoFar;
import fourfold.progress.Steering;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** What one child has reached, as the policy of that day folded it; takes answers in order of time. Not for sharing. */
public final class Progress {
    private final Steering steering;
    private final Duration quick;
    private final List<Family> order;
    private final MemoryState state;
    private final Memory memory;
    private final FactMastery[] masteries = new FactMastery[Trace.COUNT];
    private MotorTime motor = MotorTime.unknown();
    private Optional<DrillSoFar> drill = Optional.empty();
    private int noted;
    private long answers;

    Progress(Steering steering, Parameters constants) {
        if (!steering.resets().isEmpty()) {
            throw new IllegalArgumentException("no family is begun again in a benchmark");
        }
        this.steering = steering;
        this.quick = steering.settings().quick();
        this.order = introductionOrder(steering);
        this.state = new MemoryState(constants.withLimit(quick));
        this.memory = new Memory(state);
        Arrays.fill(masteries, FactMastery.UNMET);
    }

    /** Takes the answers that the drill so far has and were not taken yet. */
    void follow(DrillSoFar soFar) {
        boolean same =
                drill.filter(d -> d.session().id().equals(soFar.session().id())).isPresent();
        int from = same ? noted : 0;
        if (soFar.size() - from == 1) {
            take(soFar.last().orElseThrow());
        } else if (soFar.size() > from) {
            soFar.answers().subList(from, soFar.size()).forEach(this::take);
        }
        drill = Optional.of(soFar);
        noted = soFar.size();
    }

    private void take(Answer answer) {
        Optional<Question> question = answer.question();
        if (question.isPresent()) {
            int trace = question.get().traceIndex();
            state.take(answer, motor);
            masteries[trace] = masteries[trace].after(answer, motor.thinking(answer), quick);
        }
        motor = motor.after(answer);
        answers++;
    }

    /** How many answers were taken. */
    public long answers() {
        return answers;
    }

    /** The drill that is going on. */
    public Optional<DrillSoFar> drill() {
        return drill;
    }

    /** What the parent's actions come to. */
    public Steering steering() {
        return steering;
    }

    /** The child's limit for a quick answer. */
    Duration quick() {
        return quick;
    }

    /** What the child remembers, as far as the answers show. */
    public Memory memory() {
        return memory;
    }

    /** The mastery of the trace with that index. */
    public FactMastery mastery(int trace) {
        return masteries[trace];
    }

    private boolean isMet(Family family) {
        return family.traces().stream().anyMatch(t -> masteries[t.index()].isMet());
    }

    /** Whether the parent's focus still holds: it ends by itself when the family is fluent. */
    boolean isFocused(Family family) {
        return steering.focused().contains(family)
                && !family.traces().stream()
                        .allMatch(t -> masteries[t.index()].level().atLeast(Mastery.FLUENT));
    }

    /** The family to introduce next, in the parent's order; empty if all were met. */
    Optional<Family> nextNew() {
        Optional<Family> next = Families.all().stream()
                .filter(f -> steering.focused().contains(f) && !isMet(f))
                .findFirst();
        return next.isPresent() ? next : order.stream().filter(f -> !isMet(f)).findFirst();
    }

    /** The families in the order in which they are to be introduced. */
    public List<Family> introductionOrder() {
        return order;
    }

    /** The local day at an instant, by the zone of the drill that is going on. */
    long localDay(Instant at) {
        int minutes = drill.map(d -> d.session().zoneOffsetMinutes()).orElse(0);
        return Math.floorDiv(at.getEpochSecond() + minutes * 60L, 86_400L);
    }

    /** The order of that day: easy tables first, inside a table by the other factor. */
    private static List<Family> introductionOrder(Steering steering) {
        List<Integer> tables = new ArrayList<>(steering.opened());
        List<Integer> chosen = steering.order().equals(Families.USUAL_ORDER) ? Families.EASY_FIRST : steering.order();
        chosen.stream().filter(t -> !tables.contains(t)).forEach(tables::add);
        tables.removeAll(steering.closed());
        Set<Family> order = new LinkedHashSet<>();
        tables.forEach(t -> order.addAll(Families.inTable(t)));
        order.removeAll(steering.held());
        return List.copyOf(order);
    }
}
