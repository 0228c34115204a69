// SPDX-License-Identifier: Apache-2.0
package fourfold.commands;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import fourfold.words.Words;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedClass;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Guards against two numbers for one thing: each number of the JSON of year, plan and rates is looked for in the tables, in
 * the sentences and on the screen, of random children whose parents begin a family again and hold another. Absent by intent: trends from the rates' table of drills, and weeks, which the plan's
 * sentences leave to the year.
 */
@ParameterizedClass
@ValueSource(longs = {201, 202})
class EveryFaceOfTheYearTest {
    private static final Words WORDS = Words.english();

    @TempDir
    private Path folder;

    private Path file = Path.of("");
    private final long seed;

    EveryFaceOfTheYearTest(long seed) {
        this.seed = seed;
    }

    @BeforeEach
    void sample() {
        file = folder.resolve("sample.db");
        Sample.random(file, seed);
        SplittableRandom dice = new SplittableRandom(seed);
        LocalDate start = LocalDate.parse("2026-01-12").plusWeeks(dice.nextInt(4));
        said("calendar --start " + start);
        for (String act : List.of("reset ", "hold ")) {
            said(act + (2 + dice.nextInt(8)) + "x" + (2 + dice.nextInt(8)));
        }
    }

    private String said(String command) {
        CommandRun run = CommandRun.of(file, command.split(" "));
        assertEquals(0, run.code(), run.err());
        return run.out();
    }

    private JsonObject json(String command) {
        return JsonParser.parseString(said(command + " --json")).getAsJsonObject();
    }

    private static int number(JsonElement of, String field) {
        return of.getAsJsonObject().get(field).getAsInt();
    }

    private static LocalDate day(JsonElement of, String field) {
        return LocalDate.parse(of.getAsJsonObject().get(field).getAsString());
    }

    private static String line(String text, String begin) {
        return text.lines()
                .filter(l -> l.startsWith(begin))
                .findFirst()
                .orElseThrow(() -> new AssertionError(begin + "\n" + text));
    }

    private static void shows(String line, String number) {
        assertTrue(line.contains(number), "\"" + number + "\" is not in: " + line);
    }

    private static void shows(String line, String words, int number) {
        assertEquals(number > 0, line.contains(words + number), words + number + " in: " + line);
    }

    @Test
    void aWeekIsTheSameInTheYearsJsonAndItsSentences() {
        JsonObject year = json("year");
        String told = said("year");
        int weeks = 0;
        for (JsonElement week : year.getAsJsonArray("weeks")) {
            String line = line(told, "Week of " + WORDS.date(day(week, "monday")) + ", ");
            if (week.getAsJsonObject().has("number")) {
                shows(line, "number " + number(week, "number") + ": ");
                shows(line, "planned " + number(week, "planned"));
            }
            shows(line, "done ", number(week, "done"));
            shows(line, "missed ", number(week, "missed"));
            weeks++;
        }
        assertTrue(weeks >= 36, "weeks: " + weeks);
        String where = told.lines().findFirst().orElseThrow();
        assertTrue(number(year, "done") > 0, where);
        shows(where, "Days done: " + number(year, "done") + ";");
        shows(where, "missed: " + number(year, "missed") + ";");
        shows(where, "families fluent: " + number(year, "fluent") + " of 55");
        try (Journey journey = new Journey(file, CommandRun.NOW, 80, 24, true)) {
            String page = journey.keys("3 y").picture().replaceAll("\\s+", " ");
            shows(page, "Days done: " + number(year, "done") + ";");
            shows(page, "families fluent: " + number(year, "fluent") + " of 55");
        }
    }

    @Test
    void aTableIsTheSameInThePlanAndInTheYear() {
        JsonObject plan = json("plan --runs 0");
        String table = said("plan --runs 0");
        String plain = said("plan --plain --runs 0");
        String year = said("year");
        List<JsonElement> ofYear = json("year").getAsJsonArray("tables").asList();
        int at = 0;
        for (JsonElement one : plan.getAsJsonArray("tables")) {
            int[] counts = {
                number(one, "table"),
                number(one, "families"),
                number(one, "met"),
                number(one, "accurate"),
                number(one, "fluent")
            };
            for (String same : List.of("table", "families", "met", "accurate", "fluent")) {
                assertEquals(number(one, same), number(ofYear.get(at), same), same);
            }
            at++;
            String row = String.format(" *%d +%d +%d +%d +%d *", counts[0], counts[1], counts[2], counts[3], counts[4]);
            assertTrue(table.lines().anyMatch(l -> l.matches(row)), row + "\n" + table);
            String sentence = String.format(
                    "families %d, met %d, accurate %d, fluent %d.", counts[1], counts[2], counts[3], counts[4]);
            shows(line(plain, "The " + counts[0] + " times table:"), sentence);
            shows(line(year, "The " + counts[0] + " times table:"), sentence);
        }
        assertEquals(10, at);
    }

    @Test
    void aRateIsTheSameOnThePageInTheTableAndInWords() {
        String table = said("rates");
        String plain = said("rates --plain");
        String page;
        try (Journey journey = new Journey(file, CommandRun.NOW, 120, 60, true)) {
            page = journey.keys("3 m 5").picture();
        }
        int rates = 0;
        for (JsonElement one : json("rates").getAsJsonArray("drills")) {
            LocalDate day = day(one, "day");
            for (String operation : List.of("products", "quotients")) {
                JsonObject rate = one.getAsJsonObject().getAsJsonObject(operation);
                if (rate == null) {
                    continue;
                }
                String digits = WORDS.number(rate.get("digits_a_minute").getAsDouble());
                String facts = WORDS.number(rate.get("facts_a_minute").getAsDouble());
                String name = WORDS.say("rates." + operation);
                String told = WORDS.date(day) + ", " + name + ": " + digits + " digits and " + facts
                        + " facts correct a minute, of " + number(rate, "answers") + " answers.";
                shows(plain, told);
                for (String face : List.of(table, page)) {
                    String begin = WORDS.shortDate(day);
                    assertTrue(
                            face.lines()
                                    .map(String::strip)
                                    .anyMatch(l -> l.startsWith(begin) && l.contains(digits) && l.contains(facts)),
                            digits + " " + facts + "\n" + face);
                }
                rates++;
            }
        }
        assertTrue(rates > 3, "rates: " + rates);
    }
}
