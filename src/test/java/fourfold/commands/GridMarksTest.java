// SPDX-License-Identifier: Apache-2.0
package fourfold.commands;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.facts.Family;
import fourfold.facts.Question;
import fourfold.insight.Grid;
import fourfold.log.Answer;
import fourfold.log.Child;
import fourfold.log.DrillSession;
import fourfold.log.Moment;
import fourfold.log.Purpose;
import fourfold.log.Surface;
import fourfold.progress.Progress;
import fourfold.store.Store;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Guards against a family that fades on one page and not on another. */
class GridMarksTest {
    @TempDir
    private Path folder;

    @Test
    void theCommandMarksTheFamiliesThatTheScreenMarks() {
        Path file = folder.resolve("family.db");
        Child child = new Child(new UUID(1, 1), "Mina", CommandRun.NOW.minus(Duration.ofDays(90)));
        List<Answer> answers = practised(child, file);
        Progress progress = Progress.of(List.of(), answers);
        Grid screen = Grid.of(progress, CommandRun.NOW);
        Set<String> marked = screen.cells().stream()
                .filter(Grid.Cell::fading)
                .map(c -> c.family().toString())
                .collect(Collectors.toCollection(TreeSet::new));
        assertTrue(!marked.isEmpty(), "some fade");
        assertTrue(screen.cells().stream().anyMatch(c -> c.asked() > 0 && !c.fading()), "and some do not fade");

        CommandRun json = CommandRun.of(file, "grid", "--json");
        Set<String> told = new TreeSet<>();
        Matcher cell = Pattern.compile("\"family\"\\s*:\\s*\"(\\w+)\"[^}]*\"due_again\"\\s*:\\s*true")
                .matcher(json.out());
        while (cell.find()) {
            told.add(cell.group(1));
        }
        assertEquals(marked, told);
        long signs =
                CommandRun.of(file, "grid").out().chars().filter(c -> c == '~').count();
        assertEquals(marked.size() + 1, signs, "each family once, and the legend");
    }

    /** Families with 6 and 9 practised lately, those with 9 slowly; those with 7 and 8 long ago. */
    private static List<Answer> practised(Child child, Path file) {
        List<Integer> lately = List.of(5, 4, 3, 2, 1);
        Map<Integer, List<Integer>> days =
                Map.of(6, lately, 7, List.of(60, 50, 40, 25, 12), 8, List.of(60, 55, 50, 45, 40), 9, lately);
        List<Answer> all = new ArrayList<>();
        try (Store store = Store.open(file)) {
            store.add(child);
            for (int day = 60; day > 0; day--) {
                Instant at = CommandRun.NOW.minus(Duration.ofDays(day));
                DrillSession session =
                        new DrillSession(new UUID(2, day), child.id(), at, 60, Duration.ofMinutes(10), day);
                List<Answer> given = new ArrayList<>();
                for (int high = 6; high <= 9; high++) {
                    for (int low = 2;
                            low <= 5 && days.getOrDefault(high, List.of()).contains(day);
                            low++) {
                        int millis = high == 9 ? 5000 : 1000;
                        for (Question question : new Family(low, high).questions()) {
                            given.add(answer(session, given.size() + 1, question, millis));
                        }
                    }
                }
                store.keepAll(List.of(session), given);
                all.addAll(given);
            }
        }
        return all;
    }

    private static Answer answer(DrillSession session, int position, Question question, int millis) {
        return new Answer(
                Answer.Place.in(session, position),
                new Moment(session.startedAt().plusSeconds(5L * position), session.zoneOffsetMinutes()),
                Purpose.PRACTISE,
                question,
                new Answer.Typing(
                        Integer.toString(question.expected()),
                        new Answer.Times(
                                Optional.of(Duration.ofMillis(millis)), Optional.of(Duration.ofMillis(millis + 300))),
                        0),
                Surface.TERMINAL);
    }
}
