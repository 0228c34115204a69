package fourfold.insight;

import fourfold.facts.Families;
import fourfold.facts.Family;
import fourfold.progress.Mastery;
import fourfold.progress.Progress;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * How far a table has come, in the parent's order. Each family is counted once, with the table that brings it.
 *
 * @param table 1 to 10
 * @param levels the level of each family that it brings, the smallest product first
 */
public record TableCount(int table, List<Mastery> levels) {
    public TableCount {
        levels = List.copyOf(levels);
    }

    /** All ten tables in the order in which they open. */
    public static List<TableCount> of(Progress progress) {
        Set<Family> counted = new HashSet<>();
        List<TableCount> tables = new ArrayList<>();
        for (int table : progress.steering().order()) {
            tables.add(new TableCount(
                    table,
                    Families.inTable(table).stream()
                            .filter(counted::add)
                            .map(progress::level)
                            .toList()));
        }
        return tables;
    }

    /** How many families the table brings. */
    public int families() {
        return levels.size();
    }

    /** How many of them were met. */
    public int met() {
        return atLeast(Mastery.ACQUIRING);
    }

    /** How many are accurate or better. */
    public int accurate() {
        return atLeast(Mastery.ACCURATE);
    }

    /** How many are fluent or better. */
    public int fluent() {
        return atLeast(Mastery.FLUENT);
    }

    private int atLeast(Mastery least) {
        return (int) levels.stream().filter(level -> level.atLeast(least)).count();
    }
}
