package fourfold.paper;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.commands.CommandRun;
import fourfold.commands.Journey;
import fourfold.commands.Practised;
import fourfold.commands.Rows;
import fourfold.commands.Sample;
import fourfold.facts.Families;
import fourfold.log.Answer;
import fourfold.log.Child;
import fourfold.log.DrillSession;
import fourfold.progress.History;
import fourfold.store.Store;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.Element;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
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
        assertEquals(0, CommandRun.of(sample, "plan", "--runs", "1").code());
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
        Document page = printed(sample, "print", "progress");
        assertTrue(page.text().contains("All 55 families fluent, as foreseen on 2026-03-02"), page.text());
        assertEquals(1, page.select("section").size());
        assertEquals(4 * 60, page.select("svg").get(0).select("rect").size(), "55 families and five levels");
        assertTrue(page.select("circle").size() > 20);
        assertTrue(page.text().contains("qualified specialist"));
    }

    /** A child all of whose families were lasting once; see LifetimeProgressTest for the rule. */
    private static Path whole(Path place) {
        History history = new History();
        Families.all().forEach(f -> history.asked(f, "0r 0r 0r 1r 1r 2r 10r 40w"));
        List<Answer> answers = history.answers();
        Child child = new Child(answers.get(0).child(), "Mina", History.START);
        try (Store store = Store.open(place)) {
            store.add(child);
            List<DrillSession> sessions = answers.stream()
                    .map(Answer::drill)
                    .distinct()
                    .map(d -> new DrillSession(
                            d,
                            child.id(),
                            History.START.plus(Duration.ofDays(d.getLeastSignificantBits())),
                            0,
                            Duration.ofMinutes(8),
                            1))
                    .toList();
            store.keepAll(sessions, answers);
        }
        return place;
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            en | a4     | The stairs are whole            | 12 Mar 2026
            en | letter | The stairs are whole            | 12 Mar 2026
            de | a4     | Die Treppe ist fertig           | 12. März 2026
            es | letter | La escalera está completa       | 12 mar 2026
            """)
    void theLastPageWaitsForTheLastStoneAndHasAllOfThemTheNameAndTheDay(
            String language, String size, String head, String day) throws IOException {
        CommandRun early = CommandRun.in(language, sample, "print", "whole", "--size", size);
        assertEquals(2, early.code());
        assertTrue(early.err().contains("Mina"), early.err());
        Path file = Files.exists(folder.resolve("whole.db"))
                ? folder.resolve("whole.db")
                : whole(folder.resolve("whole.db"));
        CommandRun made = CommandRun.in(language, file, "print", "whole", "--size", size);
        assertEquals("", made.err());
        Document page = Jsoup.parse(made.out());
        assertEquals(0, page.select("script, link, img, iframe, [src], [href]").size(), "points outside");
        assertTrue(page.select("style").html().contains("size: " + size + " portrait"));
        assertEquals(1, page.select("section").size());
        assertEquals(head, page.select("h1").text());
        assertEquals(4 * 55 + 1, page.select("rect").size(), "all stones and the capstone");
        assertEquals(List.of("Mina", day), page.select("svg text").eachText());
    }

    private static Document spoken(String language, String... words) {
        CommandRun run = CommandRun.in(language, sample, words);
        assertEquals("", run.err());
        return Jsoup.parse(run.out());
    }

    /**
     * The words of three letters or more that a reader, or a program that reads aloud, meets on a page; but for the name,
     * and for a word that is both English and German.
     */
    private static Set<String> told(Document page) {
        String all = page.title() + " " + page.body().text() + " "
                + String.join(" ", page.select("[aria-label]").eachAttr("aria-label"));
        return Pattern.compile("\\p{L}{3,}")
                .matcher(all)
                .results()
                .map(MatchResult::group)
                .filter(word -> !Set.of("Mina", "was").contains(word))
                .collect(Collectors.toCollection(TreeSet::new));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            de | cards    | Karten für Mina
            de | practice | Antworten für Mina, 02.03.2026
            de | table    | Die Einmaleinstafel bis 10 · 10
            de | progress | Tage mit Übung, nach Wochen:
            de | progress | so die Vorausschau vom 02.03.2026
            de | progress | im Aufbau:
            es | cards    | Tarjetas para Mina
            es | practice | Respuestas de Mina, 02/03/2026
            es | table    | La tabla hasta 10 × 10
            es | progress | Días con sesión, por semanas:
            es | progress | según lo previsto el 02/03/2026
            es | progress | en camino:
            """)
    void aPageSpeaksOneLanguageAndSaysWhich(String language, String page, String there) {
        Document made = spoken(language, "print", page);
        assertEquals(language, made.select("html").attr("lang"));
        String all = made.title() + " " + made.body().text();
        assertTrue(all.contains(there), all);
        Document english = printed(sample, "print", page);
        assertEquals("en", english.select("html").attr("lang"));
        Set<String> both = told(english);
        assertFalse(both.isEmpty());
        both.retainAll(told(made));
        assertEquals(Set.of(), both, "English is left");
    }

    /** Germany's schools write · and a colon for the signs; common practice, no source. */
    @Test
    void aGermanPageWritesTheSignsOfItsSchools() {
        String page = spoken("de", "print", "practice").body().text();
        assertTrue(page.contains(" · ") && page.contains(" : "), page);
        assertFalse(page.contains("×") || page.contains("÷"), page);
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
