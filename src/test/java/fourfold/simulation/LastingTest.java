// SPDX-License-Identifier: Apache-2.0
package fourfold.simulation;

import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.facts.Families;
import fourfold.facts.Family;
import fourfold.progress.Mastery;
import fourfold.progress.Progress;
import fourfold.scheduling.LastingGain;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Guards against a level that a child who practises all year does not reach though its facts have lasted, and against one
 * that is told and not true. Three children; with {@code -Dlasting.seeds=3} three of every kind.
 */
class LastingTest {
    /** Right within this, hands and the child's own spread counted, a week on without practice. */
    private static final Duration LIMIT = Duration.ofSeconds(5);

    private static final Duration A_WEEK_ON = Duration.ofDays(7);

    static Stream<Arguments> children() {
        int seeds = Integer.getInteger("lasting.seeds", 0);
        return seeds > 0
                ? MemoryKind.all().stream()
                        .flatMap(kind ->
                                Stream.iterate(1L, n -> n <= seeds, n -> n + 1).map(n -> Arguments.of(kind, n)))
                : Stream.of("two-strength", "competing", "instances").map(name -> Arguments.of(kind(name), 3L));
    }

    private static MemoryKind kind(String name) {
        return MemoryKind.all().stream()
                .filter(k -> k.name().equals(name))
                .findFirst()
                .orElseThrow();
    }

    @ParameterizedTest
    @MethodSource("children")
    void mostFluentFamiliesAreLastingAfterAYearOfRegularPracticeAndTheyDoLast(MemoryKind kind, long seed) {
        SimulatedLearner child = kind.create(seed);
        SchoolYear year = new SchoolYear(child, new LastingGain(), seed, answer -> {});
        year.run(36);
        Progress progress = year.progress();
        List<Family> fluent = Families.all().stream()
                .filter(f -> progress.level(f).atLeast(Mastery.FLUENT))
                .toList();
        List<Family> lasting = fluent.stream()
                .filter(f -> progress.level(f) == Mastery.LASTING)
                .toList();
        double kept = quick(child, lasting, year.now().plus(A_WEEK_ON));
        String told = String.format(
                Locale.ROOT,
                "%s %d: %d families fluent, %d of them lasting, %.2f right within five seconds a week on",
                kind.name(),
                seed,
                fluent.size(),
                lasting.size(),
                kept);
        if (Integer.getInteger("lasting.seeds", 0) > 0) {
            System.out.println(told);
        }
        assertTrue(2 * lasting.size() > fluent.size(), told);
        assertTrue(kept >= 0.85, told);
    }

    private static double quick(SimulatedLearner child, List<Family> families, Instant at) {
        return families.stream()
                .flatMap(f -> f.questions().stream())
                .mapToDouble(q -> child.chanceRightWithin(q, at, LIMIT))
                .average()
                .orElse(0);
    }
}
