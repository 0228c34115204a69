// SPDX-License-Identifier: Apache-2.0
package fourfold.paper;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import fourfold.commands.CommandRun;
import fourfold.commands.Practised;
import fourfold.commands.Sample;
import fourfold.facts.Families;
import fourfold.log.Answer;
import fourfold.log.Child;
import fourfold.log.DrillSession;
import fourfold.progress.History;
import fourfold.store.Store;
import fourfold.words.Words;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
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

    @BeforeAll
    static void thirtyDrillsLater() {
        sample = folder.resolve("sample.db");
        Sample.fill(sample);
        assertEquals(0, CommandRun.of(sample, "plan", "--runs", "1").code());
    }

    private static String[] onOutput(String... words) {
        return Stream.concat(Stream.of(words), Stream.of("--output", "-")).toArray(String[]::new);
    }

    private static Document printed(Path file, String... words) {
        CommandRun run = CommandRun.of(file, onOutput(words));
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
        List<Element> front = sides.get(0).select(".cut tr");
        List<Element> back = sides.get(1).select(".cut tr");
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
    void aPracticePageHasItsKeyRowByRowOnASheetOfItsOwnAndNoFamilyTwiceInARow() {
        Document page = printed(sample, "print", "practice");
        List<Element> sheets = page.select("section");
        assertEquals(2, sheets.size());
        List<Element> asked = sheets.get(0).select(".questions tr");
        List<Element> key = sheets.get(1).select(".questions tr");
        assertEquals(40, asked.size());
        assertEquals(40, key.size());
        for (int i = 0; i < asked.size(); i++) {
            String question = asked.get(i).text();
            assertTrue(asked.get(i).select("b").isEmpty(), "no answer on the page of questions");
            String solved = key.get(i).text();
            assertTrue(solved.startsWith(question.strip()), solved);
            String[] halves = solved.substring(solved.indexOf(' ')).split("=");
            assertEquals(result(halves[0]), Integer.parseInt(halves[1].strip()));
        }
        assertEquals(20, asked.stream().filter(q -> q.text().contains("×")).count());
        String number = sheets.get(0).select(".number").text();
        assertTrue(number.matches("Page \\d{4}"), number);
        assertEquals(number, sheets.get(1).select(".number").text());
        assertTrue(sheets.get(0).text().contains("Mina"));
        assertTrue(sheets.get(0).text().contains("Right: ______ of 40"));
    }

    /** What a parent can choose, on the command line, and what then stands on the page. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            practice --tables 7 --asked products --questions 10      | 2 | 10 | \\d+ \\d+ × \\d+ =.*
            practice --tables 7,8 --asked quotients --pick mixed     | 2 | 36 | \\d+ \\d+ ÷ \\d+ =.*
            practice --asked missing --questions 12                  | 2 | 12 | \\d+ \\d+ × = \\d+
            practice --letters large                                 | 4 | 40 | .*
            practice --copies 3 --questions 6                        | 2 | 6  | .*
            """)
    void whatWasChosenStandsOnThePage(String words, int sheets, int questions, String form) {
        Document page = printed(sample, ("print " + words).split(" "));
        List<Element> asked = page.select("section:not(.key) .questions tr");
        assertTrue(
                page.select("section").size() % sheets == 0,
                page.select("section").size() + " sheets");
        assertTrue(asked.size() >= questions, asked.size() + " questions");
        asked.forEach(row -> assertTrue(row.text().strip().matches(form), row.text()));
    }

    @Test
    void severalPagesAreDifferentAndTheSamePageIsNeverMadeTwice() throws IOException {
        Path own = Files.createDirectories(folder.resolve("several"));
        Path file = Files.copy(sample, own.resolve("family.db"));
        CommandRun three = CommandRun.of(file, "print", "practice", "--copies", "3");
        assertEquals(0, three.code(), three.err());
        List<String> made = three.out().lines().toList();
        assertEquals(3, Set.copyOf(made).size(), three.out());
        Path place = own.resolve("Fourfold");
        assertEquals(3, files(place));
        assertTrue(
                made.get(0).startsWith("Made: " + place.resolve("Mina – Practice – 2 Mar 2026 – Page ")), made.get(0));
        CommandRun again = CommandRun.of(file, "print", "practice", "--copies", "3");
        assertTrue(again.out().lines().allMatch(l -> l.startsWith("It is there already: ")), again.out());
        assertEquals(3, files(place));
        assertEquals(
                0,
                CommandRun.of(file, "print", "practice", "--letters", "large").code());
        assertEquals(4, files(place), "another look is another file beside it");
    }

    private static int files(Path place) throws IOException {
        try (Stream<Path> all = Files.list(place)) {
            return (int) all.count();
        }
    }

    @Test
    void theMinutesKeyCountsTheDigitsUpToEachRowAndNamesItsSource() {
        Document page = printed(sample, "print", "minute");
        List<Element> rows = page.select("section.key .minute tr");
        int digits = 0;
        for (Element row : rows) {
            digits +=
                    row.select("b").eachText().stream().mapToInt(String::length).sum();
            assertEquals(Integer.toString(digits), row.select(".count").text());
        }
        assertTrue(digits > 40, digits + " digits");
        assertTrue(page.select("section").get(0).select(".count").text().isBlank());
        assertTrue(page.text().contains("Burns, VanDerHeyden and Jiban 2006"), page.text());
        assertTrue(page.text().contains("14 to 31 digits correct a minute"));
    }

    @Test
    void everydayQuestionsComeToWhatTheirKeySays() {
        Document page = printed(sample, "print", "life");
        List<Element> told = page.select("section:not(.key) .told tr");
        List<Element> key = page.select("section.key .told tr");
        assertEquals(12, told.size());
        for (int i = 0; i < told.size(); i++) {
            List<Integer> numbers = Pattern.compile("\\d+")
                    .matcher(told.get(i).select("td").get(1).text())
                    .results()
                    .map(n -> Integer.parseInt(n.group()))
                    .toList();
            String[] fact = key.get(i).select(".answer").text().split(" = ");
            assertTrue(fact[0].contains(numbers.get(0) + " "), fact[0]);
            assertTrue(fact[0].endsWith(" " + numbers.get(1)), fact[0]);
            assertEquals(result(fact[0]), Integer.parseInt(fact[1]));
        }
    }

    @Test
    void theTilesOfTheDominoMakeOneRing() {
        Document page = printed(sample, "print", "domino");
        Map<Integer, Integer> next = new HashMap<>();
        for (Element tile : page.select(".tile")) {
            List<String> halves = tile.select("span").eachText();
            next.put(Integer.parseInt(halves.get(0)), result(halves.get(1)));
        }
        assertEquals(18, next.size());
        int at = next.keySet().iterator().next();
        Set<Integer> seen = new TreeSet<>();
        while (seen.add(at)) {
            at = Objects.requireNonNull(next.get(at));
        }
        assertEquals(18, seen.size());
    }

    @Test
    void everyPairHasOnePartnerAndEveryQuestionOfTheLottoOneField() {
        Document pairs = printed(sample, "print", "pairs");
        List<String> faces = pairs.select(".cut td").eachText();
        assertEquals(24, faces.size());
        List<String> questions = faces.stream().filter(f -> f.contains(" ")).toList();
        assertEquals(
                questions.stream()
                        .map(q -> Integer.toString(result(q)))
                        .sorted()
                        .toList(),
                faces.stream().filter(f -> !f.contains(" ")).sorted().toList());
        Document lotto = printed(sample, "print", "lotto");
        assertEquals(2, lotto.select(".board").size());
        assertEquals(
                lotto.select(".board td").eachText().stream().sorted().toList(),
                lotto.select(".cut td").eachText().stream()
                        .filter(q -> !q.isBlank())
                        .map(q -> Integer.toString(result(q)))
                        .sorted()
                        .toList());
        assertEquals(18, Set.copyOf(lotto.select(".board td").eachText()).size());
    }

    @ParameterizedTest
    @ValueSource(strings = {"en", "de", "es"})
    void aGameHasItsRulesInFiveSentences(String language) {
        for (String game : List.of("domino", "pairs", "lotto")) {
            List<String> rules =
                    spoken(language, "print", game).select(".rules li").eachText();
            assertEquals(5, rules.size());
            rules.forEach(rule -> assertEquals(1, rule.split("[.!?](?= |$)").length, rule));
        }
    }

    @Test
    void aFamilyIsDrawnWithAllItsDotsJumpsAndFacts() {
        Document page = printed(sample, "print", "pictures", "--tables", "7", "--pick", "mixed");
        assertEquals(2, page.select(".teach").size());
        for (Element family : page.select(".teach")) {
            String[] factors = family.select("h2").text().split(" × ");
            int low = Integer.parseInt(factors[0]);
            int product = low * Integer.parseInt(factors[1]);
            assertEquals(product, family.select("circle").size());
            assertEquals(low, family.select("path").size());
            assertTrue(family.select("svg").get(1).select("text").eachText().contains(Integer.toString(product)));
        }
        Document cards = printed(sample, "print", "picturecards");
        List<Element> front = cards.select("section").get(0).select(".cut > tbody > tr > td");
        List<Element> back = cards.select("section").get(1).select(".cut > tbody > tr > td");
        for (int i = 0; i < front.size(); i++) {
            // Two columns: the card beside it, seen from behind.
            String fact = back.get(i ^ 1).text();
            assertTrue(fact.contains("= " + front.get(i).select("circle").size()), fact);
        }
    }

    @Test
    void theSquareOfFourIsOpenInFrontAndWholeInTheKey() {
        Document page = printed(sample, "print", "squares");
        List<Element> open = page.select("section:not(.key) .four");
        List<Element> whole = page.select("section.key .four");
        assertEquals(6, open.size());
        for (int i = 0; i < open.size(); i++) {
            List<String> facts = whole.get(i).select("td:not(.arrow)").eachText().stream()
                    .filter(f -> !f.isBlank())
                    .toList();
            assertEquals(facts.size() - 1, open.get(i).select(".line").size());
            facts.forEach(f -> assertEquals(result(f.split(" = ")[0]), Integer.parseInt(f.split(" = ")[1])));
        }
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

    /** The report's numbers are those of its JSON: each one of them stands on the page. */
    @Test
    void theReportSaysTheNumbersOfItsJson() throws IOException {
        CommandRun run =
                CommandRun.of(sample, "print", "report", "--from", "2026-02-01", "--to", "2026-03-02", "--json");
        assertEquals("", run.err());
        JsonObject json = JsonParser.parseString(run.out()).getAsJsonObject();
        Document page = printed(sample, "print", "report", "--from", "2026-02-01", "--to", "2026-03-02");
        String told = page.text();
        assertTrue(told.contains("1 Feb 2026 to 2 Mar 2026"), told);
        assertTrue(
                told.contains(
                        "Days with practice: " + json.get("days") + "; time at questions: " + json.get("minutes")),
                told);
        JsonObject screen = json.getAsJsonObject("screen");
        assertTrue(
                told.contains(screen.get("drills") + " drills, " + screen.get("asked") + " questions from memory, "
                        + screen.get("right") + " right"),
                told);
        assertTrue(json.get("days").getAsInt() > 10 && json.get("minutes").getAsInt() > 50, run.out());
        List<String> tables = page.select("section")
                .get(0)
                .select("table.small")
                .get(0)
                .select("tr")
                .eachText();
        for (JsonElement one : json.getAsJsonArray("tables")) {
            JsonObject table = one.getAsJsonObject();
            String row = table.get("table") + " " + table.get("acquiring") + " " + table.get("accurate") + " "
                    + table.get("fluent") + " " + table.get("lasting");
            assertTrue(tables.stream().anyMatch(r -> r.startsWith(row)), row + " in " + tables);
        }
        for (JsonElement one : json.getAsJsonArray("families")) {
            JsonObject reached = one.getAsJsonObject().getAsJsonObject("reached");
            String name = one.getAsJsonObject().get("family").getAsString().replace("x", " × ");
            String row = name;
            for (String level : List.of("accurate", "fluent", "lasting")) {
                row += " " + (reached.has(level) ? reached.get(level).getAsString() : "–");
            }
            assertTrue(page.select("table.narrow tr").eachText().contains(row), row);
        }
        for (JsonElement month : json.getAsJsonArray("rates")) {
            assertTrue(told.contains(month.getAsJsonObject().get("products").getAsString()), told);
        }
        assertEquals(12, json.getAsJsonArray("sample").size());
        assertEquals(2 * 4 * 55, page.select("svg rect").size(), "the stairs then and now");
        assertTrue(told.contains("All 55 families fluent, as foreseen on 2026-03-02"), told);
        assertTrue(told.contains("qualified specialist"));
        assertTrue(told.contains("at least four of the last five right"), "the levels' definitions");
    }

    /** A number on the page may be a date's part, a time in seconds, or one of a family or a question; its JSON has it too. */
    @Test
    void eachNumberOfTheReportIsInItsJson() {
        String[] report = {"print", "report", "--from", "2026-02-01", "--to", "2026-03-02"};
        String out = CommandRun.of(
                        sample,
                        Stream.concat(Stream.of(report), Stream.of("--json")).toArray(String[]::new))
                .out();
        Set<String> known = new TreeSet<>();
        numbers(out).forEach(known::add);
        // The stairs then are those of the evening before the period.
        known.add("31");
        for (JsonElement one : JsonParser.parseString(out).getAsJsonObject().getAsJsonArray("sample")) {
            JsonElement whole = one.getAsJsonObject().get("milliseconds");
            if (whole != null) {
                known.add(Words.english()
                        .seconds(Duration.ofMillis(whole.getAsLong()))
                        .replaceAll("[^0-9.]", ""));
            }
        }
        Document page = printed(sample, report);
        // Sheets, the products on the stairs, the source's year and the words of the definitions are no numbers of the
        // child.
        page.select("footer, svg, section:last-of-type ul").remove();
        List<String> told = numbers(page.body().text().replace("Jiban 2006", ""));
        assertTrue(told.size() > 300, told.size() + " numbers");
        assertEquals(
                List.of(),
                told.stream().filter(n -> !known.contains(n)).distinct().toList(),
                known.toString());
    }

    private static List<String> numbers(String text) {
        return Pattern.compile("\\d+(\\.\\d+)?")
                .matcher(text)
                .results()
                .map(MatchResult::group)
                .map(n -> n.replaceFirst("^0+(?=\\d)", "").replaceFirst("\\.0$", ""))
                .toList();
    }

    private static String needed(Path file) {
        return String.join(
                "\n", printed(file, "print", "supplies").select("p, li").eachText());
    }

    /** What is to be bought follows what is planned: nothing in weeks off, picture cards for a table that opens. */
    @Test
    void whatIsNeededFollowsTheCalendarAndWhatIsShaky() throws IOException {
        Path own = Files.createDirectories(folder.resolve("supplies"));
        Path file = Files.copy(sample, own.resolve("family.db"));
        String usual = needed(file);
        assertTrue(usual.contains("until 29 Mar 2026. Days of practice: 16."), usual);
        assertTrue(usual.contains("Practice 4") && usual.contains("Dominoes of facts 2"), usual);
        assertTrue(usual.contains("Number: 18") && usual.contains("Letter. Sheets: 8"), usual);
        assertTrue(usual.contains("most needed first: ") && usual.contains("Cards 1"), usual);
        assertFalse(usual.contains("clock") || usual.contains("Picture cards"), usual);
        assertEquals(0, CommandRun.of(file, "settings", "timing", "minute").code());
        assertTrue(needed(file).contains("A clock with seconds"));
        assertEquals(
                0,
                CommandRun.of(
                                file,
                                "calendar",
                                "--start",
                                "2026-03-02",
                                "--days",
                                "Mon,Wed",
                                "--table",
                                "7",
                                "--multiply",
                                "2",
                                "--off",
                                "2026-03-16..2026-03-22")
                        .code());
        String planned = needed(file);
        assertTrue(planned.contains("Days of practice: 6."), planned);
        assertTrue(planned.contains("From 9 Mar 2026 on: the table of 7."), planned);
        assertTrue(planned.contains("Practice 3"), planned);
        assertFalse(planned.contains("Picture cards"), "every family was met before: " + planned);
        assertEquals(
                0,
                CommandRun.of(file, "calendar", "--off", "2026-03-02..2026-03-31")
                        .code());
        String off = needed(file);
        assertTrue(off.contains("All days until then are off") && !off.contains("Sheets"), off);
    }

    @Test
    void aTableThatOpensInTheComingWeeksIsPictureCardsForAChildToWhomItIsNew() throws IOException {
        Path file = Practised.once(Files.createDirectories(folder.resolve("opening")));
        assertFalse(needed(file).contains("Picture cards"));
        String[] seven = {"calendar", "--start", "2026-03-02", "--table", "7", "--multiply", "2"};
        assertEquals(0, CommandRun.of(file, seven).code());
        // Nine families or ten, eight to a sheet.
        assertTrue(needed(file).contains("Picture cards 2"), needed(file));
    }

    @Test
    void theChildsPageTellsWhatItCanAndNoGrade() {
        Document page = printed(sample, "print", "cando");
        assertEquals("What I can do now", page.select("h1").text());
        assertEquals(4 * 55, page.select("svg rect").size());
        String told = page.select(".can").text();
        assertTrue(told.contains("I practised on 29 days."), told);
        assertFalse(page.text().matches(".*(wrong|error|%).*"), page.text());
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
        CommandRun early = CommandRun.in(language, sample, onOutput("print", "whole", "--size", size));
        assertEquals(2, early.code());
        assertTrue(early.err().contains("Mina"), early.err());
        Path file = Files.exists(folder.resolve("whole.db"))
                ? folder.resolve("whole.db")
                : whole(folder.resolve("whole.db"));
        CommandRun made = CommandRun.in(language, file, onOutput("print", "whole", "--size", size));
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
        CommandRun run = CommandRun.in(language, sample, onOutput(words));
        assertEquals("", run.err());
        return Jsoup.parse(run.out());
    }

    /**
     * The words of three letters or more that a reader, or a program that reads aloud, meets on a page; but for the name,
     * and for words that are both English and German.
     */
    private static Set<String> told(Document page) {
        String all = page.title() + " " + page.body().text() + " "
                + String.join(" ", page.select("[aria-label]").eachAttr("aria-label"));
        return Pattern.compile("\\p{L}{3,}")
                .matcher(all)
                .results()
                .map(MatchResult::group)
                .filter(word -> !Set.of(
                                "Mina",
                                "was",
                                "Lotto",
                                "Burns",
                                "VanDerHeyden",
                                "Jiban",
                                "Letter",
                                "Jan",
                                "Feb",
                                "Mar",
                                "min",
                                "Enter")
                        .contains(word))
                .collect(Collectors.toCollection(TreeSet::new));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            de | cards    | Mina – Karten
            de | practice | Übungsblatt Mina 2. März 2026 Blatt
            de | minute   | Richtige Ziffern in einer Minute
            de | life     | Im Alltag
            de | squares  | Viererquadrate
            de | pictures | Die Familie sehen
            de | domino   | Domino mit Aufgaben
            de | table    | Die Einmaleinstafel bis 10 · 10
            de | supplies | Was wir brauchen
            de | cando    | Das ist deine Treppe
            de | report   | so die Vorausschau vom 02.03.2026
            de | report   | Tage mit Übung
            es | cards    | Mina – Tarjetas
            es | practice | Práctica Mina 2 mar 2026 Hoja
            es | minute   | Cifras bien en un minuto
            es | life     | En la vida diaria
            es | squares  | Cuadrados de cuatro
            es | pictures | Ver la familia
            es | pairs    | Parejas
            es | table    | La tabla hasta 10 × 10
            es | supplies | Lo que necesitamos
            es | cando    | Esta es tu escalera
            es | report   | según lo previsto el 02/03/2026
            es | report   | Días con práctica
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
        assertEquals(0, page.select("header b").size());
        assertTrue(page.select("header").get(0).text().contains("<b>Mi&na\"</b>"));
        CommandRun made = CommandRun.of(file, "print", "practice");
        assertEquals(0, made.code(), made.err());
        assertTrue(made.out().contains("bMi&nab – Practice"), made.out());
    }
}
