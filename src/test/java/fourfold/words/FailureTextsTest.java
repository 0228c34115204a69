// SPDX-License-Identifier: Apache-2.0
package fourfold.words;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.log.Problem;
import fourfold.log.Reason;
import fourfold.log.RecordsFailure;
import fourfold.log.RecordsFailure.Task;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.ResourceBundle;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Guards against a failure that some language can't tell, or a text for a failure that there is not. */
class FailureTextsTest {
    private static final String TASK = "failure.task.";
    private static final String REASON = "failure.reason.";

    static Stream<Words> languages() throws IOException {
        Pattern named = Pattern.compile("words_(.+)\\.properties");
        List<Words> all = new ArrayList<>(List.of(Words.english()));
        try (Stream<Path> files = Files.list(Path.of("src/main/resources/fourfold/words"))) {
            files.map(file -> named.matcher(file.getFileName().toString()))
                    .filter(file -> file.matches())
                    .forEach(file -> all.add(Words.of(Locale.forLanguageTag(file.group(1)))));
        }
        assertTrue(all.size() > 2, all.toString());
        return all.stream();
    }

    private static ResourceBundle english() {
        return ResourceBundle.getBundle("fourfold.words.words", Locale.ROOT);
    }

    private static String key(String beginning, Enum<?> one) {
        return beginning + one.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    private static int gaps(String key) {
        return english().getString(key).split("%s", -1).length - 1;
    }

    /** Something that can be found again in the sentence, for each gap. */
    private static List<String> filling(int gaps) {
        return IntStream.range(0, gaps).mapToObj(gap -> "<" + gap + ">").toList();
    }

    private static void assertTells(String line, List<String> filling) {
        assertEquals(1, line.lines().count(), line);
        assertFalse(line.contains("%"), line);
        filling.forEach(gap -> assertTrue(line.contains(gap), line + " does not tell " + gap));
    }

    @ParameterizedTest
    @MethodSource("languages")
    void everyTaskIsToldWithItsPlacesAndTheReason(Words words) {
        for (Task task : Task.values()) {
            List<String> places = filling(gaps(key(TASK, task)) - 1);
            assertFalse(places.isEmpty(), task.name());
            String line = words.failure(new RecordsFailure(task, places, Problem.of(Reason.DISK_FULL)));
            assertTells(line, places);
            assertTrue(line.endsWith(words.problem(Problem.of(Reason.DISK_FULL))), line);
        }
    }

    @ParameterizedTest
    @MethodSource("languages")
    void everyReasonIsToldWithItsDetails(Words words) {
        for (Reason reason : Reason.values()) {
            List<String> details = filling(gaps(key(REASON, reason)));
            assertTells(words.problem(Problem.of(reason, details.toArray())), details);
        }
    }

    @ParameterizedTest
    @MethodSource("languages")
    void aProblemWithinAProblemIsToldInTheSameLanguage(Words words) {
        Problem deeper = Problem.of(Reason.DAMAGED);
        String line = words.problem(Problem.of(Reason.LAST_GOOD, deeper, "2026-03-02"));
        assertTells(line, List.of(words.problem(deeper), "2026-03-02"));
    }

    @ParameterizedTest
    @MethodSource("languages")
    void whatIsLostIsCountedAndTheReasonTold(Words words) {
        RecordsFailure full = new RecordsFailure(Task.KEEP_ANSWER, "family.db", Problem.of(Reason.DISK_FULL));
        String why = words.failure(full);
        for (int answers : new int[] {0, 1, 7}) {
            String line = words.lost(answers, Optional.of(full));
            assertTrue(line.endsWith(why), line);
            assertEquals(answers > 0, line.contains(String.valueOf(answers)), line);
        }
    }

    @Test
    void noTextIsLeftOfAFailureThatThereIsNot() {
        TreeSet<String> needed = new TreeSet<>();
        Stream.of(Task.values()).forEach(task -> needed.add(key(TASK, task)));
        Stream.of(Reason.values()).forEach(reason -> needed.add(key(REASON, reason)));
        TreeSet<String> there = new TreeSet<>(english().keySet());
        there.removeIf(key -> !key.startsWith(TASK) && !key.startsWith(REASON));
        assertEquals(needed, there);
    }
}
