// SPDX-License-Identifier: Apache-2.0
package fourfold.insight;

import fourfold.facts.Families;
import fourfold.facts.Family;
import fourfold.facts.Question;
import fourfold.log.ActionRecord;
import fourfold.log.Answer;
import fourfold.progress.Mastery;
import java.time.LocalDate;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;

/**
 * On which day each family first reached each level: the days on which its stones were laid. Give it every answer of the
 * child, oldest first.
 */
public final class LevelDays implements Consumer<Answer> {
    private final LifetimeProgress stones;
    private final Map<Family, Map<Mastery, LocalDate>> days = new HashMap<>();

    /**
     * No day yet.
     *
     * @param actions everything that the parent did for the child
     */
    public LevelDays(List<ActionRecord> actions) {
        stones = new LifetimeProgress(actions);
    }

    @Override
    public void accept(Answer answer) {
        Optional<Family> family = answer.question().map(Question::family);
        Mastery before = family.map(stones::highest).orElse(Mastery.LASTING);
        stones.accept(answer);
        Mastery after = family.map(stones::highest).orElse(before);
        for (Mastery level : Mastery.values()) {
            if (!before.atLeast(level) && after.atLeast(level)) {
                days.computeIfAbsent(family.orElseThrow(), f -> new EnumMap<>(Mastery.class))
                        .put(level, LocalDate.ofEpochDay(answer.localDay()));
            }
        }
    }

    /** The highest level that a family has reached. */
    public Mastery highest(Family family) {
        return stones.highest(family);
    }

    /** The day on which a family first reached a level; empty if it has not. */
    public Optional<LocalDate> of(Family family, Mastery level) {
        return Optional.ofNullable(days.getOrDefault(family, Map.of()).get(level));
    }

    /** The day on which the last family of a table first reached a level; empty as long as one has not. */
    public Optional<LocalDate> of(int table, Mastery level) {
        List<Optional<LocalDate>> all = Families.inTable(table).stream()
                .map(family -> of(family, level))
                .toList();
        return all.stream().allMatch(Optional::isPresent)
                ? all.stream().flatMap(Optional::stream).max(LocalDate::compareTo)
                : Optional.empty();
    }
}
