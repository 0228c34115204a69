// SPDX-License-Identifier: Apache-2.0
package fourfold.commands;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.drill.Player;
import fourfold.facts.Families;
import fourfold.home.Home;
import fourfold.insight.ClockDoubt;
import fourfold.log.Answer;
import fourfold.log.Child;
import fourfold.log.DrillSession;
import fourfold.progress.Mastery;
import fourfold.progress.Progress;
import fourfold.progress.Steering;
import fourfold.scheduling.LastingGain;
import fourfold.store.Store;
import fourfold.terminal.SessionClock;
import fourfold.words.ClockAdvice;
import fourfold.words.Words;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.UUID;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Guards against clocks and zones that change: days that are not the child's, times that run back, a drill gone mad. */
class ClockTest {
    private static final Instant START = Instant.parse("2026-03-02T08:00:00Z");

    @TempDir
    private Path folder;

    /** Offsets and changes as in the IANA time zone database that Java carries. */
    @ParameterizedTest
    @CsvSource({
        "Europe/Berlin, 2026-03-29T00:59:59Z, 60, 2026-03-29", // one second before summer time
        "Europe/Berlin, 2026-03-29T01:00:00Z, 120, 2026-03-29",
        "Europe/Berlin, 2026-03-29T22:30:00Z, 120, 2026-03-30", // already tomorrow there, not yet in London
        "Europe/Berlin, 2026-10-25T22:30:00Z, 60, 2026-10-25", // winter time: still Sunday
        "America/Los_Angeles, 2026-03-30T06:30:00Z, -420, 2026-03-29",
        "Asia/Kathmandu, 2026-03-29T18:20:00Z, 345, 2026-03-30",
        "Pacific/Kiritimati, 2026-03-29T10:00:00Z, 840, 2026-03-30"
    })
    void aDrillsDayIsTheDayWhereTheChildIs(String zone, Instant at, int offset, LocalDate day) {
        Path file = Practised.children(folder, "Mina");
        try (Store store = Store.open(file)) {
            Home household = Home.on(store, new SessionClock(at, ZoneId.of(zone), () -> 0L), () -> 1);
            Child mina = household.children().list().get(0);
            DrillSession session = household.practice().newSession(mina, 5, at).orElseThrow();
            assertEquals(offset, session.zoneOffsetMinutes());
            assertEquals(day, LocalDate.ofEpochDay(session.localDay()));
        }
    }

    /** The clock is read once; what happens to it in a drill can't reach the drill. */
    @Test
    void timesInADrillFollowTheMonotonicClock() {
        long[] nanos = {5_000_000_000L};
        SessionClock moments = new SessionClock(START, ZoneId.of("Europe/Berlin"), () -> nanos[0]);
        Instant before = moments.now();
        for (int i = 0; i < 1000; i++) {
            nanos[0] += 7_000_000L;
            assertTrue(moments.now().isAfter(before));
            before = moments.now();
        }
        assertEquals(START.plusSeconds(7), before);
    }

    private static Player.Reply right(fourfold.facts.Prompt prompt) {
        return new Player.Reply(Integer.toString(prompt.expected()), 1500);
    }

    /** Ten drills on ten days; then the clock is wrong for one drill; then it is right again. */
    @ParameterizedTest
    @ValueSource(ints = {-365, 3650, -20_000 / 24, 1})
    void aWrongClockForADayNeitherBreaksTheDrillNorCostsWhatWasLearned(int days) {
        Player player = new Player(new LastingGain(), Progress.blank(Steering.NONE), START);
        for (int day = 0; day < 10; day++) {
            player.drill(6, day, (prompt, purpose, position) -> right(prompt));
            player.rest(Duration.between(player.now(), START.plus(Duration.ofDays(day + 1))));
        }
        long known = met(player.progress());
        player.rest(Duration.ofDays(days));
        Instant wrong = player.now();
        List<Answer> drill = player.drill(6, 77, (prompt, purpose, position) -> right(prompt));
        assertTrue(drill.size() > 20, "only " + drill.size() + " answers");
        Duration took = Duration.between(wrong, player.now());
        assertTrue(took.compareTo(Duration.ofMinutes(8)) <= 0, "the drill took " + took);
        for (int i = 1; i < drill.size(); i++) {
            assertFalse(drill.get(i).askedAt().isBefore(drill.get(i - 1).askedAt()));
        }
        player.rest(Duration.between(player.now(), START.plus(Duration.ofDays(11))));
        assertTrue(player.drill(6, 78, (prompt, purpose, position) -> right(prompt))
                        .size()
                > 20);
        // As the next start reads the log: by the drills' starts, whatever order they really had.
        Progress folded = Progress.of(
                List.of(),
                player.log().stream()
                        .sorted(java.util.Comparator.comparing(Answer::askedAt))
                        .toList());
        assertTrue(met(folded) >= known, met(folded) + " families after, " + known + " before");
        assertEquals(player.log().size(), folded.answers());
    }

    private static long met(Progress progress) {
        return Families.all().stream()
                .filter(f -> progress.level(f).atLeast(Mastery.ACQUIRING))
                .count();
    }

    @ParameterizedTest
    @CsvSource({"-400, true", "-2, true", "-1, false", "0, false", "60, false", "700, false", "3650, true"})
    void aClockThatCanNotBeRightIsSaid(int days, boolean said) {
        Progress progress = Progress.of(List.of(), Practised.answers());
        Instant now = Practised.BEGAN.plus(Duration.ofDays(days));
        assertEquals(said, ClockDoubt.of(progress, now).isPresent());
        assertEquals(said, ClockAdvice.of(Words.english(), progress, now).isPresent());
        assertTrue(ClockAdvice.of(Words.english(), Progress.blank(Steering.NONE), now)
                .isEmpty());
    }

    /** Suspended in the middle of a question: no times of it are kept, and the drill goes on as after a pause. */
    @Test
    void aComputerThatSleptInterruptsTheQuestionAndItsDayIsTheNewOne() {
        Path file = Practised.once(folder);
        try (Journey journey = new Journey(file, START, 80, 24, true)) {
            journey.keys("Enter Enter").rest(100).answer().rest(700);
            journey.sleep(Duration.ofHours(20));
            assertTrue(journey.picture().contains("Pause"), journey.picture());
            journey.keys("Enter").rest(100).answer().answer();
            UUID mina = journey.store().children().get(0).id();
            List<Answer> answers = journey.store().answers(mina);
            Answer before = answers.get(answers.size() - 3);
            Answer slept = answers.get(answers.size() - 2);
            Answer after = answers.get(answers.size() - 1);
            assertTrue(before.whole().isPresent() && after.whole().isPresent());
            assertTrue(slept.firstKey().isEmpty() && slept.whole().isEmpty(), slept.toString());
            assertEquals(before.localDay() + 1, after.localDay());
            assertFalse(journey.drill().orElseThrow().isFinished());
        }
    }

    @ParameterizedTest
    @CsvSource({
        "50, 50, false", // a tick
        "50, 1900, false", // the wall clock is being put right
        "50, 2100, true", // asleep: the monotonic clock stood still
        "50, -3600000, false", // the wall clock was set back
        "14000, 14000, false", // a slow disk
        "16000, 16000, true", // stopped, or a system whose monotonic clock goes on in sleep
    })
    void sleepIsWhatTheWallClockSaysBeyondTheMonotonicOne(long counted, long passed, boolean asleep) {
        long[] nanos = {7};
        Instant[] wall = {START};
        SessionClock moments = new SessionClock(() -> wall[0], ZoneId.of("Europe/Berlin"), () -> nanos[0]);
        nanos[0] += counted * 1_000_000;
        wall[0] = START.plusMillis(passed);
        assertEquals(
                asleep ? java.util.Optional.of(START) : java.util.Optional.empty(),
                moments.sleptSince(Duration.ofSeconds(15)));
        assertEquals(START.plusMillis(counted), moments.now());
        moments.catchUp();
        assertEquals(START.plusMillis(Math.max(counted, passed)), moments.now());
        assertTrue(moments.sleptSince(Duration.ofSeconds(15)).isEmpty());
    }

    @Test
    void theChildSeesItBeforeTheDrillAndPractisesAllTheSame() {
        Path file = Practised.once(folder);
        try (Journey journey = new Journey(file, Instant.parse("2025-03-02T08:00:00Z"), 80, 24, true)) {
            journey.keys("Enter");
            assertTrue(
                    journey.picture()
                            .replaceAll("\\s+", " ")
                            .contains("This computer's clock says 2025-03-02, but the"
                                    + " last drill was on 2026-03-01. Is the clock right?"),
                    journey.picture());
            journey.keys("Enter").rest(100).answer().answer();
            UUID mina = journey.store().children().get(0).id();
            List<Answer> answers = journey.store().answers(mina);
            assertEquals(17, answers.size());
            assertEquals(
                    List.of(1, 2),
                    IntStream.range(0, 2)
                            .mapToObj(i -> answers.get(i).position())
                            .toList());
        }
    }
}
