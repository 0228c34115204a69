// SPDX-License-Identifier: Apache-2.0
package fourfold.screens.parent;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import fourfold.facts.Families;
import fourfold.facts.Family;
import fourfold.facts.Operation;
import fourfold.facts.Question;
import fourfold.facts.Trace;
import fourfold.home.Standing;
import fourfold.insight.FamilyRecord;
import fourfold.insight.FamilyReport;
import fourfold.insight.Grid;
import fourfold.insight.LifetimeProgress;
import fourfold.log.ActionRecord;
import fourfold.log.Answer;
import fourfold.log.Child;
import fourfold.log.ParentAction;
import fourfold.plain.FamilyText;
import fourfold.plain.GridText;
import fourfold.progress.Mastery;
import fourfold.progress.Progress;
import fourfold.records.ProgressJson;
import fourfold.scheduling.LastingGain;
import fourfold.simulation.CompetingKind;
import fourfold.simulation.SchoolYear;
import fourfold.terminal.Picture;
import fourfold.words.Stones;
import fourfold.words.Words;
import java.io.IOException;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.UUID;
import java.util.function.Predicate;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Guards against two numbers for one thing: each number of a family's JSON and of the grid's is looked for on the screen's
 * page, in the table and in the plain sentences, of children who practise for some weeks and whose parents begin families
 * again. Where a face does not show a number, that is written here: the screen's page and the table count neither missing
 * answers nor slips for each trace, and name the three newest wrong numbers, or none; the screen says how many days ago a fact
 * was asked; the picture of the grid has no counts. Paper has stones and counts by table alone.
 */
class EveryFaceTest {
    private static final Words WORDS = Words.english();

    private final List<Answer> answers = new ArrayList<>();
    private final List<ActionRecord> actions = new ArrayList<>();
    private Instant now = SchoolYear.START;

    private void practise(long seed) {
        SplittableRandom dice = new SplittableRandom(seed);
        SchoolYear year = new SchoolYear(new CompetingKind().create(seed), new LastingGain(), seed, answers::add);
        year.run(2 + dice.nextInt(2));
        now = year.now().plus(Duration.ofHours(dice.nextInt(100)));
        Instant begin = answers.get(0).askedAt();
        for (int i = 0; i < 12; i++) {
            Family family = Families.all().get(dice.nextInt(Families.COUNT));
            Instant at =
                    begin.plusSeconds(dice.nextLong(Duration.between(begin, now).toSeconds()));
            ParentAction action = i % 3 == 0
                    ? new ParentAction.Focus(family)
                    : i % 3 == 1 ? new ParentAction.Hold(family) : new ParentAction.Reset(family);
            actions.add(new ActionRecord(new UUID(seed, i), new UUID(seed, -1), at, 0, action));
        }
    }

    @ParameterizedTest
    @ValueSource(longs = {101, 102})
    void aNumberOfAFamilyIsTheSameOnEveryFace(long seed) throws IOException {
        practise(seed);
        Progress progress = Progress.of(actions, answers);
        LifetimeProgress stones = new LifetimeProgress(actions);
        answers.forEach(stones);
        Grid grid = Grid.of(progress, now);
        JsonObject cells =
                JsonParser.parseString(ProgressJson.grid("Mina", grid, stones)).getAsJsonObject();
        String told = GridText.sentences(WORDS, "Mina", grid, progress, stones, List.of(), true);
        fadingMeansTheSame(cells, progress, stones, grid);
        int traces = 0;
        for (Family family : Families.all()) {
            FamilyRecord log = new FamilyRecord(family);
            answers.forEach(log);
            FamilyReport report = FamilyReport.of(progress, stones, log, family, now);
            JsonObject json =
                    JsonParser.parseString(ProgressJson.family("Mina", report)).getAsJsonObject();
            JsonObject cell =
                    cells.get("families").getAsJsonArray().get(family.index()).getAsJsonObject();
            inTheGrid(told, family, cell);
            for (String same : List.of("level", "stones", "focus", "hold", "due_again", "known_by_trial")) {
                assertEquals(json.get(same), cell.get(same), family + " " + same);
            }
            assertEquals(sum(json, "asked"), cell.get("asked").getAsInt(), family + " asked");
            assertEquals(sum(json, "right"), cell.get("right").getAsInt(), family + " right");
            String page = page(progress, stones, family, log);
            String table = FamilyText.table(WORDS, "Mina", report, progress.steering(), true);
            String sentences = FamilyText.sentences(WORDS, "Mina", report, progress.steering(), true);
            for (int i = 0; i < family.traces().size(); i++) {
                JsonObject trace = json.get("traces").getAsJsonArray().get(i).getAsJsonObject();
                onThePage(line(page, family.traces().get(i)), trace);
                inTheTable(line(table, family.traces().get(i)), trace);
                inSentences(sentences, family.traces().get(i), trace);
                traces++;
            }
        }
        assertEquals(Trace.COUNT, traces);
    }

    /** The sign ~ stands where JSON says due_again, unless the parent's own sign goes before it; words say both. */
    private void fadingMeansTheSame(JsonObject cells, Progress progress, LifetimeProgress stones, Grid grid)
            throws IOException {
        int signs = 0;
        int fading = 0;
        String meaning = WORDS.say("grid.marks");
        StringBuilder table = new StringBuilder();
        GridText.write(table, WORDS, "Mina", grid, stones, List.of(), true);
        for (JsonElement one : cells.get("families").getAsJsonArray()) {
            JsonObject cell = one.getAsJsonObject();
            boolean due = cell.get("due_again").getAsBoolean();
            fading += due ? 1 : 0;
            signs += due
                            && !cell.get("focus").getAsBoolean()
                            && !cell.get("hold").getAsBoolean()
                    ? 1
                    : 0;
            Family family = Families.all()
                    .get(cells.get("families").getAsJsonArray().asList().indexOf(one));
            String corner = stairs(progress, stones, family).replace(meaning, "");
            assertEquals(due, corner.contains(WORDS.say("grid.fading")), family + "\n" + corner);
        }
        assertTrue(fading > 0, "nothing fades, so nothing is shown");
        assertEquals(signs, tildes(table.toString().replace(meaning, "")), table.toString());
        String picture = stairs(progress, stones, Family.of(1, 1)).replace(meaning, "");
        assertEquals(signs, tildes(picture), picture);
    }

    private static long tildes(String text) {
        return text.chars().filter(c -> c == '~').count();
    }

    private String stairs(Progress progress, LifetimeProgress stones, Family chosen) {
        SteeringKeys steers =
                new SteeringKeys(WORDS, new Child(new UUID(1, 1), "Mina", now), new Standing(progress, stones));
        Picture picture = new Picture(130, 40, true);
        GridPage.Look look = new GridPage.Look(GridPage.View.FAMILY, SelectionScope.FAMILY, false);
        new GridPage(steers, progress, now, chosen, look, false).draw(picture);
        return picture.toString();
    }

    private static int sum(JsonObject json, String field) {
        int sum = 0;
        for (JsonElement trace : json.get("traces").getAsJsonArray()) {
            sum += trace.getAsJsonObject().get(field).getAsInt();
        }
        return sum;
    }

    private String page(Progress progress, LifetimeProgress stones, Family family, FamilyRecord log) {
        Child child = new Child(new UUID(1, 1), "Mina", now);
        SteeringKeys steers = new SteeringKeys(WORDS, child, new Standing(progress, stones));
        Picture picture = new Picture(100, 30, true);
        new FamilyPage(steers, family, log, now, false).draw(picture);
        return picture.toString();
    }

    private static String line(String face, Trace trace) {
        String asked = WORDS.asked(trace.questions().get(0));
        Predicate<String> isOfTrace = line -> line.contains(asked) && !line.contains("=") && !line.contains("for");
        return face.lines().filter(isOfTrace).findFirst().orElseThrow(() -> new AssertionError(asked + "\n" + face));
    }

    private static String chances(JsonObject trace, String between) {
        List<String> all = new ArrayList<>();
        trace.get("quick_now_week_month_percent").getAsJsonArray().forEach(c -> all.add(c.getAsString()));
        return String.join(between, all);
    }

    private static String seconds(JsonObject trace) {
        return WORDS.number(trace.get("median_thinking_ms").getAsLong() / 1000.0);
    }

    private static void onThePage(String line, JsonObject trace) {
        shows(line, trace.get("level").getAsString());
        shows(line, stones(trace));
        int asked = trace.get("asked").getAsInt();
        shows(line, asked == 0 ? "–" : trace.get("right").getAsInt() + "/" + asked);
        if (trace.has("median_thinking_ms")) {
            shows(line, " " + seconds(trace) + " ");
        }
        shows(line.replaceAll(" +", " "), chances(trace, " "));
    }

    private static String stones(JsonObject trace) {
        return Stones.of(Mastery.values()[trace.get("stones").getAsInt()], true).strip();
    }

    private static void inTheTable(String line, JsonObject trace) {
        shows(line, trace.get("level").getAsString());
        shows(line, stones(trace));
        int asked = trace.get("asked").getAsInt();
        shows(line, asked == 0 ? "-" : trace.get("right").getAsInt() + " of " + asked);
        if (trace.has("median_thinking_ms")) {
            shows(line, " " + seconds(trace));
        }
        for (String day : List.of("last_asked", "due")) {
            if (trace.has(day)) {
                shows(line, trace.get(day).getAsString());
            }
        }
        shows(line, chances(trace, "/"));
    }

    private static void inSentences(String sentences, Trace trace, JsonObject json) {
        String sentence = sentences
                .lines()
                .filter(l -> l.startsWith(spoken(trace) + ":") || l.startsWith(spoken(trace) + " and "))
                .findFirst()
                .orElseThrow(() -> new AssertionError(spoken(trace) + "\n" + sentences));
        shows(
                sentence,
                json.get("level").getAsString() + "; stones: "
                        + json.get("stones").getAsInt() + " of 4");
        int asked = json.get("asked").getAsInt();
        if (asked == 0) {
            shows(sentence, "not asked yet");
        } else {
            shows(sentence, json.get("right").getAsInt() + " of " + asked + " answers right");
            shows(sentence, "without an answer: " + json.get("missing").getAsInt());
            shows(sentence, "corrected before Enter: " + json.get("mended").getAsInt());
        }
        if (json.has("median_thinking_ms")) {
            shows(sentence, "usually " + seconds(json));
        }
        if (json.has("last_asked")) {
            shows(sentence, "last asked on " + date(json, "last_asked"));
            shows(sentence, "due on " + date(json, "due"));
        }
        json.get("quick_now_week_month_percent")
                .getAsJsonArray()
                .forEach(c -> shows(sentence, " " + c.getAsInt() + " "));
        for (JsonElement wrong : json.get("wrong").getAsJsonArray()) {
            JsonObject one = wrong.getAsJsonObject();
            shows(sentences, "Wrong: " + one.get("typed").getAsInt() + " for ");
            shows(sentences, "times: " + one.get("times").getAsInt() + ";");
        }
    }

    private static String spoken(Trace trace) {
        Question question = trace.questions().get(0);
        return question.left()
                + (question.operation() == Operation.MULTIPLY ? " times " : " divided by ")
                + question.right();
    }

    private static void inTheGrid(String told, Family family, JsonObject cell) {
        String name = family.low() + " times " + family.high();
        if (cell.get("level").getAsString().equals("new")) {
            shows(told.substring(told.indexOf("Not met yet:")), name);
            return;
        }
        String sentence = told.lines()
                .filter(l -> l.startsWith(name + " is "))
                .findFirst()
                .orElseThrow();
        shows(
                sentence,
                String.format(
                        "%d: %s, stones: %d of 4, %d of %d answers right",
                        cell.get("product").getAsInt(),
                        cell.get("level").getAsString(),
                        cell.get("stones").getAsInt(),
                        cell.get("right").getAsInt(),
                        cell.get("asked").getAsInt()));
        assertEquals(cell.get("focus").getAsBoolean(), sentence.contains("focus"), sentence);
        assertEquals(cell.get("hold").getAsBoolean(), sentence.contains("on hold"), sentence);
        assertEquals(cell.get("due_again").getAsBoolean(), sentence.contains("may be fading"), sentence);
    }

    private static void shows(String line, String number) {
        assertTrue(line.contains(number), "\"" + number + "\" is not in: " + line);
    }

    private static String date(JsonObject json, String field) {
        return WORDS.date(LocalDate.parse(json.get(field).getAsString()));
    }
}
