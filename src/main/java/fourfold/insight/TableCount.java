// SPDX-License-Identifier: Apache-2.0
package fourfold.insight;

import fourfold.facts.Families;
import fourfold.progress.Mastery;
import fourfold.progress.Progress;
import java.util.ArrayList;
import java.util.List;

/**
 * How far a table has come, in the parent's order. A family of two tables is counted with both: 2 × 7 is of the 2s and of
 * the 7s.
 *
 * @param table 1 to 10
 * @param levels the level of each of its ten families, the smallest product first
 */
public record TableCount(int table, List<Mastery> levels) {
    public TableCount {
        levels = List.copyOf(levels);
    }

    /** All ten tables in the order in which they open. */
    public static List<TableCount> of(Progress progress) {
        List<TableCount> tables = new ArrayList<>();
        for (int table : progress.steering().order()) {
            tables.add(new TableCount(
                    table, Families.inTable(table).stream().map(progress::level).toList()));
        }
        return tables;
    }

    /** How many families the table has. */
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
