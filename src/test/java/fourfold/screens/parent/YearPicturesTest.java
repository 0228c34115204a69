// SPDX-License-Identifier: Apache-2.0
package fourfold.screens.parent;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.insight.Today;
import fourfold.insight.YearView;
import fourfold.log.ActionRecord;
import fourfold.log.Answer;
import fourfold.log.AwayPractice;
import fourfold.log.Child;
import fourfold.log.DrillSession;
import fourfold.log.ParentAction;
import fourfold.plain.YearText;
import fourfold.progress.CalendarEntries;
import fourfold.progress.DateSpan;
import fourfold.progress.Progress;
import fourfold.progress.Steering;
import fourfold.progress.TableLessons;
import fourfold.scheduling.LastingGain;
import fourfold.simulation.CompetingKind;
import fourfold.simulation.HomeCalendar;
import fourfold.simulation.SchoolYear;
import fourfold.terminal.Picture;
import fourfold.words.Words;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.DayOfWeek;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The year's page in weeks 1, 10, 20 and 36 of a home year that is played through: four days a week, twice three weeks off, a
 * table every two weeks and its division four weeks later. {@code -Dpictures=write} writes the pictures anew.
 */
class YearPicturesTest {
    private static final Path FOLDER = Path.of("src/test/resources/screens");
    private static final long SEED = 5;
    private static final UUID CHILD = new UUID(SEED, -1);
    private static final LocalDate START = LocalDate.parse("2025-09-01");
    private static final int[] TABLES = {2, 5, 10, 3, 4, 8, 6, 9, 7};
    private static final List<Answer> ANSWERS = new ArrayList<>();
    private static final List<ActionRecord> ACTIONS = new ArrayList<>();

    @BeforeAll
    static void theYearIsPlayed() {
        Map<Integer, TableLessons> lessons = new LinkedHashMap<>();
        for (int i = 0; i < TABLES.length; i++) {
            lessons.put(TABLES[i], new TableLessons(1 + 2 * i, 5 + 2 * i));
        }
        keep(CalendarEntries.start(START));
        keep(CalendarEntries.days(
                EnumSet.of(DayOfWeek.MONDAY, DayOfWeek.TUESDAY, DayOfWeek.THURSDAY, DayOfWeek.FRIDAY)));
        keep(CalendarEntries.off(span(13), true));
        keep(CalendarEntries.off(span(25), true));
        keep(CalendarEntries.tables(lessons));
        keep(new ParentAction.Away(START.plusDays(2), AwayPractice.GAME));
        new SchoolYear(
                        new CompetingKind().create(SEED),
                        new LastingGain(),
                        Progress.blank(Steering.of(ACTIONS)),
                        HomeCalendar.twoBreaks(SEED),
                        SEED,
                        ANSWERS::add)
                .run(36);
    }

    private static DateSpan span(int week) {
        return new DateSpan(START.plusWeeks(week), START.plusWeeks(week + 3).minusDays(1));
    }

    private static void keep(ParentAction action) {
        ACTIONS.add(new ActionRecord(
                new UUID(9, ACTIONS.size()), CHILD, SchoolYear.START.minusSeconds(60 - ACTIONS.size()), 0, action));
    }

    private static Progress progress(LocalDate day) {
        Progress.Fold fold = Progress.Fold.ofLevels(Steering.of(ACTIONS));
        ANSWERS.stream().takeWhile(a -> a.localDay() < day.toEpochDay()).forEach(fold);
        return fold.progress();
    }

    private static List<DrillSession> drills(LocalDate day) {
        Map<UUID, Instant> starts = new LinkedHashMap<>();
        ANSWERS.stream()
                .takeWhile(a -> a.localDay() < day.toEpochDay())
                .forEach(a -> starts.putIfAbsent(a.drill(), a.askedAt()));
        return starts.entrySet().stream()
                .map(e -> new DrillSession(e.getKey(), CHILD, e.getValue(), 0, Duration.ofMinutes(8), 1))
                .toList();
    }

    private static YearPage page(LocalDate day) {
        Steering steering = Steering.of(ACTIONS);
        return new YearPage(
                Words.english(),
                new Child(CHILD, "Mina", SchoolYear.START),
                YearView.of(progress(day), drills(day), day),
                Today.of(steering, drills(day), day));
    }

    @ParameterizedTest
    @CsvSource({"80, 24, true", "60, 20, true", "80, 24, false"})
    void theYearLooksAsItDid(int columns, int rows, boolean unicode) throws IOException {
        StringBuilder pictures = new StringBuilder();
        // The calendar's weeks, those off among them: school weeks 1, 10, 17 and 30, and the last that was played.
        for (int week : new int[] {1, 10, 20, 36}) {
            Picture picture = new Picture(columns, rows, unicode);
            page(START.plusWeeks(week - 1).plusDays(3)).draw(picture);
            pictures.append("---- week ").append(week).append('\n').append(picture);
        }
        Path file = FOLDER.resolve("year-" + columns + "x" + rows + (unicode ? "" : "-ascii") + ".txt");
        if ("write".equals(System.getProperty("pictures"))) {
            Files.writeString(file, pictures);
        }
        assertEquals(Files.readString(file), pictures.toString());
    }

    /** Whatever the page draws as a sign is a number in the sentences; both come from the same weeks. */
    @Test
    void theSentencesSayWhatThePageShows() {
        LocalDate day = START.plusWeeks(19).plusDays(3);
        YearView year = YearView.of(progress(day), drills(day), day);
        String told = YearText.sentences(
                Words.english(), "Mina", year, Today.of(Steering.of(ACTIONS), drills(day), day), true);
        Picture picture = new Picture(100, 30, true);
        page(day).draw(picture);
        String strip = picture.toString().lines().skip(3).limit(8).reduce("", String::concat);
        assertEquals(year.done(), signs(strip, '■') + signs(strip, '▲'));
        assertEquals(drills(day).size() + 1, year.done());
        assertTrue(told.contains("Days done: " + year.done() + "; missed: " + year.missed() + ";"), told);
        for (YearView.Week week : year.weeks()) {
            String name = "Week of " + Words.english().date(week.monday()) + ",";
            String line =
                    told.lines().filter(l -> l.startsWith(name)).findFirst().orElseThrow();
            assertEquals(week.done() > 0, line.contains(" done " + week.done()), line);
            assertEquals(week.missed() > 0, line.contains(" missed " + week.missed()), line);
        }
        for (YearView.OfTable table : year.tables()) {
            String line = told.lines()
                    .filter(l -> l.startsWith("The " + table.count().table() + " times table:"))
                    .findFirst()
                    .orElseThrow();
            Stream.of(table.multiply(), table.divide())
                    .forEach(d -> assertTrue(
                            line.contains(d.map(Words.english()::date).orElse("by progress")), line));
            assertTrue(line.endsWith("fluent " + table.count().fluent() + "."), line);
        }
    }

    private static int signs(String text, char sign) {
        return (int) text.chars().filter(c -> c == sign).count();
    }

    /** A week off is neither planned nor missed; a day made up for on another day of the week is not missed. */
    @Test
    void daysOffAndDaysMadeUpForAreNoMissedDays() {
        YearView year = YearView.of(progress(START.plusWeeks(36)), drills(START.plusWeeks(36)), START.plusWeeks(36));
        year.weeks().stream().filter(w -> w.number().isEmpty()).forEach(w -> {
            assertEquals(0, w.planned());
            assertEquals(0, w.missed());
            assertEquals(7, w.count(YearView.Day.OFF));
        });
        assertEquals(6, year.weeks().stream().filter(w -> w.number().isEmpty()).count());
        assertTrue(year.schoolWeeks() >= 36);
        // The first week: four drills at most and a game on its Wednesday.
        YearView.Week first = year.weeks().get(0);
        assertEquals(YearView.Day.AWAY, first.days().get(2));
        assertEquals(Math.max(0, 4 - first.done()), first.missed());
    }

    /** Four days are named: on a Wednesday nothing is planned, in a week off the day is off, a tick counts as done. */
    @ParameterizedTest
    @CsvSource({
        "2025-09-03, FREE, true",
        "2025-09-04, DRILL, false",
        "2025-12-02, OFF, false",
        "2025-08-29, FREE, false"
    })
    void todayIsByTheCalendar(LocalDate day, Today.Plan plan, boolean done) {
        Today today = Today.of(Steering.of(ACTIONS), List.of(), day);
        assertEquals(plan, today.plan());
        assertEquals(done, today.isDone());
    }

    @Test
    void theWeeksLastDayIsAwayFromTheScreenWhereTheParentWantsThat() {
        List<ActionRecord> more = new ArrayList<>(ACTIONS);
        more.add(new ActionRecord(
                new UUID(9, 99), CHILD, SchoolYear.START, 0, new ParentAction.Choose("variety", "weekly")));
        Steering steering = Steering.of(more);
        assertEquals(
                Today.Plan.DRILL,
                Today.of(steering, List.of(), LocalDate.parse("2025-09-04")).plan());
        LocalDate friday = LocalDate.parse("2025-09-05");
        assertEquals(
                3,
                Stream.of(0, 1, 2)
                        .map(w -> Today.of(steering, List.of(), friday.plusWeeks(w))
                                .away()
                                .orElseThrow())
                        .distinct()
                        .count());
    }
}
