// SPDX-License-Identifier: Apache-2.0
package fourfold.commands;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Guards against a plain drill that a screen reader garbles, that loses an answer, or that cannot be left. */
class PlainDrillTest {
    private static final String DIGITS_ONLY = "Please type digits only, at most 4. Nothing was counted.";
    private static final String PAUSE =
            "Pause. The clock stands still. Press Enter to go on, or type q to stop for today.";

    /** Rows, jumps or parts; a division takes its whole apart. */
    private static final String PICTURE = "(?:\\d+ rows? of \\d+ makes? \\d+|\\d+ jumps? of \\d+ reach(?:es)? \\d+"
            + "|\\d+ (?:part|equal parts) of \\d+ makes? \\d+|\\d+ dots in (?:1 row|\\d+ rows: \\d+ in each row)"
            + "|From \\d+ back to 0 in jumps of \\d+: \\d+ jumps|1 jump of \\d+ from \\d+ back to 0|\\d+ in 1 part|\\d+ in \\d+ equal parts: \\d+ in each)";

    @TempDir
    private Path folder;

    private Path file() {
        return folder.resolve("family.db");
    }

    private static List<String> typed(Path file) {
        return Rows.column(file, "SELECT COALESCE(typed, '') FROM answer_log ORDER BY position");
    }

    @Test
    void aWholeDrillIsKeptLineByLine() {
        Practised.children(folder, "Mina");
        PlainChild child = PlainChild.whoIsRight();
        CommandRun run = child.drill(file(), "--minutes", "3");
        assertEquals(0, run.code());
        assertEquals("", run.err());
        List<String> said = run.out().lines().toList();
        assertEquals("Hello Mina. This drill lasts about 3 minutes.", said.get(0));
        assertEquals("Everything is kept. See you next time, Mina.", child.last());
        assertEquals(
                "You practised for 3 minutes.",
                said.stream().filter(l -> l.startsWith("You pr")).findFirst().orElseThrow());
        assertEquals(child.typed().stream().filter(line -> !line.isEmpty()).toList(), typed(file()));
        assertTrue(typed(file()).size() > 40, "answers: " + typed(file()).size());
        assertEquals(List.of("plain"), Rows.column(file(), "SELECT DISTINCT surface FROM answer_log"));
        assertEquals(List.of("1500"), Rows.column(file(), "SELECT DISTINCT whole_ms FROM answer_log"));
        assertEquals(List.of(), Rows.column(file(), "SELECT position FROM answer_log WHERE first_key_ms IS NOT NULL"));
        DrillRows.checkPurposes(file());
        DrillRows.checkInverses(file());
    }

    @Test
    void aComputerThatSleptOverALineLeavesThatAnswerUntimed() {
        Practised.children(folder, "Mina");
        PlainChild child = PlainChild.whoIsRight().sleepingAt(4, 3_600_000);
        assertEquals(0, child.drill(file(), "--minutes", "2").code());
        List<String> times = Rows.column(file(), "SELECT COALESCE(whole_ms, 'none') FROM answer_log ORDER BY position");
        assertEquals("none", times.get(4));
        assertEquals(1, times.stream().filter("none"::equals).count());
        assertTrue(times.size() > 20, "the hour asleep was no practice: " + times.size());
    }

    @Test
    void everythingIsSaidInWords() {
        Practised.children(folder, "Mina");
        int[] questions = {0};
        PlainChild child = new PlainChild(
                (line, count) -> line.startsWith("What is") && questions[0]++ < 2 ? "" : PlainChild.right(line));
        String said = child.drill(file(), "--minutes", "5").out();
        assertTrue(said.contains("Here is a new family: "), said);
        assertTrue(said.matches("(?s).*\\R" + PICTURE + "\\.\\R\\d+ times \\d+ is \\d+\\..*"), said);
        assertTrue(said.contains("\nRight. "), said);
        // Letters, digits and the marks of a sentence; nothing else has a name that every screen reader says.
        assertTrue(said.matches("[A-Za-z0-9 .,?:\\r\\n]+"), said);
        assertTrue(said.lines().allMatch(line -> line.matches(".*[.?]")), said);
    }

    @Test
    void aWrongAnswerIsPutRightInWordsAndTypedOnce() {
        Practised.once(folder);
        PlainChild child = new PlainChild((line, count) -> {
            boolean question = line.startsWith("What is");
            return question ? "1" : line.contains("It is") ? null : PlainChild.right(line);
        });
        String last = "";
        CommandRun run = child.drill(file());
        for (String line : run.out().lines().toList()) {
            if (line.contains("It is")) {
                last = line.substring(line.indexOf("It is"));
            }
        }
        assertTrue(
                last.matches("It is (\\d+)\\. " + PICTURE + ", so \\d+ (times|divided by) \\d+ is \\1\\. Type \\1\\."),
                last);
    }

    @Test
    void anEmptyLineShowsTheAnswer() {
        Practised.once(folder);
        PlainChild child = new PlainChild((line, count) ->
                line.startsWith("What is") ? "" : line.startsWith("Here it is.") ? "q" : PlainChild.right(line));
        CommandRun run = child.drill(file());
        assertTrue(run.out().contains("Here it is. "), run.out());
        assertEquals(
                List.of("|none"),
                Rows.column(
                        file(),
                        "SELECT COALESCE(typed, '') || '|' || outcome FROM answer_log WHERE surface = 'plain'"
                                + " AND purpose NOT IN ('copy', 'introduce')"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"abc", "4 2", "-3", "1.5", "123456789012", "12345", "seven", "0x10", "\u0007", "\u001b[A"})
    void whatIsNoNumberIsNotCounted(String line) {
        Practised.children(folder, "Mina");
        PlainChild child =
                new PlainChild((said, count) -> count == 0 ? line : count == 1 ? PlainChild.right(said) : "q");
        CommandRun run = child.drill(file());
        assertTrue(run.out().contains(DIGITS_ONLY), run.out());
        assertEquals(1, typed(file()).size());
        assertEquals(List.of("right"), Rows.column(file(), "SELECT outcome FROM answer_log"));
    }

    @Test
    void whereTheNumberIsInViewAnEmptyLineIsNoAnswer() {
        Practised.children(folder, "Mina");
        CommandRun run = CommandRun.typed(file(), "\n   \n", "drill", "--plain");
        assertEquals(
                2,
                run.out()
                        .lines()
                        .filter("Please type the number, then press Enter."::equals)
                        .count());
        assertEquals(List.of(), typed(file()));
    }

    @Test
    void aLineOfTenThousandCharactersIsNotCounted() {
        Practised.children(folder, "Mina");
        PlainChild child = new PlainChild((said, count) -> count == 0 ? "7".repeat(10_000) : null);
        assertTrue(child.drill(file()).out().contains(DIGITS_ONLY));
        assertEquals(List.of(), typed(file()));
    }

    @Test
    void digitsOfEveryScriptCount() {
        Practised.children(folder, "Mina");
        PlainChild child = new PlainChild((said, count) -> count < 4
                ? PlainChild.right(said)
                        .codePoints()
                        // Arabic-Indic digits, and the bold ones that lie beyond 16 bits (Unicode, general category
                        // Nd).
                        .map(c -> c - '0' + (count % 2 == 0 ? 0x0660 : 0x1D7CE))
                        .collect(StringBuilder::new, StringBuilder::appendCodePoint, StringBuilder::append)
                        .toString()
                : null);
        child.drill(file());
        assertEquals(
                List.of("right", "right", "right", "right"), Rows.column(file(), "SELECT outcome FROM answer_log"));
    }

    @Test
    void aPauseStopsTheClock() {
        Practised.children(folder, "Mina");
        PlainChild child = new PlainChild((said, count) -> switch (count) {
            case 0, 2 -> "P";
            case 1, 3 -> "";
            case 4 -> PlainChild.right(said);
            default -> "q";
        });
        CommandRun run = child.drill(file());
        assertEquals(2, run.out().lines().filter(PAUSE::equals).count());
        assertEquals(List.of(List.of("right", "")), Rows.of(file(), "SELECT outcome, whole_ms FROM answer_log"));
    }

    @Test
    void aPauseInAPauseStaysOneAndQLeavesIt() {
        Practised.children(folder, "Mina");
        PlainChild child = new PlainChild((said, count) -> count < 2 ? "p" : "q");
        CommandRun run = child.drill(file());
        assertEquals(0, run.code());
        assertEquals("Everything is kept. See you next time, Mina.", child.last());
    }

    @Test
    void whoWasAwayIsNotTimed() {
        Practised.children(folder, "Mina");
        PlainChild child =
                new PlainChild((said, count) -> count < 2 ? PlainChild.right(said) : "q").thinking(3 * 3_600_000L);
        CommandRun run = child.drill(file());
        assertEquals(
                List.of(List.of("right", ""), List.of("right", "")),
                Rows.of(file(), "SELECT outcome, whole_ms FROM answer_log"));
        assertTrue(run.out().contains("You practised for"), run.out());
        assertTrue(CommandRun.of(file(), "export", "answers").out().contains("plain"));
    }

    @Test
    void theEndOfTheInputEndsTheDrillAndKeepsWhatWasAnswered() {
        Practised.children(folder, "Mina");
        PlainChild child = new PlainChild((said, count) -> count < 3 ? PlainChild.right(said) : null);
        CommandRun run = child.drill(file());
        assertEquals(0, run.code());
        assertEquals(child.typed(), typed(file()));
    }

    @Test
    void pipedLinesWithoutAnAnswerToAnythingEnd() {
        Practised.children(folder, "Mina");
        CommandRun run = CommandRun.typed(file(), "p\n\nx\n12\n", "drill", "--plain");
        assertEquals(0, run.code());
        assertEquals(1, typed(file()).size());
    }

    @Test
    void aFailingFileIsToldCalmlyAndTriedAgain() {
        Practised.children(folder, "Mina");
        String deny = "CREATE TRIGGER full BEFORE INSERT ON answer BEGIN SELECT RAISE(FAIL, 'no room'); END";
        PlainChild child = new PlainChild((said, count) -> {
            if (count == 1) {
                Rows.change(file(), deny);
            } else if (count == 3) {
                Rows.change(file(), "DROP TRIGGER full");
            }
            return count == 2 || count == 3 ? "" : count < 6 ? PlainChild.right(said) : "q";
        });
        CommandRun run = child.drill(file());
        assertEquals(0, run.code());
        assertEquals(
                2,
                run.out()
                        .lines()
                        .filter(
                                "The last answer is not kept yet. It is not your fault. Please fetch a grown-up."
                                        ::equals)
                        .count());
        assertEquals(4, typed(file()).size());
        assertTrue(
                Rows.column(file(), "SELECT outcome FROM answer_log").stream().allMatch("right"::equals));
    }

    @Test
    void stoppingWithoutTheAnswerIsAFailureThatIsTold() {
        Practised.children(folder, "Mina");
        String deny = "CREATE TRIGGER full BEFORE INSERT ON answer BEGIN SELECT RAISE(FAIL, 'no room'); END";
        PlainChild child = new PlainChild((said, count) -> {
            if (count == 0) {
                Rows.change(file(), deny);
            }
            return count < 1 ? PlainChild.right(said) : "q";
        });
        CommandRun run = child.drill(file());
        assertEquals(1, run.code());
        assertTrue(
                run.err()
                        .startsWith(
                                "fourfold: 1 answer of the last drill could not be kept and is lost: could not keep the"
                                        + " answer in " + file()),
                run.err());
        assertFalse(run.out().contains("Everything is kept"), run.out());
        assertEquals(List.of(), typed(file()));
    }

    @Test
    void aNameCannotDraw() {
        Practised.children(folder, "Mi\u202ena\u200b");
        CommandRun run = new PlainChild((said, count) -> "q").drill(file());
        assertTrue(run.out().startsWith("Hello Mi?na?. "), run.out());
        assertTrue(run.out().codePoints().noneMatch(c -> c < ' ' && c != '\n' && c != '\r'), run.out());
    }

    @Test
    void theSameDrillIsSaidInGermanWithItsOwnWordsForTheSigns() {
        Practised.once(folder);
        PlainChild child = new PlainChild((said, count) -> {
            java.util.regex.Matcher asked = java.util.regex.Pattern.compile(
                            "Wie viel ist (\\d+) (mal|geteilt durch) (\\d+)\\?")
                    .matcher(said);
            if (asked.find()) {
                int left = Integer.parseInt(asked.group(1));
                int right = Integer.parseInt(asked.group(3));
                return Integer.toString(asked.group(2).equals("mal") ? left * right + right : left / right);
            }
            java.util.regex.Matcher inView = java.util.regex.Pattern.compile("Tippe (?:die Zahl )?(\\d+)\\.")
                    .matcher(said);
            return inView.find() ? inView.group(1) : "";
        });
        String said = child.inLanguage("de").drill(file(), "--minutes", "5").out();
        assertTrue(said.startsWith("Hallo Mina. Diese Übung dauert etwa 5 Minuten."), said);
        assertTrue(said.contains("Hier ist eine neue Familie: "), said);
        assertTrue(
                said.matches(
                        "(?s).*\\R\\d+ mal \\d+ ist eins weiter: \\d+\\. Gefragt war \\d+ mal \\d+\\. Es ist \\d+\\. .*, also: \\d+ mal \\d+ ist \\d+\\..*"),
                said);
        assertTrue(said.contains("Alles ist gesichert. Bis zum nächsten Mal, Mina."), said);
        assertTrue(
                said.lines().noneMatch(l -> l.matches(".*[×÷·].*|.*\\d : \\d.*")) || said.contains("Kommt bald"), said);
        assertFalse(said.matches("(?s).*\\b(What|Type|Right|Press)\\b.*"), said);
    }

    @Test
    void aHiddenFactorIsSaidInWords() {
        Practised.once(folder);
        try (fourfold.store.Store store = fourfold.store.Store.open(file())) {
            store.keep(new fourfold.log.ActionRecord(
                    new java.util.UUID(5, 5),
                    new java.util.UUID(7, 0),
                    Practised.BEGAN,
                    60,
                    new fourfold.log.ParentAction.Choose("missing", "yes")));
        }
        PlainChild child = new PlainChild((said, count) -> {
            java.util.regex.Matcher hidden = java.util.regex.Pattern.compile("(\\d+) times what is (\\d+)\\?")
                    .matcher(said);
            return hidden.find()
                    ? Integer.toString(Integer.parseInt(hidden.group(2)) / Integer.parseInt(hidden.group(1)))
                    : PlainChild.right(said);
        });
        String said = child.drill(file(), "--minutes", "3").out();
        assertTrue(said.matches("(?s).*\\d+ times what is \\d+\\?\\RRight\\. .*"), said);
        assertTrue(Integer.parseInt(Rows.column(
                                file(), "SELECT COUNT(*) FROM answer_log WHERE outcome = 'right' AND surface = 'plain'")
                        .get(0))
                > 30);
    }

    /** A terminal that says that it can't draw gets the drill in lines, unasked. */
    @Test
    void onADumbTerminalADrillGoesOnInPlainLines() {
        Practised.once(folder);
        java.io.StringWriter out = new java.io.StringWriter();
        fourfold.home.Environment usual = CommandRun.world(
                file(),
                true,
                new java.io.BufferedReader(new java.io.StringReader("q\n")),
                out,
                new java.io.StringWriter(),
                fourfold.home.Environment::systemClock);
        fourfold.home.Environment dumb = new fourfold.home.Environment(
                usual.in(),
                usual.out(),
                usual.data(),
                usual.err(),
                java.util.Map.of("TERM", "dumb", "FOURFOLD_LANGUAGE", "en"),
                usual.home(),
                usual.systemName(),
                usual.unicode(),
                usual.clock());
        assertEquals(0, Fourfold.run(dumb, "--store", file().toString(), "drill"));
        assertTrue(out.toString().startsWith("Hello Mina. This drill lasts about 8 minutes."), out.toString());
    }
}
