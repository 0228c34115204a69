// SPDX-License-Identifier: Apache-2.0
package fourfold.insight;

import fourfold.facts.Family;
import fourfold.facts.Operation;
import fourfold.progress.Calendar;
import fourfold.progress.Mastery;
import fourfold.progress.Steering;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.IntStream;

/**
 * The pages and games that four weeks ask for, and what they need. In each week with practice there is one practice page and
 * one game, the games in turn; what is shaky makes piles of cards, what is new by the calendar makes picture cards, and a
 * page of one minute comes only where the parent takes times.
 *
 * @param last the last day that was looked at
 * @param days of practice up to then
 * @param shaky families met that are not fluent, or fade; most needed first
 * @param opening tables whose multiplication is taught from a day in these weeks, by table
 * @param pages how many of each kind; kinds with none are missing
 */
public record ComingWeeks(
        LocalDate last, int days, List<Family> shaky, Map<Integer, LocalDate> opening, Map<PageKind, Integer> pages) {
    private static final int WEEKS = 4;
    private static final int WEEK = 7;
    private static final List<PageKind> GAMES = List.of(PageKind.DOMINO, PageKind.PAIRS, PageKind.LOTTO);

    /** Cards that a family makes: its product and a division. */
    private static final int OF_A_FAMILY = 2;

    public ComingWeeks {
        shaky = List.copyOf(shaky);
        opening = Collections.unmodifiableMap(new TreeMap<>(opening));
        Map<PageKind, Integer> some = new EnumMap<>(PageKind.class);
        pages.forEach((kind, count) -> some.merge(kind, count, Integer::sum));
        some.values().removeIf(count -> count == 0);
        pages = Collections.unmodifiableMap(some);
    }

    /** What the four weeks from a day on hold. */
    public static ComingWeeks of(Grid grid, Steering steering, LocalDate day) {
        List<Integer> weeks = IntStream.range(0, WEEKS)
                .map(week -> daysIn(steering, day.plusDays((long) week * WEEK)))
                .filter(days -> days > 0)
                .boxed()
                .toList();
        LocalDate last = day.plusDays((long) WEEKS * WEEK - 1);
        Map<Integer, LocalDate> opening = opening(steering.calendar(), day, last);
        List<Grid.Cell> met = grid.cells().stream()
                .filter(c -> c.level() != Mastery.NEW && !c.held())
                .toList();
        List<Family> shaky = met.stream()
                .filter(c -> !c.level().atLeast(Mastery.FLUENT) || c.fading())
                .sorted(java.util.Comparator.comparing(Grid.Cell::level))
                .map(Grid.Cell::family)
                .toList();
        long coming = grid.cells().stream()
                .filter(c -> c.level() == Mastery.NEW && !c.held())
                .filter(c -> opening.keySet().stream().anyMatch(t -> c.family().contains(t)))
                .count();
        Map<PageKind, Integer> pages = new EnumMap<>(PageKind.class);
        if (!weeks.isEmpty()) {
            pages.put(PageKind.CARDS, parts(OF_A_FAMILY * shaky.size(), PageKind.CARDS));
            pages.put(PageKind.PICTURECARDS, parts((int) coming, PageKind.PICTURECARDS));
            pages.put(PageKind.PRACTICE, met.isEmpty() ? 0 : weeks.size());
            pages.put(PageKind.MINUTE, met.isEmpty() || !steering.settings().timings() ? 0 : weeks.size());
        }
        // A game needs a few facts to be one.
        for (int week = 0; week < weeks.size() && met.size() >= 4; week++) {
            pages.merge(GAMES.get(week % GAMES.size()), 1, Integer::sum);
        }
        return new ComingWeeks(last, weeks.stream().mapToInt(Integer::intValue).sum(), shaky, opening, pages);
    }

    private static int parts(int things, PageKind kind) {
        return (things + kind.most() - 1) / kind.most();
    }

    /** Days of practice in the week from a day on: the named ones, or as many as are planned, without those off. */
    private static int daysIn(Steering steering, LocalDate first) {
        Calendar calendar = steering.calendar();
        int free = 0;
        for (int i = 0; i < WEEK; i++) {
            LocalDate day = first.plusDays(i);
            boolean possible = calendar.days().isEmpty()
                    ? steering.settings().days() > 5 || day.getDayOfWeek().compareTo(DayOfWeek.FRIDAY) <= 0
                    : calendar.days().contains(day.getDayOfWeek());
            boolean begun = calendar.start().filter(day::isBefore).isEmpty();
            free += possible && begun && !calendar.isOff(day) ? 1 : 0;
        }
        return calendar.days().isEmpty() ? Math.min(free, steering.settings().days()) : free;
    }

    private static Map<Integer, LocalDate> opening(Calendar calendar, LocalDate day, LocalDate last) {
        Map<Integer, LocalDate> opening = new TreeMap<>();
        for (int table = 1; table <= 10; table++) {
            int one = table;
            calendar.opens(table, Operation.MULTIPLY)
                    .filter(opens -> opens.isAfter(day) && !opens.isAfter(last))
                    .ifPresent(opens -> opening.put(one, opens));
        }
        return opening;
    }

    private int of(PageKind kind) {
        return pages.getOrDefault(kind, 0);
    }

    /** Sheets of paper: a page and its key. */
    public int sheets() {
        return 2 * (of(PageKind.PRACTICE) + of(PageKind.MINUTE));
    }

    /** Sheets of card: cards have their backs on the same sheet, a lotto has boards and questions. */
    public int card() {
        return of(PageKind.CARDS)
                + of(PageKind.PICTURECARDS)
                + of(PageKind.DOMINO)
                + of(PageKind.PAIRS)
                + 2 * of(PageKind.LOTTO);
    }

    /** Small things to lay on the boards. */
    public int counters() {
        return of(PageKind.LOTTO) == 0 ? 0 : PageKind.LOTTO.most();
    }

    /** Piles that want to be kept together. */
    public int piles() {
        return card() - of(PageKind.LOTTO);
    }

    /** Whether a clock with seconds is needed. */
    public boolean hasClock() {
        return of(PageKind.MINUTE) > 0;
    }
}
