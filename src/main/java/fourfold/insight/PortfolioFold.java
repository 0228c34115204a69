// SPDX-License-Identifier: Apache-2.0
package fourfold.insight;

import fourfold.facts.Families;
import fourfold.facts.Family;
import fourfold.facts.Operation;
import fourfold.facts.Prompt;
import fourfold.log.ActionRecord;
import fourfold.log.Answer;
import fourfold.log.Purpose;
import fourfold.progress.Mastery;
import fourfold.progress.Rates;
import java.time.Duration;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.UUID;
import java.util.function.Consumer;
import java.util.stream.Stream;

/** Makes a {@link Portfolio}: give it every answer of the child, oldest first. */
public final class PortfolioFold implements Consumer<Answer> {
    /** How many answers are shown. */
    public static final int SAMPLE = 12;

    private static final Duration LONGEST = Duration.ofMinutes(1);

    private final String name;
    private final Portfolio.Period period;
    private final LevelDays days;
    private final Map<Family, Mastery> then = new LinkedHashMap<>();
    private final DrillRates rates = new DrillRates();
    private final Set<Long> practised = new HashSet<>();
    private final Map<Kind, Tally> tallies = new EnumMap<>(Kind.class);
    private final Map<Prompt, Answer> newest = new LinkedHashMap<>();
    private Duration spent = Duration.ZERO;
    private Optional<Answer> last = Optional.empty();
    private boolean begun;

    /** Where an answer was given. */
    private enum Kind {
        SCREEN,
        PAPER,
        ALOUD;

        static Kind of(Answer answer) {
            return switch (answer.purpose()) {
                case PAPER -> PAPER;
                case ALOUD -> ALOUD;
                default -> SCREEN;
            };
        }
    }

    /** Counts of one kind. */
    private static final class Tally {
        private final Set<UUID> drills = new HashSet<>();
        private int asked;
        private int right;

        void take(Answer answer) {
            drills.add(answer.drill());
            if (answer.purpose().isFromMemory()) {
                asked++;
                right += answer.isCorrect() ? 1 : 0;
            }
        }

        Portfolio.Count count() {
            return new Portfolio.Count(drills.size(), asked, right);
        }
    }

    /**
     * Nothing practised yet.
     *
     * @param actions everything that the parent did for the child
     */
    public PortfolioFold(String name, Portfolio.Period period, List<ActionRecord> actions) {
        this.name = name;
        this.period = period;
        days = new LevelDays(actions);
    }

    @Override
    public void accept(Answer answer) {
        long day = answer.localDay();
        if (day > period.last().toEpochDay()) {
            return;
        }
        if (day >= period.first().toEpochDay()) {
            begin();
            takeInPeriod(answer, day);
        }
        days.accept(answer);
    }

    /** What was reached before the period stands when its first answer comes. */
    private void begin() {
        if (!begun) {
            begun = true;
            Families.all().forEach(f -> then.put(f, days.highest(f)));
        }
    }

    private Tally tally(Kind kind) {
        return tallies.computeIfAbsent(kind, k -> new Tally());
    }

    private void takeInPeriod(Answer answer, long day) {
        practised.add(day);
        rates.accept(answer);
        tally(Kind.of(answer)).take(answer);
        spent = spent.plus(time(answer));
        last = Optional.of(answer);
        if (answer.purpose().isFromMemory()) {
            newest.remove(answer.prompt());
            newest.put(answer.prompt(), answer);
        }
    }

    /** What an answer adds: the time since the question before it, or a share of its page's time. */
    private Duration time(Answer answer) {
        if (answer.purpose() == Purpose.PAPER) {
            return answer.whole().orElse(Duration.ZERO);
        }
        Optional<Answer> before = last.filter(l -> l.drill().equals(answer.drill()));
        Duration gap = before.map(l -> Duration.between(l.askedAt(), answer.askedAt()))
                .orElse(answer.whole().orElse(Duration.ZERO));
        return gap.isNegative() ? Duration.ZERO : gap.compareTo(LONGEST) > 0 ? LONGEST : gap;
    }

    /**
     * What it comes to.
     *
     * @param order of the tables
     * @param ticked days in the period on which practice away from the screen was ticked off
     */
    public Portfolio portfolio(List<Integer> order, List<LocalDate> ticked) {
        begin();
        return new Portfolio(
                name,
                period,
                Families.all().stream().map(this::family).toList(),
                order.stream().map(this::table).toList(),
                new Portfolio.Practice(
                        practised.size(),
                        spent,
                        tally(Kind.SCREEN).count(),
                        tally(Kind.PAPER).count(),
                        tally(Kind.ALOUD).count(),
                        ticked),
                months(),
                sample());
    }

    private Portfolio.OfFamily family(Family family) {
        return new Portfolio.OfFamily(
                family,
                then.getOrDefault(family, Mastery.NEW),
                days.highest(family),
                reached(level -> days.of(family, level)));
    }

    private Portfolio.OfTable table(int table) {
        List<Integer> levels = levels().map(level -> (int) Families.inTable(table).stream()
                        .filter(f -> days.highest(f).atLeast(level))
                        .count())
                .toList();
        return new Portfolio.OfTable(table, levels, reached(level -> days.of(table, level)));
    }

    private static Stream<Mastery> levels() {
        return Stream.of(Mastery.values()).filter(level -> level != Mastery.NEW);
    }

    private static List<Portfolio.Reached> reached(java.util.function.Function<Mastery, Optional<LocalDate>> dayOf) {
        return levels().flatMap(level -> dayOf.apply(level).map(day -> new Portfolio.Reached(level, day)).stream())
                .toList();
    }

    private List<Portfolio.MonthRates> months() {
        Map<YearMonth, List<DrillRates.OfDrill>> months = new TreeMap<>();
        for (DrillRates.OfDrill drill : rates.drills()) {
            months.computeIfAbsent(YearMonth.from(LocalDate.ofEpochDay(drill.localDay())), m -> new ArrayList<>())
                    .add(drill);
        }
        List<Portfolio.MonthRates> all = new ArrayList<>();
        months.forEach((month, drills) -> {
            Optional<Double> products = median(drills, Operation.MULTIPLY);
            Optional<Double> quotients = median(drills, Operation.DIVIDE);
            if (products.isPresent() || quotients.isPresent()) {
                all.add(new Portfolio.MonthRates(month, products, quotients));
            }
        });
        return all;
    }

    private static Optional<Double> median(List<DrillRates.OfDrill> drills, Operation operation) {
        double[] digits = drills.stream()
                .flatMap(d -> d.of(operation).stream())
                .mapToDouble(Rates::digitsPerMinute)
                .toArray();
        return Spread.of(digits).map(Spread::median);
    }

    /** The newest answers of as many questions, no two of one family, the hardest first. */
    private List<Portfolio.Sampled> sample() {
        List<Answer> all = new ArrayList<>(newest.values());
        List<Portfolio.Sampled> sample = new ArrayList<>();
        Set<Family> shown = new HashSet<>();
        for (int i = all.size() - 1; i >= 0 && sample.size() < SAMPLE; i--) {
            Answer answer = all.get(i);
            if (shown.add(PaperQuestions.family(answer.prompt()))) {
                sample.add(new Portfolio.Sampled(
                        answer.prompt(), answer.typed(), answer.whole(), LocalDate.ofEpochDay(answer.localDay())));
            }
        }
        sample.sort(Comparator.comparing((Portfolio.Sampled s) -> PaperQuestions.family(s.prompt()))
                .reversed());
        return sample;
    }
}
