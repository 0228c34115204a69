// SPDX-License-Identifier: Apache-2.0
package fourfold.paper;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.commands.CommandRun;
import fourfold.commands.Journey;
import fourfold.commands.Rows;
import fourfold.commands.Sample;
import fourfold.store.Store;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Guards against a half-done page that counts as whole, a page that can't be found again, and an entry that stays. */
class PaperEntryTest {
    private static final String PAPER = "SELECT COUNT(*) FROM answer WHERE purpose = 5 AND surface = 4";

    @TempDir
    private Path folder;

    private Path file = Path.of("");
    private Instant next = Instant.EPOCH;

    @BeforeEach
    void sample() {
        file = folder.resolve("family.db");
        next = Sample.fill(file);
    }

    private String made(String... words) {
        CommandRun run = CommandRun.of(file, words);
        assertEquals(0, run.code(), run.err());
        Matcher number = Pattern.compile("Page (\\d{4})").matcher(run.out());
        assertTrue(number.find(), run.out());
        return number.group(1);
    }

    private Journey journey() {
        return new Journey(file, next, 80, 24, true);
    }

    private static String typed(String number) {
        return String.join(" ", number.split(""));
    }

    @Test
    void aPageIsOpenedByItsNumberAndOnlyWhatIsMarkedIsKept() {
        String first = made("print", "practice", "--tables", "7", "--questions", "20");
        String second = made("print", "practice", "--tables", "8", "--questions", "20");
        try (Journey journey = journey()) {
            journey.keys("3 m 4");
            assertTrue(journey.picture().contains(first) && journey.picture().contains(second), journey.picture());
            journey.keys(typed(first) + " Enter");
            assertTrue(journey.picture().contains("Page " + first), journey.picture());
            journey.keys("Enter");
            assertTrue(journey.picture().contains("Nothing is marked"), journey.picture());
            assertEquals(List.of("0"), Rows.column(file, PAPER));
            // Two right, one not right, one passed over, one right; the page took 2:30.
            journey.keys("r r x Down r 2 3 0 Enter");
            assertTrue(journey.picture().contains("Kept: 3 of 4 right."), journey.picture());
        }
        assertEquals(List.of("4"), Rows.column(file, PAPER));
        assertEquals(List.of("1"), Rows.column(file, PAPER + " AND typed IS NULL"));
        // 150 s over four questions that were done.
        assertEquals(List.of("4"), Rows.column(file, PAPER + " AND whole_ms = 37500 AND first_key_ms IS NULL"));
        try (Journey journey = journey()) {
            journey.keys("3 m 4");
            assertTrue(journey.picture().contains("entered"), journey.picture());
            journey.keys(typed(second) + " Enter a Enter");
            assertTrue(
                    journey.picture().contains("Kept: 20 of 20 right."), "another page, later: " + journey.picture());
            journey.keys("Esc Esc 6");
            assertTrue(journey.picture().contains("paper"), "past drills show it as paper: " + journey.picture());
        }
    }

    /** Forty questions have room in a small window beside the keys; in a lower one those around the chosen one are shown. */
    @Test
    void everyQuestionIsSeenInASmallWindow() {
        made("print", "practice", "--questions", "40");
        try (Journey journey = new Journey(file, next, 60, 20, true)) {
            journey.keys("3 m 4 Enter a");
            assertEquals(40, questions(journey));
            journey.keys("Enter");
            assertTrue(journey.picture().contains("Kept: 40 of 40 right."), journey.picture());
        }
    }

    private static long questions(Journey journey) {
        return Pattern.compile("[+·] \\d+ [×÷] \\d+ = \\d+")
                .matcher(journey.picture())
                .results()
                .count();
    }

    @Test
    void whatWasEnteredIsTakenBackAndThePageWaitsAgain() {
        String number = made("print", "practice", "--questions", "10");
        try (Journey journey = journey()) {
            journey.keys("3 m 4 Enter a Enter");
            assertEquals(List.of("10"), Rows.column(file, PAPER));
            journey.keys("u");
            assertTrue(journey.picture().contains("Taken back"), journey.picture());
            assertEquals(List.of("0"), Rows.column(file, PAPER));
            journey.keys("Enter");
            assertEquals(List.of("10"), Rows.column(file, PAPER), "and it can be entered again");
            journey.keys("Esc " + typed(number) + " Enter");
            assertTrue(journey.picture().contains("u takes that back"), journey.picture());
        }
        CommandRun whole = CommandRun.of(file, "verify");
        assertEquals(0, whole.code(), whole.err());
    }

    /** What is entered on either computer is entered on both, and what is taken back is taken back on both. */
    @Test
    void aPageIsEnteredByItsNumberOnAnotherComputerOfTheFamily() throws IOException {
        String number = made("print", "practice", "--questions", "10");
        Path kitchen = file;
        Path study = Files.createDirectories(folder.resolve("study")).resolve("family.db");
        merged(study, kitchen);
        file = study;
        try (Journey journey = journey()) {
            journey.keys("3 m 4 " + typed(number) + " Enter r r x Enter");
            assertTrue(journey.picture().contains("Kept: 2 of 3 right."), journey.picture());
        }
        merged(kitchen, study);
        file = kitchen;
        assertEquals(List.of("3"), Rows.column(file, PAPER));
        try (Journey journey = journey()) {
            journey.keys("3 m 4 " + typed(number) + " Enter u");
            assertTrue(journey.picture().contains("Taken back"), journey.picture());
        }
        assertEquals(List.of("0"), Rows.column(file, PAPER));
        merged(study, kitchen);
        merged(kitchen, study);
        for (Path one : List.of(kitchen, study)) {
            file = one;
            try (Journey journey = journey()) {
                journey.keys("3 m 4 " + typed(number) + " Enter");
                assertFalse(journey.picture().contains("This page is entered"), journey.picture());
            }
        }
    }

    /** Two parents enter one page before their computers meet: both entries are kept, the page says so, and one is taken back. */
    @Test
    void aPageThatWasEnteredTwiceSaysSoOnBothComputersUntilOneIsTakenBack() throws IOException {
        String number = made("print", "practice", "--questions", "10");
        Path kitchen = file;
        Path study = Files.createDirectories(folder.resolve("study")).resolve("family.db");
        merged(study, kitchen);
        String entered = "3 m 4 " + typed(number) + " Enter ";
        for (Path one : List.of(kitchen, study)) {
            file = one;
            try (Journey journey = journey()) {
                journey.keys(entered + "r r x Enter");
            }
        }
        merged(kitchen, study);
        merged(study, kitchen);
        merged(kitchen, study);
        for (Path one : List.of(kitchen, study)) {
            file = one;
            assertEquals(List.of("6"), Rows.column(file, PAPER), "nothing is dropped silently");
            try (Journey journey = journey()) {
                journey.keys("3 m 4");
                assertTrue(journey.picture().contains("entered twice"), journey.picture());
                journey.keys(typed(number) + " Enter");
                assertTrue(journey.picture().contains("entered twice, on two computers"), journey.picture());
            }
        }
        try (Journey journey = journey()) {
            journey.keys(entered + "u");
            assertTrue(journey.picture().contains("The page counts once now."), journey.picture());
        }
        assertEquals(List.of("3"), Rows.column(file, PAPER));
        merged(kitchen, study);
        file = kitchen;
        assertEquals(List.of("3"), Rows.column(file, PAPER));
        try (Journey journey = journey()) {
            journey.keys(entered);
            assertTrue(journey.picture().contains("This page is entered."), journey.picture());
            journey.keys("u");
            assertTrue(journey.picture().contains("The page waits again."), journey.picture());
        }
        assertEquals(List.of("0"), Rows.column(file, PAPER));
        assertEquals(0, CommandRun.of(file, "verify").code());
    }

    /** A text under a page's name that no program of ours wrote is passed over; the page beside it is found. */
    @Test
    void aRecordOfAPageThatIsNoneIsPassedOver() {
        String number = made("print", "practice", "--questions", "10");
        try (Store store = Store.open(file)) {
            String name = store.homeSettings("page").keySet().iterator().next();
            for (String text :
                    List.of("practice", "practice 2026-02-30 00", "juggling 2026-03-01 00", "life 2026-03-01 zz")) {
                store.keepHomeSetting(name.replace(number, Integer.toString(1001 + text.length())), text);
            }
        }
        try (Journey journey = journey()) {
            journey.keys("3 m 4");
            assertTrue(journey.picture().contains(number), journey.picture());
        }
    }

    private static void merged(Path into, Path from) {
        CommandRun run = CommandRun.of(into, "merge", from.toString(), "--yes");
        assertEquals(0, run.code(), run.err());
    }

    @Test
    void aPageIsEnteredForTheDayOnWhichItWasDoneAndNoneInTheFuture() {
        made("print", "practice", "--questions", "10");
        Instant later = next.plusSeconds(3 * 86_400);
        try (Journey journey = new Journey(file, later, 80, 24, true)) {
            journey.keys("3 m 4 Enter + a - Enter");
            assertTrue(journey.picture().contains("Kept: 10 of 10"), journey.picture());
        }
        long day = (later.getEpochSecond() + 3600) / 86_400 - 1;
        assertEquals(
                List.of("10"),
                Rows.column(file, PAPER + " AND (asked_at + zone_offset_min * 60000) / 86400000 = " + day));
    }

    @Test
    void aMinutePageHasItsMinuteAndAPileOfCardsHasNoClock() {
        String minute = made("print", "minute", "--questions", "20");
        String cards = made("print", "cards", "--questions", "8");
        try (Journey journey = journey()) {
            journey.keys("3 m 4 " + typed(minute) + " Enter");
            assertTrue(journey.picture().contains("1:00 min"), journey.picture());
            journey.keys("r r r r Enter Esc");
            journey.keys(typed(cards) + " Enter r s x a Enter");
            assertTrue(journey.picture().contains("Kept: 7 of 8 right."), journey.picture());
        }
        assertEquals(List.of("4"), Rows.column(file, PAPER + " AND whole_ms = 15000"));
        String aloud = "SELECT COUNT(*) FROM answer WHERE purpose = 7 AND surface = 5 AND whole_ms IS NULL";
        assertEquals(List.of("8"), Rows.column(file, aloud));
        assertEquals(List.of("1"), Rows.column(file, aloud + " AND pace = 2"));
        assertEquals(List.of("6"), Rows.column(file, aloud + " AND pace = 1"));
    }

    @Test
    void questionsOutLoudAreKeyedWithOneHandKeptAtTheEndAndTakenBack() {
        String aloud = "SELECT COUNT(*) FROM answer WHERE purpose = 7 AND surface = 5";
        try (Journey journey = journey()) {
            journey.keys("3 m Up Up Up Up Up Up Up Enter");
            assertTrue(journey.picture().contains("coarser"), journey.picture());
            // Right, slow, not right; the last is taken back and was right.
            assertTrue(journey.picture().contains("out loud   1/"), journey.picture());
            journey.keys("Right Down Left Up Right");
            assertTrue(journey.picture().contains("out loud   4/"), journey.picture());
            assertTrue(journey.picture().contains(" = "), "the last fact, whole: " + journey.picture());
            assertEquals(List.of("0"), Rows.column(file, aloud));
            journey.keys("Enter");
            assertTrue(journey.picture().contains("Kept: 3 of 3 right."), journey.picture());
            assertEquals(List.of("3"), Rows.column(file, aloud));
            assertEquals(List.of("2"), Rows.column(file, aloud + " AND pace = 1"));
            journey.keys("u");
            assertEquals(List.of("0"), Rows.column(file, aloud));
        }
    }

    @Test
    void aPageIsMadeFromTheScreenAsItWasChosenAndItIsSaidWhereItIs() throws IOException {
        try (Journey journey = new Journey(file, next, 200, 24, true)) {
            journey.keys("3 m 3 1");
            assertTrue(journey.picture().contains("all that were met"), journey.picture());
            // The table of 2, asked as divisions, on US Letter.
            journey.keys("Right Right Down Right Right Up Up Right Enter");
            Matcher made = Pattern.compile("Made: (.+\\.html)").matcher(journey.picture());
            assertTrue(made.find(), journey.picture());
            Path page = Path.of(made.group(1));
            String html = Files.readString(page);
            Files.delete(page);
            assertTrue(html.contains("size: letter portrait"));
            assertTrue(html.contains("÷") && !html.contains("×"), html);
            assertFalse(html.contains(">3</td><td class=\"sign\">"), "only the table of 2");
        }
    }
}
