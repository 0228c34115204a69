package fourfold.paper;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.commands.CommandRun;
import fourfold.commands.Journey;
import fourfold.commands.Practised;
import fourfold.commands.Rows;
import fourfold.commands.Sample;
import fourfold.store.Store;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.Element;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Guards against a printed page that tells a wrong answer, points outside, or breaks on a name. */
class PrintedPagesTest {
    @TempDir
    private static Path folder;

    private static Path sample = Path.of("");
    private static Instant next = Instant.EPOCH;

    @BeforeAll
    static void thirtyDrillsLater() {
        sample = folder.resolve("sample.db");
        next = Sample.fill(sample);
    }

    private static Document printed(Path file, String... words) {
        CommandRun run = CommandRun.of(file, words);
        assertEquals("", run.err());
        assertEquals(0, run.code());
        Document page = Jsoup.parse(run.out());
        assertEquals(0, page.select("script, link, img, iframe, [src], [href]").size(), "points outside");
        assertTrue(run.out().startsWith("<!DOCTYPE html>"));
        return page;
    }

    private static int result(String question) {
        String[] words = question.strip().split(" ");
        int left = Integer.parseInt(words[0]);
        int right = Integer.parseInt(words[2]);
        return words[1].equals("×") ? left * right : left / right;
    }

    @ParameterizedTest
    @ValueSource(strings = {"a4", "letter"})
    void eachAnswerFallsBehindItsQuestionWhenTheSheetIsTurnedOverItsLongEdge(String size) {
        Document page = printed(sample, "print", "cards", "--size", size);
        assertTrue(page.select("style").html().contains("size: " + size + " portrait"));
        List<Element> sides = page.select("section");
        assertEquals(2, sides.size());
        List<Element> front = sides.get(0).select("tr");
        List<Element> back = sides.get(1).select("tr");
        int cards = 0;
        for (int row = 0; row < front.size(); row++) {
            List<Element> questions = front.get(row).select("td");
            List<Element> answers = back.get(row).select("td");
            assertEquals(questions.size(), answers.size());
            for (int column = 0; column < questions.size(); column++) {
                String question = questions.get(column).text();
                String answer = answers.get(answers.size() - 1 - column).text();
                if (!question.isBlank()) {
                    assertEquals(Integer.toString(result(question)), answer);
                    cards++;
                }
            }
        }
        assertEquals(32, cards);
    }

    @Test
    void aPracticePageHasItsAnswersOnAPageOfTheirOwnAndNoFamilyTwiceInARow() {
        Document page = printed(sample, "print", "practice");
        List<Element> sections = page.select("section");
        assertEquals(2, sections.size());
        List<String> asked = new ArrayList<>();
        for (Element cell : sections.get(0).select("td")) {
            asked.add(cell.text());
            assertTrue(cell.select("b").isEmpty(), "no answer on the page of questions");
        }
        assertEquals(40, asked.size());
        for (Element cell : sections.get(1).select("td")) {
            String[] halves = cell.text().split("=");
            assertEquals(result(halves[0]), Integer.parseInt(halves[1].strip()));
        }
        assertEquals(20, asked.stream().filter(q -> q.contains("×")).count());
    }

    @Test
    void theTableIsThereBlankAndFilled() {
        Document page = printed(sample, "print", "table");
        List<Element> cells = page.select("section").get(1).select("td");
        assertEquals(100, cells.size());
        // 3025 is the sum of all products to 10 x 10: the square of 55.
        assertEquals(
                3025, cells.stream().mapToInt(c -> Integer.parseInt(c.text())).sum());
        assertTrue(page.select("section").get(0).select("td").stream()
                .allMatch(c -> c.text().isEmpty()));
    }

    @Test
    void theProgressPageHasEveryFamilyAndADotForEachRate() {
        assertEquals(0, CommandRun.of(sample, "plan", "--runs", "1").code());
        Document page = printed(sample, "print", "progress");
        assertTrue(page.text().contains("All 55 families fluent, as foreseen on 2026-03-02"), page.text());
        assertEquals(1, page.select("section").size());
        assertEquals(60, page.select("svg").get(0).select("rect").size(), "55 families and five levels");
        assertTrue(page.select("circle").size() > 20);
        assertTrue(page.text().contains("qualified specialist"));
    }

    @Test
    void aNameCanNotBreakThePage() {
        Path file = Practised.once(folder.resolve("x").toFile().mkdirs() ? folder.resolve("x") : folder);
        assertEquals(
                0, CommandRun.of(file, "children", "--rename", "<b>Mi&na\"</b>").code());
        Document page = printed(file, "print", "practice");
        assertEquals(0, page.select("h1 b").size());
        assertTrue(page.select("h1").get(0).text().contains("<b>Mi&na\"</b>"));
    }

    @Test
    void whatWasAnsweredOnPaperCountsForRightAndWrongAndNeverForTime() throws IOException {
        Path file = Files.copy(sample, folder.resolve("paper.db"));
        Path page = folder.resolve("page.html");
        assertEquals(
                0,
                CommandRun.of(file, "print", "practice", "--output", page.toString())
                        .code());
        assertEquals(
                1,
                CommandRun.of(file, "print", "practice", "--output", page.toString())
                        .code(),
                "never over it");
        try (Journey journey = new Journey(file, next, 80, 24, true)) {
            journey.keys("3 m 4");
            assertTrue(journey.picture().contains("Mark with x"), journey.picture());
            journey.keys("x Down Down x Enter");
            assertTrue(journey.picture().contains("Kept: 38 of 40 right."), journey.picture());
            journey.keys("Esc 4");
            assertTrue(journey.picture().contains("No page waits"), journey.picture());
        }
        assertEquals(
                List.of("40"),
                Rows.column(
                        file,
                        "SELECT COUNT(*) FROM answer WHERE purpose = 5 AND whole_ms IS NULL AND first_key_ms IS NULL"));
        assertEquals(
                List.of("2"), Rows.column(file, "SELECT COUNT(*) FROM answer WHERE purpose = 5 AND typed IS NULL"));
        try (Store store = Store.open(file)) {
            assertNotEquals(0, store.children().size());
        }
    }

    @Test
    void aParentMakesAPageFromTheScreenAndIsToldWhereItIs() throws IOException {
        Path file = Files.copy(sample, folder.resolve("screen.db"));
        try (Journey journey = new Journey(file, next, 200, 24, true)) {
            journey.keys("3 m 3 s 1");
            Matcher made = Pattern.compile("Made: (\\S+\\.html)").matcher(journey.picture());
            assertTrue(made.find(), journey.picture());
            Path page = Path.of(made.group(1));
            assertTrue(Files.readString(page).contains("size: letter portrait"));
            Files.delete(page);
            journey.keys("Esc 4");
            assertTrue(journey.picture().contains("Mark with x"), "its answers can be entered");
        }
    }
}
