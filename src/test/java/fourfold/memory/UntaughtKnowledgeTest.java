// SPDX-License-Identifier: Apache-2.0
package fourfold.memory;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.facts.Families;
import fourfold.facts.Family;
import fourfold.facts.Question;
import fourfold.log.Purpose;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.apache.commons.math3.analysis.integration.SimpsonIntegrator;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Guards against a child of whom one answer before any lesson says nothing about the other tables. */
class UntaughtKnowledgeTest {
    private static final UntaughtKnowledge NOTHING = UntaughtKnowledge.NOTHING_KNOWN;

    private static int family(String text) {
        return Family.parse(text).index();
    }

    private static UntaughtKnowledge after(List<Boolean> known, int family) {
        UntaughtKnowledge knowledge = NOTHING;
        for (boolean each : known) {
            knowledge = knowledge.afterProbe(family, each);
        }
        return knowledge;
    }

    @Property(tries = 100)
    void aProductKnownMakesEveryFamilyMoreLikelyAndAMissEachLess(@ForAll List<Boolean> before, @ForAll int any) {
        UntaughtKnowledge knowledge = after(before, family("3x4"));
        int asked = Math.floorMod(any, Families.COUNT);
        for (int f = 0; f < Families.COUNT; f++) {
            assertTrue(knowledge.afterProbe(asked, true).chance(f) >= knowledge.chance(f));
            assertTrue(knowledge.afterProbe(asked, false).chance(f) <= knowledge.chance(f));
        }
    }

    /** The order that teachers expect: rules, doubles and fives, small tables, the hard ten. Common practice. */
    @Test
    void theOnesAreMoreLikelyThanTheTwosAndTheseThanTheHardOnes() {
        List<String> fromEasy = List.of("1x7", "4x10", "2x5", "2x7", "4x6", "6x9", "8x9");
        for (int i = 1; i < fromEasy.size(); i++) {
            assertTrue(NOTHING.chance(family(fromEasy.get(i - 1))) > NOTHING.chance(family(fromEasy.get(i))));
        }
    }

    /**
     * The chance of 3 × 4, whose difficulty is nought, after as many products known and missed, against the integral of the
     * logistic model over a normal ability by the Simpson rule of Apache Commons Math.
     */
    @ParameterizedTest
    @CsvSource({"0, 0", "1, 0", "0, 1", "3, 0", "2, 2"})
    void itIsTheIntegralOfTheLogisticModelOverAllAbilities(int known, int missed) {
        UntaughtKnowledge knowledge = NOTHING;
        for (int i = 0; i < known + missed; i++) {
            knowledge = knowledge.afterProbe(family("3x4"), i < known);
        }
        NormalDistribution abilities = new NormalDistribution(0, 3);
        SimpsonIntegrator simpson = new SimpsonIntegrator();
        double[] sums = new double[2];
        for (int with = 0; with < 2; with++) {
            int too = with;
            sums[with] = simpson.integrate(
                    1_000_000,
                    x -> {
                        double chance = 1 / (1 + Math.exp(-1.5 * x));
                        double answered = 0.04 + 0.92 * chance;
                        return abilities.density(x)
                                * Math.pow(answered, known)
                                * Math.pow(1 - answered, missed)
                                * (too == 1 ? chance : 1);
                    },
                    -12,
                    12);
        }
        assertEquals(sums[1] / sums[0], knowledge.chance(family("3x4")), 0.02);
    }

    @Test
    void aLessonTakesALittleOfWhatIsSureBack() {
        UntaughtKnowledge missed = after(List.of(false, false, false), family("2x5"));
        double before = missed.chance(family("2x5"));
        double later = missed.afterLesson().chance(family("2x5"));
        assertTrue(later > before && later < before + 0.02, before + " then " + later);
    }

    /** What was taught, or asked after it was taught, says nothing about what never was. */
    @ParameterizedTest
    @CsvSource({"PROBE, 3, true", "PRACTISE, 3, false", "AGAIN, 3, false"})
    void onlyAProductAskedUntaughtMovesIt(Purpose purpose, int factor, boolean moves) {
        Memory blank = Memory.blank(Parameters.usual());
        Memory memory = blank.after(
                Given.answer(Question.product(factor, 4), Given.START, Integer.toString(4 * factor), 1, purpose),
                MotorTime.unknown());
        Family other = Family.parse("6x7");
        assertEquals(moves, memory.chanceKnown(other) > blank.chanceKnown(other));
    }
}
