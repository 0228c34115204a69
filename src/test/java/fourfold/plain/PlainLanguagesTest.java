// SPDX-License-Identifier: Apache-2.0
package fourfold.plain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.commands.CommandRun;
import fourfold.commands.Sample;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Guards against a command that answers in two languages at once, or with the numbers of another. */
class PlainLanguagesTest {
    /** Names of people, and words that two languages share. */
    private static final Set<String> SHARED =
            Set.of("Mina", "Burns", "VanDerHeyden", "Jiban", "plan", "Jan", "Feb", "was");

    /** A look ahead takes its time: each command runs once in each language. */
    private static final Map<String, String> PRINTED = new HashMap<>();

    @TempDir
    private static Path folder;

    private static Path sample = Path.of("");

    @BeforeAll
    static void thirtyDrillsAndOneActionLater() {
        sample = folder.resolve("sample.db");
        Sample.fill(sample);
        assertEquals(0, CommandRun.of(sample, "hold", "9x9").code());
    }

    private static String printed(String language, String command) {
        return PRINTED.computeIfAbsent(language + " " + command, c -> run(language, command));
    }

    private static String run(String language, String command) {
        CommandRun run = CommandRun.in(language, sample, command.split(" "));
        assertEquals("", run.err());
        assertEquals(0, run.code());
        return run.out();
    }

    private static Set<String> words(String text) {
        return Pattern.compile("\\p{L}{3,}")
                .matcher(text)
                .results()
                .map(MatchResult::group)
                .filter(word -> !SHARED.contains(word))
                .collect(Collectors.toCollection(TreeSet::new));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            grid          | Familien flüssig         | familias fluidas
            family 6x7    | 6, 7 und 42              | 6, 7 y 42
            family 9x9    | ausgesetzt               | apartada
            plan --runs 1 | Tage in der Woche        | días por semana
            plan --runs 1 | Eine Schätzung           | Una estimación
            rates         | Schuljahre 2 bis 3       | cursos 2 a 3
            history       | 9 · 9                    | 9 × 9
            """)
    void whatACommandPrintsIsInOneLanguage(String command, String german, String spanish) {
        Set<String> english = words(printed("en", command));
        assertFalse(english.isEmpty());
        for (List<String> there : List.of(List.of("de", german), List.of("es", spanish))) {
            String text = printed(there.get(0), command);
            assertTrue(text.contains(there.get(1)), text);
            Set<String> both = new TreeSet<>(english);
            both.retainAll(words(text));
            // A short name of a month that two languages share.
            both.remove("Apr");
            assertEquals(Set.of(), both, text);
        }
    }

    @Test
    void aNumberHasTheLanguagesOwnSignAndADayItsOwnOrder() {
        Pattern comma = Pattern.compile("\\d,\\d / +\\d+,\\d");
        Pattern point = Pattern.compile("\\d\\.\\d / +\\d+\\.\\d");
        String english = printed("en", "rates");
        assertTrue(point.matcher(english).find() && english.contains("\n2026-"), english);
        String german = printed("de", "rates");
        assertTrue(comma.matcher(german).find()
                && Pattern.compile("\n\\d\\d\\.\\d\\d\\.2026 ").matcher(german).find());
        assertFalse(point.matcher(german).find(), german);
        String spanish = printed("es", "rates");
        assertTrue(comma.matcher(spanish).find()
                && Pattern.compile("\n\\d\\d/\\d\\d/2026 ").matcher(spanish).find());
        assertFalse(point.matcher(spanish).find(), spanish);
    }

    @Test
    void aColumnIsAsWideAsItsLongestWordInEveryLanguage() {
        for (String language : List.of("en", "de", "es")) {
            List<String> lines = printed(language, "plan --runs 1").lines().toList();
            int first = lines.indexOf("");
            int head = first + 1 + lines.subList(first + 1, lines.size()).indexOf("");
            assertTrue(lines.get(head).isEmpty(), String.join("\n", lines));
            int width = lines.get(head + 1).length();
            assertTrue(lines.subList(head + 1, head + 12).stream().allMatch(l -> l.length() == width));
        }
    }
}
