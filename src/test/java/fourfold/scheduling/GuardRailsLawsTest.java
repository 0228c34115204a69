package fourfold.scheduling;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.drill.Player;
import fourfold.facts.Family;
import fourfold.facts.Inverse;
import fourfold.facts.Operation;
import fourfold.facts.Prompt;
import fourfold.facts.Question;
import fourfold.log.ActionRecord;
import fourfold.log.Answer;
import fourfold.log.ParentAction;
import fourfold.log.Purpose;
import fourfold.outlook.Reply;
import fourfold.progress.Progress;
import fourfold.progress.Steering;
import fourfold.simulation.SchoolYear;
import fourfold.simulation.SimulatedLearner;
import fourfold.simulation.SimulatedLearnerKind;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** Guards against a policy that breaks the rails of the drill for some kind of child, or rests what it should ask. */
class GuardRailsLawsTest {
    private static final int DRILLS = 12;
    private static final int MINUTES = 8;
    private static final int UNDER_HOLD = 2;
    private static final int DAYS_AWAY = 22;
    private static final int ENOUGH_TO_TELL = 12;
    private static final double SURE = 0.9;
    private static final List<Practice> ALL = new ArrayList<>();

    @BeforeAll
    static void childrenOfAllKindsPractise() {
        for (SimulatedLearnerKind kind : SimulatedLearnerKind.all()) {
            for (long seed = 4; seed <= 5; seed++) {
                ALL.add(new Practice(kind, seed));
            }
        }
    }

    /** A simulated child's drills on four days of a week, one more after weeks away, and a few while a family is held. */
    private static final class Practice {
        private final String kind;
        private final SimulatedLearner child;
        private final long seed;
        private final Onlooker onlooker = new Onlooker(new LastingGain());
        private final List<List<Answer>> drills = new ArrayList<>();
        private final List<Onlooker.Seen> firstWhenBack;
        private final Family held;
        private Player player = new Player(onlooker, Progress.blank(Steering.NONE), SchoolYear.START);

        Practice(SimulatedLearnerKind kind, long seed) {
            this.kind = kind.name();
            this.child = kind.create(seed);
            this.seed = seed;
            play(DRILLS);
            player.rest(Duration.ofDays(DAYS_AWAY));
            long before = fromMemory().count();
            play(1);
            firstWhenBack = fromMemory().skip(before).limit(Onlooker.EASY_START).toList();
            held = question(GuardRailsLawsTest.fromMemory(drills.get(DRILLS)).get(5))
                    .family();
            hold();
            play(UNDER_HOLD);
        }

        private void play(int count) {
            for (int i = 0; i < count; i++) {
                drills.add(player.drill(MINUTES, seed * 1000 + drills.size(), this::answer));
                player.rest(Duration.ofDays(drills.size() % 4 == 0 ? 4 : 1));
            }
        }

        private void hold() {
            ActionRecord act =
                    new ActionRecord(new UUID(9, 1), new UUID(1, 1), player.now(), 0, new ParentAction.Hold(held));
            Progress.Fold fold = new Progress.Fold(Steering.of(List.of(act)));
            drills.forEach(drill -> drill.forEach(fold));
            player = new Player(onlooker, fold.progress(), player.now());
        }

        private Player.Reply answer(Prompt prompt, Purpose purpose, int position) {
            if (!(prompt instanceof Question question) || !purpose.isFromMemory()) {
                if (prompt instanceof Question shown) {
                    child.shown(shown.fact(), player.now());
                }
                return played(child.copy(Integer.toString(prompt.expected()), player.now()));
            }
            return played(child.reply(question, player.now()));
        }

        private static Player.Reply played(Reply reply) {
            return new Player.Reply(reply.typed(), reply.firstKey().toMillis());
        }

        Stream<Onlooker.Seen> fromMemory() {
            return onlooker.seen().stream().filter(Onlooker.Seen::isFromMemory);
        }

        @Override
        public String toString() {
            return kind + " " + seed;
        }
    }

    private static List<Answer> fromMemory(List<Answer> drill) {
        return drill.stream().filter(a -> a.purpose().isFromMemory()).toList();
    }

    private static Question question(Answer answer) {
        return answer.question().orElseThrow();
    }

    private static Stream<Onlooker.Seen> turns() {
        return ALL.stream().flatMap(Practice::fromMemory);
    }

    private static double share(Predicate<Onlooker.Seen> among, Predicate<Onlooker.Seen> what) {
        return (double) turns().filter(among).filter(what).count()
                / turns().filter(among).count();
    }

    private static void never(Predicate<Onlooker.Seen> breach) {
        for (Practice practice : ALL) {
            assertEquals(
                    List.of(), practice.fromMemory().filter(breach).limit(3).toList(), practice::toString);
        }
    }

    @Test
    void no_question_and_no_product_comes_twice_in_a_row() {
        for (Practice practice : ALL) {
            for (List<Answer> drill : practice.drills) {
                List<Answer> asked = fromMemory(drill);
                for (int i = 1; i < asked.size(); i++) {
                    Question before = question(asked.get(i - 1));
                    Question here = question(asked.get(i));
                    assertNotEquals(before, here, practice::toString);
                    assertNotEquals(
                            before.family().product(),
                            here.family().product(),
                            () -> practice + ": " + before + " then " + here);
                }
            }
        }
    }

    /**
     * At least three other questions lie between. Where the rails leave nothing, what was asked longest ago comes; an
     * owed inverse, and a new family among a handful, come all the same.
     */
    @Test
    void neighbours_are_apart_while_one_of_them_is_shaky_unless_nothing_else_is_left() {
        never(s -> s.close() && s.choice() && !s.owed() && !s.ending() && !s.handful());
        // Measured with twelve families and more: close 2.0 %, all of them owed inverses, never for want of a choice.
        Predicate<Onlooker.Seen> some = s -> s.families() >= NewFamilyPolicy.HANDFUL;
        double any = share(some, Onlooker.Seen::close);
        double forWant = share(some, s -> s.close() && !s.choice());
        assertTrue(any < 0.025 && forWant < 0.001, any + " close, " + forWant + " for want of a choice");
        // Measured with fewer, where nearly all are neighbours of each other: 12 % for want of a choice; it was 22 %
        // with two other seeds.
        double few = share(some.negate(), s -> s.close() && !s.choice() && !s.owed() && !s.handful());
        assertTrue(few < 0.3, few + " close for want of a choice");
    }

    @Test
    void every_product_has_its_inverse_in_the_same_drill_at_least_three_questions_later() {
        for (Practice practice : ALL) {
            for (List<Answer> drill : practice.drills) {
                List<Answer> asked = fromMemory(drill);
                for (int i = 0; i < asked.size(); i++) {
                    Question here = question(asked.get(i));
                    if (here.operation() == Operation.MULTIPLY) {
                        int after = questionsUntilTheInverse(asked, i);
                        assertTrue(after >= 3, () -> practice + ": " + after + " after " + here);
                    }
                }
            }
        }
    }

    /** Nought if it never comes. */
    private static int questionsUntilTheInverse(List<Answer> asked, int product) {
        for (int j = product + 1; j < asked.size(); j++) {
            if (Inverse.isOf(question(asked.get(j)), question(asked.get(product)))) {
                return j - product;
            }
        }
        return 0;
    }

    @Test
    void a_fact_missed_twice_rests_for_the_rest_of_the_drill() {
        never(Onlooker.Seen::missedTwice);
    }

    @Test
    void a_family_the_parent_holds_never_comes_even_if_it_was_being_practised() {
        for (Practice practice : ALL) {
            assertTrue(
                    practice.drills.stream().limit(DRILLS + 1).anyMatch(drill -> comes(practice.held, drill)),
                    practice::toString);
            for (List<Answer> drill : practice.drills.subList(DRILLS + 1, DRILLS + 1 + UNDER_HOLD)) {
                assertTrue(drill.size() > 20, practice::toString);
                assertFalse(comes(practice.held, drill), () -> practice + " was asked " + practice.held);
            }
        }
    }

    private static boolean comes(Family family, List<Answer> drill) {
        return drill.stream()
                .flatMap(answer -> answer.question().stream())
                .anyMatch(question -> question.family().equals(family));
    }

    @Test
    void every_kind_of_child_is_mostly_right() {
        for (SimulatedLearnerKind kind : SimulatedLearnerKind.all()) {
            double mean = ALL.stream()
                    .filter(p -> p.kind.equals(kind.name()))
                    .flatMap(p -> p.drills.stream())
                    .map(GuardRailsLawsTest::fromMemory)
                    .filter(asked -> asked.size() >= ENOUGH_TO_TELL)
                    .mapToDouble(asked ->
                            (double) asked.stream().filter(Answer::isCorrect).count() / asked.size())
                    .average()
                    .orElseThrow();
            assertTrue(mean >= 0.85, kind.name() + " is right in " + mean);
        }
    }

    /**
     * After success the next gap is no shorter than the one that was bridged, while anything is due. The two sure facts
     * that a drill begins with, and an inverse that is owed, may come earlier; so may anything when nothing is due.
     */
    @Test
    void a_trace_that_rests_is_not_asked_while_another_is_due() {
        never(s -> s.rests() && s.othersDue() && s.turns() >= 2 && !s.owed() && !s.ending());
        // Measured: 9.2 % of all turns come early with these children; it was 5.5 % with those until 2026-11-26.
        double early = share(s -> true, Onlooker.Seen::rests);
        assertTrue(early < 0.11, early + " asked while they rest");
    }

    /**
     * Easy is what the forecast puts above the middle of all that was met; where half of that is as good as sure, sure
     * is easy enough.
     */
    @Test
    void a_child_back_after_weeks_away_gets_easy_facts_first() {
        for (Practice practice : ALL) {
            double mean = practice.firstWhenBack.stream()
                    .mapToDouble(Onlooker.Seen::chance)
                    .average()
                    .orElseThrow();
            double median = practice.firstWhenBack.get(0).medianChance();
            // Measured: one multiscale child .044 below (an inverse comes along, easy or not), all others less than
            // .01.
            assertTrue(mean > Math.min(median, SURE) - 0.05, () -> practice + ": " + mean + " against " + median);
        }
    }
}
