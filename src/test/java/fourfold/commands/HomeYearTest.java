// SPDX-License-Identifier: Apache-2.0
package fourfold.commands;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.facts.Family;
import fourfold.facts.Operation;
import fourfold.facts.Question;
import fourfold.log.ActionRecord;
import fourfold.log.Answer;
import fourfold.log.Child;
import fourfold.log.DrillSession;
import fourfold.log.ParentAction;
import fourfold.log.ParentAction.CalendarEntry;
import fourfold.progress.Calendar;
import fourfold.progress.CalendarEntries;
import fourfold.progress.DateSpan;
import fourfold.progress.Mastery;
import fourfold.progress.Progress;
import fourfold.progress.Steering;
import fourfold.scheduling.LastingGain;
import fourfold.simulation.HomeCalendar;
import fourfold.simulation.SchoolYear;
import fourfold.simulation.SimulatedLearnerKind;
import fourfold.store.Store;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A home's year, simulated: four days a week, a lesson on Mondays, two times three weeks off, each table's division four
 * weeks after its multiplication, all of it written into the calendar. Guards against a drill that leaves the calendar on
 * any day of it. The pages of weeks 1, 10, 20 and 36 are kept; {@code -Dpictures=write} writes them anew.
 */
class HomeYearTest {
    private static final Path PICTURES = Path.of("src/test/resources/screens/home-year-80x24.txt");
    private static final long SEED = 7;
    private static final UUID CHILD = new UUID(SEED, -1);
    private static final LocalDate START = LocalDate.ofInstant(SchoolYear.START, ZoneOffset.UTC);

    /** As the lessons of {@link HomeCalendar} go, in school weeks. */
    private static final String TABLES = "2:1/5 5:3/7 10:5/9 3:7/11 4:9/13 8:11/15 6:13/17 9:15/19 7:17/21 1:-/5";

    @TempDir
    private Path folder;

    private final List<Answer> log = new ArrayList<>();

    private static List<ActionRecord> acts() {
        List<ActionRecord> acts = new ArrayList<>();
        for (ParentAction action : List.of(
                CalendarEntries.start(START),
                CalendarEntries.days(CalendarEntries.namedDays("Mon Tue Thu Fri")),
                CalendarEntries.off(pause(13), true),
                CalendarEntries.off(pause(25), true),
                new CalendarEntry("tables", TABLES))) {
            acts.add(new ActionRecord(
                    new UUID(9, acts.size()), CHILD, SchoolYear.START.minusSeconds(60 - acts.size()), 0, action));
        }
        return acts;
    }

    private static DateSpan pause(int week) {
        return new DateSpan(START.plusWeeks(week), START.plusWeeks(week + 3L).minusDays(1));
    }

    @Test
    void aWholeYearIsPractisedByTheCalendar() throws IOException {
        Steering steering = Steering.of(acts());
        SchoolYear year = new SchoolYear(
                SimulatedLearnerKind.named(List.of("two-strength")).get(0).create(SEED),
                new LastingGain(),
                Progress.blank(steering),
                HomeCalendar.twoBreaks(SEED),
                SEED,
                log::add);
        StringBuilder pictures = new StringBuilder();
        for (int week : new int[] {1, 10, 20, 36}) {
            year.run(week);
            take(pictures, week, year.now());
        }
        for (Answer answer : log) {
            answer.question().ifPresent(question -> isOpen(steering.calendar(), answer, question));
        }
        Progress end = year.progress();
        long fluent = end.families(Mastery.FLUENT);
        assertTrue(end.families(Mastery.ACQUIRING) >= 50 && fluent >= 35, fluent + " families fluent");
        for (int table : new int[] {2, 5, 10, 3, 4, 8, 6, 9, 7}) {
            assertTrue(
                    log.stream()
                            .anyMatch(a -> a.prompt() instanceof Question q
                                    && q.operation() == Operation.DIVIDE
                                    && q.right() == table),
                    "÷ " + table + " has come");
        }
        if ("write".equals(System.getProperty("pictures"))) {
            Files.writeString(PICTURES, pictures);
        }
        assertEquals(Files.readString(PICTURES), pictures.toString());
    }

    private static void isOpen(Calendar calendar, Answer answer, Question question) {
        LocalDate day = LocalDate.ofEpochDay(answer.localDay());
        Family family = question.family();
        boolean rule = family.contains(1);
        assertTrue(
                rule
                        || isOpen(calendar, family.low(), Operation.MULTIPLY, day)
                        || isOpen(calendar, family.high(), Operation.MULTIPLY, day),
                () -> answer.prompt() + " on " + day);
        if (answer.prompt() instanceof Question signed && signed.operation() == Operation.DIVIDE) {
            assertTrue(isOpen(calendar, signed.right(), Operation.DIVIDE, day), () -> signed + " on " + day);
        }
    }

    private static boolean isOpen(Calendar calendar, int table, Operation operation, LocalDate day) {
        return calendar.opens(table, operation).filter(d -> !d.isAfter(day)).isPresent();
    }

    private void take(StringBuilder pictures, int week, Instant last) {
        Path file = folder.resolve(week + ".db");
        try (Store store = Store.open(file)) {
            store.add(new Child(CHILD, "Mina", SchoolYear.START.minusSeconds(600)));
            store.keepActions(acts());
            Map<UUID, DrillSession> sessions = new LinkedHashMap<>();
            for (Answer a : log) {
                sessions.computeIfAbsent(
                        a.drill(), d -> new DrillSession(d, CHILD, a.askedAt(), 0, Duration.ofMinutes(8), 1));
            }
            store.keepAll(sessions.values().stream().toList(), log);
        }
        try (Journey journey = new Journey(file, last.plus(Duration.ofHours(2)), 80, 24, true)) {
            pictures.append("---- week ").append(week).append(", the calendar\n");
            pictures.append(journey.keys("3 k").picture());
            pictures.append("---- week ").append(week).append(", the plan\n");
            pictures.append(journey.keys("Esc p").picture());
        }
    }
}
