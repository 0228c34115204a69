// SPDX-License-Identifier: Apache-2.0
package fourfold.drill;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.facts.Families;
import fourfold.facts.Family;
import fourfold.facts.MissingFactor;
import fourfold.facts.Operation;
import fourfold.facts.Question;
import fourfold.log.ActionRecord;
import fourfold.log.Answer;
import fourfold.log.ParentAction;
import fourfold.log.ParentAction.CalendarEntry;
import fourfold.log.Purpose;
import fourfold.progress.Calendar;
import fourfold.progress.CalendarEntries;
import fourfold.progress.Dates;
import fourfold.progress.Progress;
import fourfold.progress.Steering;
import fourfold.scheduling.LastingGain;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Guards against a drill that does not follow the home's calendar. Whole drills with the real choice of questions. */
class CalendarDrillsTest {
    /** A Monday. */
    private static final Instant START = Instant.parse("2026-09-07T15:00:00Z");

    private static final int MINUTES = 6;

    private final List<Answer> log = new ArrayList<>();
    private final List<ActionRecord> acts = new ArrayList<>();
    private Instant now = START;

    private void act(ParentAction action) {
        acts.add(new ActionRecord(new UUID(9, acts.size()), new UUID(1, 1), now.minusSeconds(600), 0, action));
    }

    private Progress progress() {
        Progress.Fold fold = new Progress.Fold(Steering.of(acts));
        log.forEach(fold);
        return fold.progress();
    }

    private Calendar calendar() {
        return Steering.of(acts).calendar();
    }

    private List<Answer> drill(Player.Child child) {
        Player player = new Player(new LastingGain(), progress(), now);
        List<Answer> answers = player.drill(MINUTES, now.getEpochSecond(), child);
        // A player counts its own drills; the log needs other ids.
        UUID id = new UUID(7, now.getEpochSecond());
        List<Answer> own = answers.stream()
                .map(a -> a.in(new Answer.Place(a.child(), id, a.position())))
                .toList();
        log.addAll(own);
        return own;
    }

    /** Four days a week: each week's drills, Monday to Thursday. */
    private List<List<Answer>> week(Player.Child child) {
        List<List<Answer>> drills = new ArrayList<>();
        for (int day = 0; day < 4; day++) {
            drills.add(drill(child));
            now = now.plus(Duration.ofDays(day == 3 ? 4 : 1));
        }
        return drills;
    }

    private static Player.Reply taught(fourfold.facts.Prompt prompt, Purpose purpose) {
        return purpose == Purpose.PROBE
                ? new Player.Reply(Integer.toString(prompt.expected() + 1), 2500)
                : new Player.Reply(Integer.toString(prompt.expected()), 1800);
    }

    private static final Player.Child LEARNS = (prompt, purpose, position) -> taught(prompt, purpose);
    private static final Player.Child KNOWS =
            (prompt, purpose, position) -> new Player.Reply(Integer.toString(prompt.expected()), 1200);

    private static LocalDate day(Answer answer) {
        return LocalDate.ofEpochDay(answer.localDay());
    }

    private static List<Question> signed(List<Answer> answers) {
        return answers.stream()
                .flatMap(a -> a.prompt() instanceof Question q && q.operation() == Operation.DIVIDE
                        ? Optional.of(q).stream()
                        : Optional.<Question>empty().stream())
                .toList();
    }

    private static long hidden(List<Answer> answers) {
        return answers.stream().filter(a -> a.prompt() instanceof MissingFactor).count();
    }

    private static boolean hasAny(List<Answer> answers, int table) {
        return answers.stream()
                .anyMatch(a ->
                        a.question().filter(q -> q.family().contains(table)).isPresent());
    }

    private void yearOf(String tables) {
        act(CalendarEntries.start(LocalDate.of(2026, 9, 7)));
        act(new CalendarEntry("tables", tables));
    }

    private static final String CLOSED_OTHERWISE =
            " 1:later/later 4:later/later 6:later/later 7:later/later" + " 8:later/later 9:later/later";

    @ParameterizedTest
    @ValueSource(booleans = {false, true})
    void aTableOpensOnItsDateAndItsDivisionOnItsOwnAndNeitherBefore(boolean knowsAll) {
        yearOf("2:1/3 5:1/4 10:2/4 3:3/5" + CLOSED_OTHERWISE);
        for (int week = 1; week <= 5; week++) {
            List<List<Answer>> drills = week(knowsAll ? KNOWS : LEARNS);
            for (List<Answer> drill : drills) {
                for (Answer answer : drill) {
                    if (answer.question().isEmpty()) {
                        continue;
                    }
                    Family family = answer.question().get().family();
                    assertTrue(
                            isOpen(family.low(), Operation.MULTIPLY, day(answer))
                                    || isOpen(family.high(), Operation.MULTIPLY, day(answer)),
                            () -> answer.prompt() + " on " + day(answer));
                }
                for (Question division : signed(drill)) {
                    LocalDate on = day(drill.get(0));
                    assertTrue(isOpen(division.right(), Operation.DIVIDE, on), () -> division + " on " + on);
                }
            }
            List<Answer> monday = drills.get(0);
            assertTrue(hidden(monday) > 0 || week >= 4, "the inverse is thought in week " + week);
            for (int table : new int[] {2, 5, 10, 3}) {
                int here = table;
                if (calendar().lessons(table).multiply() == week) {
                    assertTrue(hasAny(monday, table), "table " + table + " on the first day of week " + week);
                }
                if (calendar().lessons(table).divide() == week) {
                    assertTrue(
                            drills.stream().flatMap(d -> signed(d).stream()).anyMatch(q -> q.right() == here),
                            "÷ " + table + " in week " + week);
                }
            }
        }
        assertTrue(log.size() > 500, "answers: " + log.size());
    }

    private boolean isOpen(int table, Operation operation, LocalDate day) {
        return calendar().opens(table, operation).filter(d -> !d.isAfter(day)).isPresent();
    }

    /** On the very day: of what was met the division is asked with its sign. */
    @Test
    void theSignComesOnTheDayOfItsWeek() {
        yearOf("2:1/3 5:1/later 10:1/later" + CLOSED_OTHERWISE + " 3:later/later");
        week(LEARNS);
        week(LEARNS);
        assertEquals(List.of(), signed(log));
        List<Answer> monday = drill(LEARNS);
        assertFalse(signed(monday).isEmpty());
        assertTrue(
                signed(monday).stream().allMatch(q -> q.right() == 2),
                signed(monday).toString());
        assertTrue(hidden(monday) > 0, "÷ 5 still waits");
    }

    @Test
    void everyProductBringsItsInverseFromTheFirstDayOnInOneFormOrTheOther() {
        yearOf("2:1/9 5:1/9 10:1/9 3:1/9" + CLOSED_OTHERWISE);
        List<Answer> first = drill(LEARNS);
        List<Answer> fromMemory =
                first.stream().filter(a -> a.purpose().isFromMemory()).toList();
        List<Family> products = fromMemory.stream()
                .filter(a -> a.prompt() instanceof Question)
                .map(a -> a.question().orElseThrow().family())
                .distinct()
                .filter(f -> progress().isMet(f))
                .toList();
        for (Family family : products) {
            assertTrue(
                    fromMemory.stream()
                            .anyMatch(a -> a.prompt() instanceof MissingFactor hidden
                                    && hidden.quotient().family().equals(family)),
                    () -> "no inverse of " + family);
        }
        assertTrue(products.size() >= 2, products.toString());
        assertEquals(List.of(), signed(first), "a lesson shows no sign either");
    }

    @ParameterizedTest
    @ValueSource(ints = {6, 7, 9})
    void whatWasTaughtTodayComesInTheVeryNextDrill(int table) {
        yearOf("2:1/3 5:1/4 10:2/4 3:3/5" + CLOSED_OTHERWISE);
        week(LEARNS);
        act(new ParentAction.Taught(table, Operation.MULTIPLY));
        List<Answer> next = drill(LEARNS);
        List<Family> before = log.stream()
                .filter(a -> !next.contains(a))
                .flatMap(a -> a.question().stream())
                .map(Question::family)
                .distinct()
                .toList();
        assertTrue(
                next.stream()
                        .flatMap(a -> a.question().stream())
                        .map(Question::family)
                        .anyMatch(f -> f.contains(table) && !before.contains(f)),
                "no new family of table " + table);
    }

    @Test
    void aDivisionTaughtTodayHasItsSignInTheVeryNextDrillAndLosesItWhenThatIsUndone() {
        yearOf("2:1/later 5:1/later 10:1/later" + CLOSED_OTHERWISE + " 3:later/later");
        week(LEARNS);
        act(new ParentAction.Taught(2, Operation.DIVIDE));
        List<Answer> next = drill(LEARNS);
        assertTrue(signed(next).stream().anyMatch(q -> q.right() == 2));
        now = now.plus(Duration.ofDays(1));
        act(new ParentAction.Undo(acts.get(acts.size() - 1).id()));
        assertEquals(List.of(), signed(drill(LEARNS)));
    }

    @ParameterizedTest
    @ValueSource(booleans = {false, true})
    void whatIsKnownIsPractisedBeforeItsDateOnlyIfTheParentAllows(boolean early) {
        yearOf("2:1/9 5:1/9 10:1/9 3:9/19" + CLOSED_OTHERWISE);
        act(CalendarEntries.early(early));
        week(KNOWS);
        assertEquals(early, hasAny(log, 7) && log.stream().anyMatch(CalendarDrillsTest::isSixTimesSeven));
        assertTrue(log.stream().noneMatch(a -> a.purpose() == Purpose.INTRODUCE && !early && isSixTimesSeven(a)));
    }

    private static boolean isSixTimesSeven(Answer answer) {
        return answer.question().filter(q -> q.family().equals(Family.of(6, 7))).isPresent();
    }

    /** A calendar that is begun with a child under way: what waits for its date rests, and comes back on it. */
    @Test
    void whatWasMetRestsUntilItsDateAndNothingIsLost() {
        week(LEARNS);
        week(LEARNS);
        List<Family> met = Families.all().stream().filter(progress()::isMet).toList();
        act(CalendarEntries.start(LocalDate.ofInstant(now, java.time.ZoneOffset.UTC)));
        act(new CalendarEntry("tables", "2:1/1 5:2/2 10:2/2 3:2/2" + CLOSED_OTHERWISE));
        List<Answer> first = drill(LEARNS);
        assertTrue(first.stream()
                .flatMap(a -> a.question().stream())
                .allMatch(q -> q.family().contains(2)));
        assertTrue(met.stream().allMatch(progress()::isMet), "the levels stay");
        now = now.plus(Duration.ofDays(7));
        assertTrue(hasAny(drill(LEARNS), 5));
    }

    @Test
    void beforeTheFirstDateADrillAsksNothingAndKnowsWhy() {
        act(CalendarEntries.start(LocalDate.of(2026, 9, 14)));
        act(new CalendarEntry("tables", "2:1/3 5:1/4 10:2/4 3:3/5" + CLOSED_OTHERWISE));
        Player player = new Player(new LastingGain(), progress(), now);
        List<Answer> drill = player.drill(MINUTES, 1, LEARNS);
        assertEquals(0, drill.stream().filter(a -> a.question().isPresent()).count());
        assertTrue(Dates.isBeforeAll(player.progress()));
        assertFalse(player.progress().isAllSetAside(), "nobody has set anything aside");
    }

    /** The setting, without a calendar: four weeks of missing factors, and only then the sign. */
    @Test
    void whereDivisionsComeLaterTheyComeWeeksLaterAndNotOnTheNextDay() {
        act(new ParentAction.Choose("divisions", "later"));
        for (int week = 1; week <= 4; week++) {
            week(LEARNS);
            assertEquals(List.of(), signed(log), "week " + week);
        }
        assertTrue(hidden(log) > 100, "missing factors: " + hidden(log));
        List<Question> fifth =
                week(LEARNS).stream().flatMap(d -> signed(d).stream()).toList();
        assertTrue(fifth.size() > 20, "with their sign in the fifth week: " + fifth.size());
    }
}
