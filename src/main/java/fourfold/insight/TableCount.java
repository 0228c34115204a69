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
 * @param families how many families it brings
 * @param met how many of them were met
 * @param accurate how many are accurate or better
 * @param fluent how many are fluent or better
 */
public record TableCount(int table, int families, int met, int accurate, int fluent) {
    /** All ten tables in the order in which they open. */
    public static List<TableCount> of(Progress progress) {
        Set<Family> counted = new HashSet<>();
        List<TableCount> tables = new ArrayList<>();
        for (int table : progress.steering().order()) {
            List<Family> own =
                    Families.inTable(table).stream().filter(counted::add).toList();
            tables.add(new TableCount(
                    table,
                    own.size(),
                    (int) own.stream().filter(progress::isMet).count(),
                    atLeast(progress, own, Mastery.ACCURATE),
                    atLeast(progress, own, Mastery.FLUENT)));
        }
        return tables;
    }

    private static int atLeast(Progress progress, List<Family> families, Mastery level) {
        return (int)
                families.stream().filter(f -> progress.level(f).atLeast(level)).count();
    }
}
