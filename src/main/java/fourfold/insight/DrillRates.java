// SPDX-License-Identifier: Apache-2.0
package fourfold.insight;

import fourfold.facts.Operation;
import fourfold.log.Answer;
import fourfold.progress.Rates;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Consumer;

/**
 * The rates of a child's drills: give it every answer, oldest first. Only drills with at least {@value #FEWEST} timed
 * answers of an operation count for it; fewer show nothing (our own choice).
 */
public final class DrillRates implements Consumer<Answer> {
    /** The fewest timed answers of an operation that make a rate. */
    public static final int FEWEST = 5;

    /**
     * Digits correct a minute at which pupils of the second and third, and of the fourth and fifth grade, gained most
     * from instruction, on pages of facts written by hand (Burns, VanDerHeyden and Jiban 2006, School Psychology Review
     * 35, 401–418). For orientation only: typing is not writing, and a child is no average.
     */
    public static final List<Range> WRITTEN =
            List.of(new Range(new Grades(2, 3), 14, 31), new Range(new Grades(4, 5), 24, 49));

    private final Map<UUID, List<Answer>> drills = new LinkedHashMap<>();

    /**
     * A published range.
     *
     * @param grades the school years it was found in
     * @param low digits correct a minute
     * @param high digits correct a minute
     */
    public record Range(Grades grades, int low, int high) {}

    /**
     * School years, both ends counted in.
     *
     * @param first 1 or more
     * @param last not before the first
     */
    public record Grades(int first, int last) {}

    /**
     * One drill's rates.
     *
     * @param localDay where the child was, days since 1 January 1970
     * @param products of its products; empty if too few were timed
     * @param quotients of its quotients; empty if too few were timed
     */
    public record OfDrill(long localDay, Optional<Rates> products, Optional<Rates> quotients) {
        /** Those of one operation. */
        public Optional<Rates> of(Operation operation) {
            return operation == Operation.MULTIPLY ? products : quotients;
        }
    }

    @Override
    public void accept(Answer answer) {
        // Writing has a pace of its own: what a page took is told with the page.
        if (answer.purpose().isFromMemory()
                && answer.purpose().isTyped()
                && answer.whole().isPresent()) {
            drills.computeIfAbsent(answer.drill(), d -> new ArrayList<>()).add(answer);
        }
    }

    /** The drills, oldest first. */
    public List<OfDrill> drills() {
        return drills.values().stream()
                .map(answers -> new OfDrill(
                        answers.get(0).localDay(),
                        rates(answers, Operation.MULTIPLY),
                        rates(answers, Operation.DIVIDE)))
                .toList();
    }

    private static Optional<Rates> rates(List<Answer> answers, Operation operation) {
        return Optional.of(Rates.of(answers, operation)).filter(r -> r.answers() >= FEWEST);
    }

    /** How the digits correct a minute of one operation grow, for a week; empty with fewer than three drills. */
    public static Optional<Trend> digitsTrend(List<OfDrill> drills, Operation operation) {
        List<OfDrill> counted =
                drills.stream().filter(d -> d.of(operation).isPresent()).toList();
        if (counted.size() < 3) {
            return Optional.empty();
        }
        double[] weeks = counted.stream()
                .mapToDouble(d -> (d.localDay() - counted.get(0).localDay()) / 7.0)
                .toArray();
        double[] digits = counted.stream()
                .mapToDouble(d -> d.of(operation).orElseThrow().digitsPerMinute())
                .toArray();
        return Trend.through(weeks, digits);
    }
}
