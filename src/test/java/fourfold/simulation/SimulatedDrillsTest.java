// SPDX-License-Identifier: Apache-2.0
package fourfold.simulation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.facts.Families;
import fourfold.facts.Inverse;
import fourfold.facts.Operation;
import fourfold.facts.Question;
import fourfold.log.Answer;
import fourfold.log.Purpose;
import fourfold.memory.Parameters;
import fourfold.outlook.Reply;
import fourfold.scheduling.LastingGain;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Guards against a policy that breaks the drill's laws where no hand-made test looks, and against unfair children. */
class SimulatedDrillsTest {
    private static final int WEEKS = 6;

    static Stream<Policy> policies() {
        // Without pairs no inverse follows: that is what it is there to measure.
        return Policies.all().stream()
                .filter(Policy::practises)
                .filter(p -> !p.name().equals("ours-no-pairs"));
    }

    private static List<List<Answer>> drills(Policy policy, SimulatedLearnerKind kind, long seed) {
        Map<UUID, List<Answer>> drills = new LinkedHashMap<>();
        SimulatedLearner child = kind.create(seed);
        new SchoolYear(
                        child,
                        policy.schedulerFor(child),
                        policy.blank(),
                        kind.calendar(seed),
                        seed,
                        a -> drills.computeIfAbsent(a.drill(), d -> new ArrayList<>())
                                .add(a))
                .run(WEEKS);
        return List.copyOf(drills.values());
    }

    private static List<Question> fromMemory(List<Answer> drill) {
        return drill.stream()
                .filter(a -> a.purpose().isFromMemory())
                .map(a -> a.question().orElseThrow())
                .toList();
    }

    @ParameterizedTest
    @MethodSource("policies")
    void everyPolicyKeepsTheLawsOfTheDrill(Policy policy) {
        SimulatedLearnerKind kind = new ShortBufferKind();
        for (List<Answer> drill : drills(policy, kind, 3)) {
            // What was asked before its lesson and not known has nothing to undo yet.
            Set<Question> onlyTried = drill.stream()
                    .filter(a -> a.purpose() == Purpose.PROBE && !a.isCorrect())
                    .map(a -> a.question().orElseThrow())
                    .collect(Collectors.toSet());
            List<Question> asked = fromMemory(drill);
            for (int i = 0; i < asked.size(); i++) {
                Question here = asked.get(i);
                if (i > 0) {
                    Question before = asked.get(i - 1);
                    assertNotEquals(before.family().product(), here.family().product(), () -> before + " then " + here);
                }
                if (here.operation() == Operation.MULTIPLY && !onlyTried.contains(here)) {
                    int from = i;
                    assertTrue(
                            asked.stream().skip(from + 1L).anyMatch(q -> Inverse.isOf(q, here)),
                            () -> policy.name() + ": no inverse after " + here + " in " + asked);
                }
            }
        }
    }

    @Test
    void theSameSeedGivesTheSameYear() {
        Policy policy = new Policy.Ours("gaps", new LastingGain(), Parameters.usual());
        SimulatedLearnerKind kind = new ActivationKind();
        assertEquals(drills(policy, kind, 5), drills(policy, kind, 5));
        assertNotEquals(drills(policy, kind, 5), drills(policy, kind, 6));
    }

    @Test
    void tuningAndReportingShareNoChild() {
        Set<Long> seen = new HashSet<>();
        for (Seeds range : Seeds.values()) {
            assertTrue(range.take(1000).allMatch(seen::add), range.name());
        }
    }

    static Stream<SimulatedLearnerKind> kinds() {
        return SimulatedLearnerKind.all().stream();
    }

    /** A chance that is told must be the chance that is lived, or the table measures something else. */
    @ParameterizedTest
    @MethodSource("kinds")
    void theTrueChanceIsHowOftenAnswersComeInTime(SimulatedLearnerKind kind) {
        double told = 0;
        int lived = 0;
        int asked = 0;
        Duration limit = Duration.ofSeconds(3);
        for (long seed = 1; seed <= 40; seed++) {
            SimulatedLearner child = kind.create(seed);
            for (Question question : Families.questions()) {
                child.shown(question.fact(), SchoolYear.START);
                var at = SchoolYear.START.plusSeconds(4000L + asked % 7);
                told += child.chanceRightWithin(question, at, limit);
                Reply reply = child.reply(question, at);
                boolean right = reply.typed().equals(Integer.toString(question.expected()));
                lived += right && reply.firstKey().compareTo(limit) <= 0 ? 1 : 0;
                asked++;
            }
        }
        // The hands' own spread is not in the told chance; it moves the mean by far less than this.
        assertEquals(told / asked, (double) lived / asked, 0.015, kind.name());
    }

    @ParameterizedTest
    @MethodSource("kinds")
    void lookingAheadAndAskingForChancesChangeNothing(SimulatedLearnerKind kind) {
        SimulatedLearner watched = kind.create(9);
        SimulatedLearner left = kind.create(9);
        Question question = Question.product(7, 8);
        for (int i = 0; i < 60; i++) {
            var at = SchoolYear.START.plusSeconds(9000L * i);
            watched.chanceRightWithin(question, at.plus(Duration.ofDays(20)), Duration.ofSeconds(3));
            if (watched instanceof OpenMind open) {
                open.chanceIfPractised(question, at, at.plus(Duration.ofDays(9)), Duration.ofSeconds(3));
                open.secondsFor(question, at);
            }
            assertEquals(left.reply(question, at), watched.reply(question, at));
        }
    }
}
