// SPDX-License-Identifier: Apache-2.0
package fourfold.facts;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;

/** All families up to 10 × 10, their traces and questions, and the orders in which tables are taught. */
public final class Families {
    /** The largest factor and divisor: the one place that says how far the tables go. */
    public static final int LARGEST_FACTOR = 10;

    /** The largest product. */
    public static final int LARGEST_PRODUCT = LARGEST_FACTOR * LARGEST_FACTOR;

    /** How many families there are: n(n+1)/2, 55. */
    public static final int COUNT = LARGEST_FACTOR * (LARGEST_FACTOR + 1) / 2;

    /**
     * The order in which England's national curriculum introduces the tables (mathematics programmes of study, key stages 1
     * and 2, 2013: years 2, 3 and 4); the 1s come as rules.
     */
    public static final List<Integer> USUAL_ORDER = List.of(2, 5, 10, 3, 4, 8, 6, 9, 7, 1);

    /** Easy ones first: 2, 5, 10, then 3, 4, then 6 to 9; the 1s come along with the 2s (common practice, no source). */
    public static final List<Integer> EASY_FIRST = List.of(2, 1, 5, 10, 3, 4, 6, 7, 8, 9);

    private static final List<Integer> INSIDE_A_TABLE = List.of(5, 2, 3, 4, 6, 7, 8, 9, 10, 1);

    private static final List<Family> ALL = IntStream.rangeClosed(1, LARGEST_FACTOR)
            .boxed()
            .flatMap(high -> IntStream.rangeClosed(1, high).mapToObj(low -> new Family(low, high)))
            .toList();

    private static final List<Trace> TRACES = tracesByIndex();

    private Families() {}

    /** All 55 families by {@link Family#index()}. */
    public static List<Family> all() {
        return ALL;
    }

    /** The family with that index, 0 to 54. */
    public static Family at(int index) {
        return ALL.get(index);
    }

    /** All 155 traces by {@link Trace#index()}. */
    public static List<Trace> traces() {
        return TRACES;
    }

    /** All 200 questions, family by family. */
    public static List<Question> questions() {
        return ALL.stream().flatMap(f -> f.questions().stream()).toList();
    }

    /** The ten families that contain {@code table}, by the other factor. */
    public static List<Family> inTable(int table) {
        checkTable(table);
        return IntStream.rangeClosed(1, LARGEST_FACTOR)
                .mapToObj(n -> Family.of(table, n))
                .toList();
    }

    /**
     * The families in the order in which they are introduced: table by table, inside a table what explains most first (half
     * of ten, doubles) and what follows a rule last, each family once. A family belongs to the first of its two tables that
     * opens. The order inside a table is our own choice.
     *
     * @param tables a teaching order; tables that are missing bring no family of their own
     */
    public static List<Family> introducedBy(List<Integer> tables) {
        List<Family> order = new ArrayList<>();
        for (int table : tables) {
            for (int other : INSIDE_A_TABLE) {
                Family family = Family.of(table, other);
                if (!order.contains(family)) {
                    order.add(family);
                }
            }
        }
        return List.copyOf(order);
    }

    /**
     * The table itself, if there is such a table.
     *
     * @throws IllegalArgumentException if {@code table} is not from 1 to 10
     */
    public static int checkTable(int table) {
        if (table < 1 || table > LARGEST_FACTOR) {
            throw new IllegalArgumentException("a table is a number from 1 to " + LARGEST_FACTOR + ", not " + table);
        }
        return table;
    }

    private static List<Trace> tracesByIndex() {
        Trace[] traces = new Trace[Trace.COUNT];
        for (Family family : ALL) {
            for (Trace trace : family.traces()) {
                traces[trace.index()] = trace;
            }
        }
        return List.of(traces);
    }
}
