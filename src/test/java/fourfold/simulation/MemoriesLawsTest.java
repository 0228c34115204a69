// SPDX-License-Identifier: Apache-2.0
package fourfold.simulation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.facts.Families;
import fourfold.facts.Family;
import fourfold.facts.Question;
import fourfold.facts.Trace;
import fourfold.simulation.TraceMemory.How;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/**
 * Guards against memories that only bear the name of their idea. The values follow from the sentences in each class by
 * hand; the chain of states is held to small steps of time.
 */
class MemoriesLawsTest {
    private static final double DAY = 86_400;

    private static double chance(double strength) {
        return 1 / (1 + Math.exp(-strength));
    }

    private static <T extends TraceMemory> T after(T memory, double... times) {
        for (double time : times) {
            memory.practised(time, How.RECALLED);
        }
        return memory;
    }

    /** Logan 1988: with n instances the race is won with 1 − e^(−θn); the winner's time falls with a power of n. */
    @Test
    void moreInstancesWinTheRaceMoreOftenAndSooner() {
        InstanceMemory.Numbers lasting = new InstanceMemory.Numbers(0.5, 1e-9, DAY, 0, 1);
        double[] seconds = new double[3];
        for (int i = 0; i < 3; i++) {
            int n = (int) Math.pow(4, i);
            double[] times = new double[n];
            TraceMemory memory = after(new InstanceMemory(lasting), times);
            assertEquals(1 - Math.exp(-0.5 * n), chance(memory.strength(1)), 1e-6);
            seconds[i] = memory.thinking(memory.strength(1));
        }
        assertTrue(seconds[0] > seconds[1] && seconds[1] > seconds[2]);
        // Where counting hardly ever wins, a pure power is left: twice as many, 2^(-1/3) of the time.
        TraceMemory many = new InstanceMemory(lasting);
        assertEquals(Math.pow(2, -1 / 3.0), many.thinking(24) / many.thinking(12), 0.001);
    }

    /** Half of what the store can give is left after one half-life; practice in the buffer changes nothing. */
    @Test
    void aStoreFadesByHalvesAndTheBufferTeachesNothing() {
        BufferMemory.Numbers numbers = new BufferMemory.Numbers(10 * DAY, 30 * DAY, 0.5, 0.98);
        TraceMemory once = after(new BufferMemory(numbers, new BufferMemory.Buffer(2, 45)), 0);
        assertEquals(0.49, chance(once.strength(10 * DAY)), 1e-9);
        assertTrue(chance(once.strength(40)) > 0.98 && once.strength(50) < 4);
        TraceMemory crammed = after(new BufferMemory(numbers, new BufferMemory.Buffer(2, 45)), 0, 20, 40);
        assertEquals(once.strength(10 * DAY), crammed.strength(10 * DAY + 40), 1e-9);
        TraceMemory spaced = after(new BufferMemory(numbers, new BufferMemory.Buffer(2, 45)), 0, 10 * DAY);
        double halfLife = 10 + 30 * 0.51 * Math.sqrt(0.49);
        assertEquals(0.98 * Math.pow(2, -20 / halfLife), chance(spaced.strength(30 * DAY)), 1e-9);
    }

    @Test
    void twoOtherFactsPushAFactOutOfTheBuffer() {
        BufferMemory.Buffer buffer = new BufferMemory.Buffer(2, 45);
        BufferMemory.Numbers numbers = new BufferMemory.Numbers(0.001 * DAY, 1, 0.5, 0.98);
        TraceMemory first = after(new BufferMemory(numbers, buffer), 0);
        TraceMemory second = after(new BufferMemory(numbers, buffer), 5);
        assertEquals(4, first.strength(6), 1e-9);
        after(new BufferMemory(numbers, buffer), 10);
        assertTrue(first.strength(11) < 4);
        assertEquals(4, second.strength(11), 1e-9);
    }

    /** Bjork and Bjork 1992: storage gains more from a harder retrieval, and what is stored more is lost more slowly. */
    @Test
    void aHarderRetrievalIsKeptLonger() {
        TwoStrengthMemory.Numbers numbers = new TwoStrengthMemory.Numbers(2.7, 0.04, 0.293, 2_280, 7.4, -2.5);
        TraceMemory easy = seenThen(numbers, 60, How.RECALLED);
        TraceMemory hard = seenThen(numbers, DAY, How.RECALLED);
        TraceMemory failed = seenThen(numbers, DAY, How.SEEN);
        assertEquals(4.9, easy.strength(60), 1e-9);
        assertEquals(4.9, hard.strength(DAY), 1e-9);
        assertTrue(hard.strength(31 * DAY) > easy.strength(30 * DAY + 60) + 0.5);
        assertTrue(failed.strength(31 * DAY) < hard.strength(31 * DAY) - 0.5);
    }

    private static TraceMemory seenThen(TwoStrengthMemory.Numbers numbers, double at, How how) {
        TraceMemory memory = new TwoStrengthMemory(numbers);
        memory.practised(0, How.SEEN);
        memory.practised(at, how);
        return memory;
    }

    /** The chain of states in closed form against steps of a minute. */
    @Test
    void theStatesAreThoseOfTheChain() {
        StatesMemory.Numbers n = new StatesMemory.Numbers(0.6, 0.8, 0.5, 1, 20, 200);
        double[] gaps = {0.5, 3, 12};
        StatesMemory memory = new StatesMemory(n);
        double fresh = 0;
        double settled = 0;
        double lasting = 0;
        double at = 0;
        for (double gap : gaps) {
            memory.practised(at, How.RECALLED);
            fresh += (1 - fresh - settled - lasting) * 0.6;
            lasting += settled * 0.5;
            settled *= 0.5;
            double step = 1.0 / 1440;
            for (double passed = 0; passed < gap - step / 2; passed += step) {
                double leftFresh = fresh * step;
                double leftLasting = lasting * step / 200;
                settled += 0.8 * leftFresh + leftLasting - settled * step / 20;
                fresh -= leftFresh;
                lasting -= leftLasting;
            }
            at += gap * DAY;
            assertEquals(fresh + settled + lasting, chance(memory.strength(at)), 1e-3, "day " + at / DAY);
        }
    }

    private static CompetingMemory[] network(double likeness) {
        CompetingMemory.Numbers numbers = new CompetingMemory.Numbers(2, 0.5, 0.2, likeness, 1, 1, 0.8);
        CompetingMemory[] network = new CompetingMemory[Trace.COUNT];
        for (Trace trace : Families.traces()) {
            network[trace.index()] = new CompetingMemory(numbers, trace, network);
        }
        return network;
    }

    private static CompetingMemory of(CompetingMemory[] network, int a, int b) {
        return network[Family.of(a, b).index()];
    }

    @Test
    void aNeighbourThatIsLearnedGetsInTheWay() {
        CompetingMemory[] network = network(0.5);
        after(of(network, 6, 8), 0, DAY);
        double alone = of(network, 6, 8).strength(2 * DAY);
        after(of(network, 3, 4), DAY);
        assertEquals(alone, of(network, 6, 8).strength(2 * DAY), 1e-12);
        after(of(network, 6, 7), DAY, 1.5 * DAY);
        assertTrue(of(network, 6, 8).strength(2 * DAY) < alone - 0.05);
    }

    @Test
    void anErrorGivenComesBackUntilTheRightAnswerIsSeen() {
        SplittableRandom dice = new SplittableRandom(3);
        CompetingMemory[] network = network(0);
        CompetingMemory memory = after(of(network, 6, 8), 0);
        double before = memory.strength(DAY);
        int rare = count(memory, 42, dice);
        memory.missed(DAY, 42);
        memory.missed(DAY, 42);
        memory.missed(DAY, 42);
        assertTrue(memory.strength(DAY) < before - 0.1);
        int often = count(memory, 42, dice);
        assertTrue(often > rare, rare + ", then " + often);
        for (int i = 0; i < 6; i++) {
            memory.practised(DAY + i, How.SEEN);
        }
        assertTrue(count(memory, 42, dice) < often);
    }

    private static int count(CompetingMemory memory, int answer, SplittableRandom dice) {
        int count = 0;
        for (int i = 0; i < 20_000; i++) {
            count += memory.wrongAnswer(Question.product(6, 8), DAY, dice) == answer ? 1 : 0;
        }
        return count;
    }

    /** The delta rule: what is nearly certain gains next to nothing. */
    @Test
    void aSecondLessonInTheSameSurroundingsAddsLittle() {
        CompetingMemory massed = after(of(network(0), 6, 8), 0, 0, 0, 0, 60, 120);
        CompetingMemory four = after(of(network(0), 6, 8), 0, 0, 0, 0);
        CompetingMemory spaced = after(of(network(0), 6, 8), 0, 0, 0, 0, 9 * DAY, 9 * DAY + 60);
        double later = 40 * DAY;
        double crammed = massed.strength(later) - four.strength(later);
        double gained = spaced.strength(later + 9 * DAY) - four.strength(later);
        assertTrue(gained > 2 * crammed, gained + " and " + crammed);
    }
}
