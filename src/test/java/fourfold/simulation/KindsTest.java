// SPDX-License-Identifier: Apache-2.0
package fourfold.simulation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.facts.Families;
import fourfold.facts.Question;
import fourfold.outlook.Reply;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Guards against a seam that nobody can use, calendars that hang on chance, and children who are all alike. */
class KindsTest {
    private static final Duration LIMIT = Duration.ofSeconds(3);

    static List<MemoryKind> kinds() {
        return MemoryKind.all();
    }

    static Set<String> calendars() {
        return Calendar.ALL.keySet();
    }

    private static double right(SimulatedLearner child, Instant at) {
        return Families.questions().stream()
                .mapToDouble(q -> child.chanceRightWithin(q, at, LIMIT))
                .average()
                .orElseThrow();
    }

    @Test
    void aKindOfFewerThanThirtyLinesLearnsAndForgets() throws IOException {
        long lines = Files.readAllLines(Path.of("src/test/java/fourfold/simulation/ExampleKind.java")).stream()
                .filter(line -> !line.isBlank() && !line.strip().equals("}") && !line.startsWith("/**"))
                .count();
        assertTrue(lines < 30, "lines: " + lines);
        SimulatedLearnerKind kind = new ExampleKind();
        SimulatedLearner child = kind.create(1);
        Question question = Question.product(7, 8);
        double before = child.chanceRightWithin(question, SchoolYear.START, LIMIT);
        Instant at = SchoolYear.START;
        for (int i = 0; i < 10; i++) {
            at = at.plusSeconds(60);
            child.shown(question.fact(), at);
        }
        double after = child.chanceRightWithin(question, at.plusSeconds(300), LIMIT);
        double later = child.chanceRightWithin(question, at.plus(Duration.ofDays(300)), LIMIT);
        String seen = before + ", " + after + ", " + later;
        assertTrue(after > before + 0.05, seen);
        assertTrue(later < after - 0.05, seen);
    }

    @Test
    void noTwoKindsShareTheirMemory() {
        Set<Class<?>> memories = new HashSet<>();
        for (MemoryKind kind : kinds()) {
            SplittableRandom dice = new SplittableRandom(1);
            memories.add(
                    kind.memories(dice).apply(Families.traces().get(0), dice).getClass());
        }
        assertTrue(memories.size() >= 8);
        assertEquals(kinds().size(), memories.size());
    }

    /** Whoever plans by what a practice would do must be told what it does. */
    @ParameterizedTest
    @MethodSource("kinds")
    void whatPracticeWouldDoIsWhatItDoes(MemoryKind kind) {
        int recalled = 0;
        for (long seed = 1; seed <= 30; seed++) {
            SimulatedChild child = kind.blank(seed);
            Question question = Question.product(3, 7);
            for (int i = 0; i < 4; i++) {
                child.shown(question.fact(), SchoolYear.START.plus(Duration.ofDays(3L * i)));
            }
            Instant now = SchoolYear.START.plus(Duration.ofDays(11));
            Instant later = now.plus(Duration.ofDays(20));
            double told = child.chanceIfPractised(question, now, later, LIMIT);
            Reply reply = child.reply(question, now);
            if (reply.typed().equals("21") && reply.firstKey().compareTo(LIMIT) < 0) {
                recalled++;
                // Practice begins with the thinking, not with the question; that is seconds in weeks.
                assertEquals(told, child.chanceRightWithin(question, later, LIMIT), 0.01, kind.name());
            }
        }
        assertTrue(recalled >= 5, kind.name() + " recalled " + recalled);
    }

    @ParameterizedTest
    @MethodSource("kinds")
    void someChildrenKnowNothingAndSomeMost(MemoryKind kind) {
        double least = 1;
        double most = 0;
        for (long seed = 1; seed <= 30; seed++) {
            double known = right(kind.create(seed), SchoolYear.START);
            least = Math.min(least, known);
            most = Math.max(most, known);
        }
        assertTrue(least < 0.05, kind.name() + " " + least);
        assertTrue(most > 0.2, kind.name() + " " + most);
    }

    /** The same child answers fresh and after many minutes; the dice are the same, so only tiring can differ. */
    @Test
    void aLongSittingMakesAnswersSlower() {
        SimulatedChild child = new ActivationKind().blank(2);
        Question known = Question.product(2, 2);
        Instant begin = SchoolYear.START;
        for (int i = 0; i < 40; i++) {
            child.shown(known.fact(), begin.plus(Duration.ofDays(i)));
        }
        Instant day = begin.plus(Duration.ofDays(41));
        Duration limit = Duration.ofMillis(1500);
        double rested = child.chanceRightWithin(known, day.plusSeconds(900), limit);
        for (int i = 0; i < 90; i++) {
            child.reply(Question.product(9, 10), day.plusSeconds(10L * i));
        }
        assertTrue(child.chanceRightWithin(known, day.plusSeconds(900), limit) < rested - 0.005);
    }

    @ParameterizedTest
    @MethodSource("calendars")
    void aCalendarHangsOnTheSeedAlone(String name) {
        Calendar calendar = Calendar.named(name).apply(7);
        assertEquals(calendar.drills(), Calendar.named(name).apply(7).drills());
        assertEquals(calendar.lessons(), Calendar.named(name).apply(7).lessons());
        assertTrue(!calendar.drills().equals(Calendar.named(name).apply(8).drills()));
        assertEquals(calendar.drills().stream().sorted().toList(), calendar.drills());
        assertEquals(
                calendar.lessons().stream().map(Lesson::at).sorted().toList(),
                calendar.lessons().stream().map(Lesson::at).toList());
        Instant end = SchoolYear.START.plus(Duration.ofDays(7L * calendar.weeks()));
        assertTrue(calendar.drills().get(calendar.drills().size() - 1).isBefore(end));
        assertThrows(IllegalArgumentException.class, () -> Calendar.named("never"));
    }

    @Test
    void atMostFifteenPercentOfDrillsAreMissedAndPausesArePauses() {
        double held = 0;
        for (long seed = 1; seed <= 200; seed++) {
            held += HomeCalendar.fourDays(seed).drills().size() / 144.0;
            assertTrue(HomeCalendar.fourDays(seed).drills().size() > 0.75 * 144);
            assertTrue(HomeCalendar.twoDays(seed).drills().size() <= 72);
            assertEquals(71, longestPause(HomeCalendar.summer(seed)), 6);
            assertEquals(22, longestPause(HomeCalendar.twoBreaks(seed)), 6);
        }
        assertEquals(0.925, held / 200, 0.01);
    }

    private static double longestPause(Calendar calendar) {
        double longest = 0;
        List<Instant> drills = calendar.drills();
        for (int i = 1; i < drills.size(); i++) {
            longest = Math.max(
                    longest, Duration.between(drills.get(i - 1), drills.get(i)).toHours() / 24.0);
        }
        return longest;
    }
}
