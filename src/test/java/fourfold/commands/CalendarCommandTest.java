// SPDX-License-Identifier: Apache-2.0
package fourfold.commands;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Guards against a calendar that can't be written or read from the command line. The clock stands at Monday, 2 March 2026. */
class CalendarCommandTest {
    @TempDir
    private Path folder;

    private Path file = Path.of("");

    @BeforeEach
    void oneChild() {
        file = folder.resolve("calendar.db");
        said("children", "--add", "Mina");
    }

    private String said(String... arguments) {
        CommandRun run = CommandRun.of(file, arguments);
        assertEquals(0, run.code(), run.err());
        assertEquals("", run.err());
        return run.out();
    }

    private JsonObject json() {
        return JsonParser.parseString(said("calendar", "--json")).getAsJsonObject();
    }

    private JsonObject lesson(int table, String operation) {
        for (var one : json().getAsJsonArray("tables")) {
            if (one.getAsJsonObject().get("table").getAsInt() == table) {
                return one.getAsJsonObject().getAsJsonObject(operation);
            }
        }
        throw new AssertionError("no table " + table);
    }

    @Test
    void anEmptyCalendarSaysThatTablesGoByProgressInTheUsualOrder() {
        List<String> lines = said("calendar").lines().toList();
        assertEquals("The school year has no start yet: tables go by progress.", lines.get(0));
        assertEquals("Practice: 4 days a week.", lines.get(1));
        assertEquals("Table  2   multiplication: by progress   division: by progress", lines.get(2));
        assertEquals("Table  5   multiplication: by progress   division: by progress", lines.get(3));
        assertEquals(12, lines.size());
    }

    @Test
    void whatIsWrittenIsToldInWordsAndAsJson() {
        String told = said(
                "calendar",
                "--start",
                "2026-02-02",
                "--days",
                "Mon,Tue,Thu,Fri",
                "--off",
                "2026-02-16..2026-02-22",
                "--begin",
                "england",
                "--week",
                "2026-03-04",
                "--note",
                "fractions");
        assertTrue(told.contains("The school year started on 2 Feb 2026. This is week 4."), told);
        assertTrue(told.contains("Practice: Mon Tue Thu Fri."), told);
        assertTrue(told.contains("Off: 16 Feb 2026 to 22 Feb 2026."), told);
        assertTrue(
                told.contains(
                        "Table  2   multiplication: week 1, open since 2 Feb 2026   division: week 5, from 9 Mar 2026"),
                told);
        assertTrue(told.contains("Week of 2 Mar 2026: fractions"), told);
        JsonObject json = json();
        assertEquals("2026-02-02", json.get("start").getAsString());
        assertEquals(4, json.get("week").getAsInt());
        assertEquals(4, json.get("days_a_week").getAsInt());
        assertEquals(
                "2026-02-22",
                json.getAsJsonArray("off").get(0).getAsJsonObject().get("last").getAsString());
        assertEquals(5, lesson(2, "divide").get("week").getAsInt());
        assertEquals("2026-03-09", lesson(2, "divide").get("opens").getAsString());
        assertFalse(lesson(2, "divide").get("open").getAsBoolean());
        assertTrue(lesson(2, "multiply").get("open").getAsBoolean());
    }

    @Test
    void whatWasTaughtIsOpenTodayAndPracticeAwayIsTickedOff() {
        assertEquals("Multiplication of table 7 was taught: it is open from today.\n", said("taught", "7"));
        assertEquals("Division of table 7 was taught: its sign comes from today.\n", said("taught", "7", "divide"));
        assertEquals("taught", lesson(7, "divide").get("by").getAsString());
        assertEquals("2026-03-02", lesson(7, "multiply").get("opens").getAsString());
        assertEquals("Mon 2 Mar 2026: practised with cards. It counts as a day.\n", said("away", "cards"));
        assertEquals(
                "Thu 26 Feb 2026: practised with a game. It counts as a day.\n", said("away", "2026-02-26", "game"));
        String told = said("calendar");
        assertTrue(
                told.contains("Table  7   multiplication: taught on 2 Mar 2026   division: taught on 2 Mar 2026"),
                told);
        assertTrue(told.contains("Thu 26 Feb 2026: practised with a game"), told);
        assertEquals(
                List.of("taught 7 multiply", "taught 7 divide", "away 2026-03-02 cards", "away 2026-02-26 game"),
                Rows.column(file, "SELECT kind || ' ' || detail FROM act ORDER BY nr"));
    }

    @Test
    void theHistoryNamesWhatWasWritten() {
        said("calendar", "--start", "2026-02-02", "--table", "7", "--multiply", "5", "--divide", "later");
        said("taught", "8", "divide");
        said("away", "page");
        String history = said("history");
        for (String words : List.of(
                "school year from 2 Feb 2026",
                "table 7 taught: × week 5, ÷ when taught",
                "division of table 8 was taught",
                "2 Mar 2026 practised with a page")) {
            assertTrue(history.contains(words), words + "\n" + history);
        }
        String json = said("history", "--json");
        assertTrue(json.contains("\"part\" : \"tables\"") && json.contains("\"practice\" : \"page\""), json);
    }

    @ParameterizedTest
    @ValueSource(strings = {"en", "de", "es"})
    void everyLanguageTellsIt(String language) {
        said("calendar", "--start", "2026-02-02", "--begin", "england", "--off", "2026-03-02..2026-03-06");
        said("taught", "7");
        CommandRun run = CommandRun.in(language, file, "calendar");
        assertEquals(0, run.code(), run.err());
        assertTrue(run.out().lines().count() >= 13, run.out());
        for (List<String> wrong : List.of(
                List.of("calendar", "--off", "soon"),
                List.of("calendar", "--table", "7"),
                List.of("away", "2027-01-01", "cards"))) {
            CommandRun refused = CommandRun.in(language, file, wrong.toArray(String[]::new));
            assertEquals(2, refused.code());
            assertEquals(1, refused.err().lines().count(), refused.err());
        }
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "calendar --start soon | a day is written like 2026-09-07, not soon",
                "calendar --days Smarch | days are written like Mon,Tue,Thu,Fri, or how many a week from 1 to 7, not Smarch",
                "calendar --off 2026-03-05..2026-03-01 | days off are written like",
                "calendar --begin france | begin",
                "calendar --begin england | give --start and a day as well",
                "calendar --table 7 --multiply 5 | give --start and a day as well",
                "calendar --start 2026-02-02 --table 7 --multiply 999 | a week is a number from 1 to 150, progress or later",
                "calendar --table 11 --multiply later | a table is a number from 1 to 10, not 11",
                "calendar --multiply 5 | --multiply and --divide need --table",
                "calendar --table 7 | --table needs --multiply or --divide",
                "calendar --note x | a note needs --note and either --day or --week",
                "calendar --early maybe | early",
                "taught 7 add | multiply, divide",
                "taught 77 | a table is a number from 1 to 10, not 77",
                "away cinema | cards, page, game",
                "away 2026-12-01 cards | 2026-12-01 has not come yet"
            })
    void whatCannotBeTakenIsToldInOneLineAndNothingIsKept(String arguments, String told) {
        CommandRun run = CommandRun.of(file, arguments.strip().split(" "));
        assertEquals(2, run.code(), run.out());
        assertEquals(1, run.err().lines().count(), run.err());
        assertTrue(run.err().contains(told), run.err());
        assertEquals(List.of(), Rows.column(file, "SELECT kind FROM act"));
    }

    @Test
    void aDrillBeforeTheFirstDateSaysWhyItAsksNothing() {
        said("calendar", "--start", "2026-03-09", "--begin", "england", "--table", "1", "--multiply", "later");
        String drill = CommandRun.typed(file, "\n\n\n", "drill", "--plain").out();
        assertTrue(drill.contains("The calendar says: not yet."), drill);
        assertTrue(said("grid").contains("The calendar opens no table yet"), said("grid"));
    }
}
