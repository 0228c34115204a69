// SPDX-License-Identifier: Apache-2.0
package fourfold.insight;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.facts.Family;
import fourfold.facts.Operation;
import fourfold.facts.Question;
import fourfold.facts.Trace;
import fourfold.log.Answer;
import fourfold.log.DrillSession;
import fourfold.log.Moment;
import fourfold.log.Purpose;
import fourfold.log.Surface;
import fourfold.memory.MotorTime;
import fourfold.progress.History;
import fourfold.progress.Progress;
import fourfold.progress.Steering;
import fourfold.progress.WrongAnswer;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Guards against a family page, rates or weeks that tell another story than the log. */
class RecordsOfAFamilyTest {
    private static final UUID CHILD = new UUID(1, 1);
    private static final Instant MONDAY = Instant.parse("2026-03-02T15:00:00Z");
    private static final Question PRODUCT = Question.product(7, 8);
    private static final Question QUOTIENT = new Question(Operation.DIVIDE, 56, 7);

    private int position;

    private Answer answer(Question question, String typed, long millis, int day, int erasures) {
        Optional<Duration> whole = Optional.of(Duration.ofMillis(millis));
        return new Answer(
                new Answer.Place(CHILD, new UUID(2, day), ++position),
                new Moment(MONDAY.plus(Duration.ofDays(day)).plusSeconds(position), 60),
                Purpose.PRACTISE,
                question,
                new Answer.Typing(
                        typed,
                        new Answer.Times(
                                typed.isEmpty() ? Optional.empty() : Optional.of(Duration.ofMillis(millis - 300)),
                                whole),
                        erasures),
                Surface.TERMINAL);
    }

    @Test
    void everyAnswerOfTheFamilyIsCountedOnceAndNoneOfAnother() {
        FamilyRecord record = new FamilyRecord(Family.of(7, 8));
        record.accept(answer(PRODUCT, "56", 3000, 0, 0));
        record.accept(answer(PRODUCT.turnAround(), "54", 3000, 0, 0));
        record.accept(answer(PRODUCT, "54", 3000, 1, 0));
        record.accept(answer(PRODUCT, "", 20000, 1, 0));
        record.accept(answer(PRODUCT, "56", 5000, 8, 1));
        record.accept(answer(PRODUCT, "56", 6000, 8, 2));
        record.accept(answer(PRODUCT, "54", 3000, 1, 1));
        record.accept(answer(QUOTIENT, "7", 4000, 8, 0));
        record.accept(answer(Question.product(6, 9), "54", 2000, 8, 0));
        TraceRecord product = record.trace(Trace.product(Family.of(7, 8)));
        assertEquals(7, product.asked());
        assertEquals(3, product.right());
        assertEquals(1, product.missing());
        assertEquals(2, product.mended());
        assertEquals(2, product.weeks().size());
        assertEquals(2, product.wrong().size());
        assertEquals(
                WrongAnswer.Kind.OTHER_TABLE, product.wrong().get(0).answer().kind());
        assertEquals(1, record.trace(Trace.quotient(Family.of(7, 8), 7)).asked());
        // Seconds of thinking: the time to the first digit without the hands' usual share of it.
        double hands = MotorTime.unknown().firstKey(56, Surface.TERMINAL).toMillis() / 1000.0;
        assertEquals(2.7 - hands, product.weeks().get(0).seconds(), 1e-9);
        assertEquals(5.2 - hands, product.weeks().get(1).seconds(), 1e-9);
        assertEquals(2, record.weeks().size());
        assertEquals(5.2 - hands, record.weeks().get(1).seconds(), 1e-9);
        assertEquals(QUOTIENT, record.wrong(1).get(0).answer().question());
    }

    @Test
    void ratesAreToldForEachDrillAndOperationOnlyWhereEnoughWasTimed() {
        DrillRates rates = new DrillRates();
        for (int day = 0; day < 4; day++) {
            for (int i = 0; i < 5; i++) {
                rates.accept(answer(PRODUCT, "56", 4000 - 500L * day, day * 7, 0));
            }
            rates.accept(answer(QUOTIENT, "8", 2000, day * 7, 0));
        }
        List<DrillRates.OfDrill> drills = rates.drills();
        assertEquals(4, drills.size());
        // 10 digits in 20 s are 30 a minute.
        assertEquals(30, drills.get(0).products().orElseThrow().digitsPerMinute(), 1e-9);
        assertTrue(drills.get(0).quotients().isEmpty());
        assertTrue(
                DrillRates.digitsTrend(drills, Operation.MULTIPLY).orElseThrow().slope() > 4);
        assertTrue(DrillRates.digitsTrend(drills, Operation.DIVIDE).isEmpty());
        // 30, 240/7, 40 and 48 a minute, a week apart: the slopes in the middle are 40/7 and 6.
        Trend trend = DrillRates.digitsTrend(drills, Operation.MULTIPLY).orElseThrow();
        assertEquals(41.0 / 7, trend.slope(), 1e-9);
        assertEquals(30.0, trend.level(), 1);
        assertTrue(
                DrillRates.digitsTrend(drills.subList(0, 3), Operation.MULTIPLY).isPresent());
        assertTrue(
                DrillRates.digitsTrend(drills.subList(0, 2), Operation.MULTIPLY).isEmpty());
    }

    @Test
    void aWeekBeginsOnMondayAndEveryWeekSinceTheFirstDrillIsThere() {
        List<DrillSession> drills = IntStream.of(0, 1, 3, 4, 21)
                .mapToObj(day -> new DrillSession(
                        new UUID(2, day), CHILD, MONDAY.plus(Duration.ofDays(day)), 60, Duration.ofMinutes(8), day))
                .toList();
        long today = drills.get(4).localDay() + 1;
        Weeks weeks = Weeks.of(drills, today, 4);
        assertEquals(4, weeks.weeks().size());
        assertEquals(
                List.of(true, true, false, true, true, false, false),
                weeks.weeks().get(0).days());
        assertEquals(
                List.of(4, 0, 0, 1),
                weeks.weeks().stream().map(Weeks.Week::done).toList());
        assertEquals(drills.get(0).localDay(), weeks.weeks().get(0).monday());
        assertEquals(4.0 / 3, weeks.usualDays(), 1e-9);
        assertEquals(weeks.weeks(), weeks.newest(99));
        assertEquals(
                weeks.weeks().subList(weeks.weeks().size() - 2, weeks.weeks().size()), weeks.newest(2));
        assertEquals(weeks, Weeks.of(drills, today - 1, 4));
        assertEquals(3, Weeks.of(drills, today - 2, 4).weeks().size());
        // A drill that is dated later than today is not told yet.
        assertEquals(2, Weeks.of(drills, today - 20, 4).weeks().get(0).done());
        assertEquals(4, Weeks.of(List.of(), today, 4).usualDays());
    }

    @Test
    void aFamilyIsCountedWithEachOfItsTables() {
        List<TableCount> tables = TableCount.of(Progress.blank(Steering.NONE));
        assertEquals(10, tables.size());
        assertEquals(100, tables.stream().mapToInt(TableCount::families).sum());
        assertEquals(0, tables.stream().mapToInt(TableCount::met).sum());
        History history = new History()
                .asked(Family.of(2, 7), "0r 0r 0r 1r 1r")
                .asked(Family.of(2, 3), "0s 0s 0s 1s")
                .asked(Family.of(2, 2), "0w")
                .asked(Family.of(3, 3), "0v");
        List<TableCount> met = TableCount.of(history.progress());
        assertEquals("table 2: 10 families, 3 met, 2 accurate, 1 fluent", said(met, 2));
        // 2 × 3 is of the threes too, and 2 × 7 of the sevens.
        assertEquals("table 3: 10 families, 2 met, 1 accurate, 0 fluent", said(met, 3));
        assertEquals("table 7: 10 families, 1 met, 1 accurate, 1 fluent", said(met, 7));
    }

    private static String said(List<TableCount> tables, int table) {
        TableCount count =
                tables.stream().filter(t -> t.table() == table).findFirst().orElseThrow();
        return "table " + table + ": " + count.families() + " families, " + count.met() + " met, " + count.accurate()
                + " accurate, " + count.fluent() + " fluent";
    }
}
