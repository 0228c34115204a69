// SPDX-License-Identifier: Apache-2.0
package fourfold.progress;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.facts.Families;
import fourfold.facts.Operation;
import fourfold.log.ActionRecord;
import fourfold.log.AwayPractice;
import fourfold.log.ParentAction;
import java.time.DayOfWeek;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Guards against a calendar that counts weeks wrongly, forgets what was written, or opens a table on another day. */
class CalendarTest {
    private static final Instant NOON = Instant.parse("2026-09-01T12:00:00Z");
    private static final LocalDate MONDAY = LocalDate.of(2026, 9, 7);

    private final List<ActionRecord> acts = new ArrayList<>();

    private UUID then(ParentAction action) {
        UUID id = new UUID(9, acts.size() + 1L);
        acts.add(new ActionRecord(id, new UUID(1, 1), NOON.plusSeconds(acts.size()), 120, action));
        return id;
    }

    private Calendar calendar() {
        return Steering.of(acts).calendar();
    }

    private void entry(String part, String text) {
        then(new ParentAction.CalendarEntry(part, text));
    }

    @Test
    void withoutAnActTheCalendarIsEmptyAndNothingGoesByDate() {
        assertEquals(Calendar.EMPTY, calendar());
        assertFalse(calendar().isFollowed());
        assertEquals(Optional.empty(), calendar().week(MONDAY));
    }

    /** ISO 8601 weeks, from Monday to Sunday: 7 September 2026 is a Monday. */
    @ParameterizedTest
    @CsvSource({
        "2026-09-06, ",
        "2026-09-07, 1",
        "2026-09-13, 1",
        "2026-09-14, 2",
        "2026-12-14, 15",
        "2026-12-20, 15",
        "2026-12-21, ",
        "2027-01-03, ",
        "2027-01-04, 16",
        "2027-06-28, 41"
    })
    void schoolWeeksAreCountedFromTheStartAndWeeksOffAreLeftOut(LocalDate day, Integer week) {
        entry("start", "2026-09-07");
        entry("off", "2026-12-21..2027-01-03");
        assertEquals(Optional.ofNullable(week), calendar().week(day));
        if (week != null) {
            assertEquals(Calendar.monday(day), calendar().firstDay(week).orElseThrow());
        }
    }

    @Test
    void aYearThatStartsInTheMiddleOfAWeekBeginsWithThatWeek() {
        entry("start", "2026-09-03");
        assertEquals(Optional.of(1), calendar().week(LocalDate.of(2026, 9, 4)));
        assertEquals(Optional.of(LocalDate.of(2026, 9, 3)), calendar().firstDay(1));
        assertEquals(Optional.of(MONDAY), calendar().firstDay(2));
    }

    @Test
    void aWeekIsOffOnlyWhenAllItsDaysOfPracticeAre() {
        entry("start", "2026-09-07");
        entry("off", "2026-10-26..2026-10-29");
        assertFalse(calendar().isWeekOff(LocalDate.of(2026, 10, 26)));
        entry("days", "Mon Tue Wed Thu");
        assertTrue(calendar().isWeekOff(LocalDate.of(2026, 10, 26)));
        assertEquals(4, Steering.of(acts).settings().days());
        assertTrue(calendar().isSchoolDay(LocalDate.of(2026, 10, 22)));
        assertFalse(calendar().isSchoolDay(LocalDate.of(2026, 10, 23)), "a Friday");
        assertFalse(calendar().isSchoolDay(LocalDate.of(2026, 10, 27)), "off");
        assertFalse(calendar().isSchoolDay(LocalDate.of(2026, 9, 3)), "before the start");
    }

    @Test
    void howManyDaysAWeekAndWhichHaveOneSource() {
        entry("days", "Mon Wed Fri");
        assertEquals(3, Steering.of(acts).settings().days());
        then(new ParentAction.Choose("days", "5"));
        assertEquals(5, Steering.of(acts).settings().days());
        assertEquals(Set.of(), calendar().days());
        entry("days", "2");
        assertEquals(2, Steering.of(acts).settings().days());
    }

    @ParameterizedTest
    @CsvSource({
        "2026-10-01..2026-10-05, 2026-10-06..2026-10-09, , 2026-10-01..2026-10-09",
        "2026-10-01..2026-10-09, , 2026-10-04..2026-10-05, 2026-10-01..2026-10-03 2026-10-06..2026-10-09",
        "2026-10-01..2026-10-09, , 2026-09-01..2026-10-08, 2026-10-09",
        "2026-10-01, 2026-10-03, , 2026-10-01 2026-10-03",
        "2026-10-01..2026-10-02, , 2026-10-01..2026-10-02, ''"
    })
    void daysOffAreAddedAndTakenBackAsSpans(String off, String more, String on, String left) {
        entry("off", off);
        if (more != null) {
            entry("off", more);
        }
        if (on != null) {
            entry("on", on);
        }
        assertEquals(
                left,
                String.join(
                        " ", calendar().off().stream().map(DateSpan::toString).toList()));
    }

    @Test
    void notesOfADayAndOfAWeekAreKeptReplacedAndRemoved() {
        then(CalendarEntries.note(LocalDate.of(2026, 9, 10), false, "fractions = parts"));
        then(CalendarEntries.note(LocalDate.of(2026, 9, 10), true, "time"));
        assertEquals(
                Map.of(LocalDate.of(2026, 9, 10), "fractions = parts"),
                calendar().dayLabels());
        assertEquals(Map.of(MONDAY, "time"), calendar().weekLabels());
        then(CalendarEntries.note(LocalDate.of(2026, 9, 13), true, ""));
        assertEquals(Map.of(), calendar().weekLabels());
    }

    @Test
    void aTableOpensOnTheFirstDayOfItsWeekAndItsDivisionOnItsOwn() {
        entry("start", "2026-09-07");
        entry("tables", "7:5/12 8:-/later");
        Calendar calendar = calendar();
        assertEquals(Optional.of(LocalDate.of(2026, 10, 5)), calendar.opens(7, Operation.MULTIPLY));
        assertEquals(Optional.of(LocalDate.of(2026, 11, 23)), calendar.opens(7, Operation.DIVIDE));
        assertTrue(calendar.isByProgress(8, Operation.MULTIPLY));
        assertFalse(calendar.isByProgress(8, Operation.DIVIDE));
        assertEquals(Optional.empty(), calendar.opens(8, Operation.DIVIDE));
        entry("off", "2026-10-05..2026-10-11");
        assertEquals(Optional.of(LocalDate.of(2026, 10, 12)), calendar().opens(7, Operation.MULTIPLY), "a week later");
    }

    @Test
    void withoutAStartNoWeekHasADateAndTablesGoByProgress() {
        entry("tables", "7:5/12");
        assertTrue(calendar().isByProgress(7, Operation.MULTIPLY));
        assertFalse(calendar().isFollowed());
    }

    @Test
    void whatWasTaughtTodayIsOpenFromTheLocalDayOnAndAnUndoTakesThatBack() {
        UUID act = then(new ParentAction.Taught(7, Operation.DIVIDE));
        assertEquals(Optional.of(LocalDate.of(2026, 9, 1)), calendar().opens(7, Operation.DIVIDE));
        assertTrue(calendar().isFollowed());
        then(new ParentAction.Undo(act));
        assertEquals(Calendar.EMPTY, calendar());
    }

    @Test
    void anotherWeekForATableIsTheNewerWord() {
        entry("start", "2026-09-07");
        then(new ParentAction.Taught(7, Operation.MULTIPLY));
        entry("tables", "7:20/24");
        assertEquals(calendar().firstDay(20), calendar().opens(7, Operation.MULTIPLY));
    }

    @Test
    void practiceAwayFromTheScreenCountsForItsDay() {
        LocalDate day = LocalDate.of(2026, 9, 9);
        then(new ParentAction.Away(day, AwayPractice.CARDS));
        UUID game = then(new ParentAction.Away(day, AwayPractice.GAME));
        assertEquals(
                Map.of(day, Set.of(AwayPractice.CARDS, AwayPractice.GAME)),
                calendar().away());
        then(new ParentAction.Undo(game));
        assertEquals(Map.of(day, Set.of(AwayPractice.CARDS)), calendar().away());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "start=yesterday", "start=", "days=", "days=Mon Smarch", "days=9", "off=2026-10-05..2026-10-01", "off=",
                "tables=7", "tables=11:1/2", "tables=7:0/2", "tables=", "day=", "week=x y", "moon=full"
            })
    void whatCannotBeReadChangesNothing(String written) {
        int sign = written.indexOf('=');
        entry(written.substring(0, sign), written.substring(sign + 1));
        assertEquals(Calendar.EMPTY, calendar());
    }

    /** Written by the program itself and read again. */
    @Test
    void whatTheProgramWritesItReads() {
        then(CalendarEntries.start(MONDAY));
        then(CalendarEntries.days(EnumSet.of(DayOfWeek.FRIDAY, DayOfWeek.MONDAY)));
        then(CalendarEntries.off(DateSpan.parse("2026-12-21..2027-01-03"), true));
        then(CalendarEntries.tables(CalendarBeginning.ENGLAND.lessons()));
        then(CalendarEntries.early(true));
        Calendar calendar = calendar();
        assertEquals(Optional.of(MONDAY), calendar.start());
        assertEquals(Set.of(DayOfWeek.MONDAY, DayOfWeek.FRIDAY), calendar.days());
        assertEquals(List.of(DateSpan.parse("2026-12-21..2027-01-03")), calendar.off());
        assertEquals(CalendarBeginning.ENGLAND.lessons(), Map.copyOf(new java.util.TreeMap<>(calendar.lessons())));
        assertTrue(calendar.early());
        then(CalendarEntries.noStart());
        assertEquals(Optional.empty(), calendar().start());
    }

    /**
     * Department for Education 2013, The national curriculum in England, mathematics programmes of study, key stages 1 and
     * 2: year 2 the 2, 5 and 10 tables, year 3 the 3, 4 and 8, year 4 all up to 12 × 12.
     */
    @Test
    void englandsOrderIsThePublishedOneSpreadOverTheYearWithDivisionLater() {
        Map<Integer, TableLessons> lessons = CalendarBeginning.ENGLAND.lessons();
        List<Integer> order = lessons.keySet().stream()
                .filter(t -> t != 1)
                .sorted(java.util.Comparator.comparing(t -> of(lessons, t).multiply()))
                .toList();
        assertEquals(List.of(2, 5, 10, 3, 4, 8, 6, 9, 7), order);
        assertEquals(order, Families.USUAL_ORDER.subList(0, 9));
        for (int table : order) {
            assertTrue(of(lessons, table).divide() - of(lessons, table).multiply() >= 4);
            assertTrue(of(lessons, table).divide() < Calendar.WEEKS);
        }
        assertEquals(TableLessons.BY_PROGRESS, of(lessons, 1).multiply());
    }

    @Test
    void emptyWaitsForTheParentsWordAndByProgressForNothing() {
        then(CalendarEntries.tables(CalendarBeginning.EMPTY.lessons()));
        for (int table = 1; table <= 10; table++) {
            assertEquals(Optional.empty(), calendar().opens(table, Operation.MULTIPLY));
            assertFalse(calendar().isByProgress(table, Operation.MULTIPLY));
        }
        then(CalendarEntries.tables(CalendarBeginning.PROGRESS.lessons()));
        assertEquals(Calendar.EMPTY, calendar());
    }

    @Test
    void aSpanThatEndsBeforeItBeginsIsNone() {
        assertThrows(IllegalArgumentException.class, () -> DateSpan.parse("2026-10-05..2026-10-01"));
        assertThrows(IllegalArgumentException.class, () -> DateSpan.parse("2026-13-01"));
    }

    private static TableLessons of(Map<Integer, TableLessons> lessons, int table) {
        return lessons.getOrDefault(table, TableLessons.NONE);
    }
}
