// SPDX-License-Identifier: Apache-2.0
package fourfold.simulation;

import fourfold.facts.Families;
import fourfold.outlook.Outlook;
import fourfold.outlook.PracticeDays;
import fourfold.outlook.Projection;
import fourfold.progress.Mastery;
import fourfold.progress.Progress;
import fourfold.scheduling.LastingGain;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/**
 * How often the look ahead holds what then happens: simulated children who are not all fluent yet are looked ahead at after
 * some weeks, and then practise on to the end of their year; each year is played once, all looks are taken from it. Of a
 * range that closes it is counted whether the day came within it; of what is said not to be sure or to be out of reach,
 * whether it came all the same. A look is played no further than its outcome needs: no range is told where it does not close.
 * System properties: {@code outlook.kinds} (all by default), {@code outlook.seeds} (a range of {@link Seeds}, tuning by
 * default), {@code outlook.children} (of each kind, 4), {@code outlook.weeks} (after which weeks, 8,12,16,20,24,28),
 * {@code outlook.later} (after how many weeks the number of fluent families is held against its range too; 0, not at all),
 * {@code outlook.minutes} (no child is begun after that time, 600; a seed's children of all kinds come one after another, and
 * seeds not done in all kinds are left out), {@code outlook.folder} (for outlook.txt; target/policies).
 */
class OutlookBenchmark {
    /** What was said of a child after some weeks, and what came. */
    record Case(String kind, long seed, int week, Projection said, Optional<LocalDate> came, List<Long> count) {
        /** Whether the day came within the range that was told. */
        boolean holds() {
            return came.filter(day -> !day.isBefore(said.early().orElseThrow())
                            && !day.isAfter(said.late().orElseThrow()))
                    .isPresent();
        }

        /** Whether the number of families fluent later lay within its range. */
        boolean countHolds() {
            return count.get(0) <= count.get(2) && count.get(2) <= count.get(1);
        }

        /** Weeks from the early to the late end of a closed range. */
        double width() {
            return ChronoUnit.DAYS.between(
                            said.early().orElseThrow(), said.late().orElseThrow())
                    / 7.0;
        }

        boolean isBefore() {
            return came.filter(day -> said.early().filter(day::isBefore).isPresent())
                    .isPresent();
        }
    }

    private static final int MINUTES = Integer.getInteger("outlook.minutes", 600);
    private static final int LATER = Integer.getInteger("outlook.later", 0);

    @Test
    void outlook() throws IOException, InterruptedException, ExecutionException {
        List<Integer> weeks = Stream.of(
                        System.getProperty("outlook.weeks", "8,12,16,20,24,28").split(",", -1))
                .map(Integer::valueOf)
                .toList();
        String named = System.getProperty("outlook.kinds", "");
        List<SimulatedLearnerKind> kinds =
                SimulatedLearnerKind.named(named.isEmpty() ? List.of() : List.of(named.split(",", -1)));
        long[] children = Seeds.named(System.getProperty("outlook.seeds", "tuning"))
                .take(Integer.getInteger("outlook.children", 4))
                .toArray();
        long end = System.nanoTime() + Duration.ofMinutes(MINUTES).toNanos();
        ExecutorService threads = Executors.newFixedThreadPool(
                Integer.getInteger("outlook.threads", Runtime.getRuntime().availableProcessors()));
        try {
            Map<Long, List<Future<Optional<List<Case>>>>> futures = new TreeMap<>();
            for (long seed : children) {
                futures.put(
                        seed,
                        kinds.stream()
                                .map(kind -> threads.submit(() -> System.nanoTime() > end
                                        ? Optional.<List<Case>>empty()
                                        : Optional.of(of(kind, seed, weeks))))
                                .toList());
            }
            List<Case> cases = new ArrayList<>();
            for (List<Future<Optional<List<Case>>>> ofSeed : futures.values()) {
                List<Case> more = new ArrayList<>();
                boolean whole = true;
                for (Future<Optional<List<Case>>> future : ofSeed) {
                    whole &= future.get().isPresent();
                    more.addAll(future.get().orElse(List.of()));
                }
                if (whole) {
                    cases.addAll(more);
                    write(text(cases));
                }
            }
            System.out.println(text(cases));
        } finally {
            threads.shutdownNow();
        }
    }

    /** Written after each seed: what is played is not lost. */
    private static void write(String text) throws IOException {
        Path folder = Path.of(System.getProperty("outlook.folder", "target/policies"));
        Files.createDirectories(folder);
        Files.writeString(folder.resolve("outlook.txt"), text);
    }

    /** What they come to for each kind, for each week, and in all; then one line for each case. */
    static String text(List<Case> cases) {
        Map<String, List<Case>> groups = new TreeMap<>();
        for (Case one : cases) {
            groups.computeIfAbsent("kind " + one.kind(), k -> new ArrayList<>()).add(one);
            groups.computeIfAbsent(String.format("week %02d", one.week()), k -> new ArrayList<>())
                    .add(one);
            groups.computeIfAbsent("all", k -> new ArrayList<>()).add(one);
        }
        StringBuilder text = new StringBuilder(String.format(
                Locale.ROOT,
                "%-22s %6s %7s %6s %8s %7s %7s %9s %6s %7s %6s%s%n",
                "",
                "looks",
                "closed",
                "held",
                "earlier",
                "later",
                "weeks",
                "not sure",
                "came",
                "out",
                "came",
                LATER == 0 ? "" : String.format(Locale.ROOT, " %9s", "in " + LATER + " wk")));
        groups.forEach((name, all) -> text.append(line(name, all)));
        text.append('\n');
        cases.forEach(one -> text.append(line(one)));
        return text.toString();
    }

    private static String line(Case one) {
        String said = one.said().isClosed()
                ? day(one.said().early()) + " .. " + day(one.said().middle()) + " .. "
                        + day(one.said().late())
                : one.said().outcome() == Projection.Outcome.NOT_SURE ? "not sure" : "out of reach";
        return String.format(
                Locale.ROOT,
                "%-16s %6d week %2d  said %-38s  came %s%s%n",
                one.kind(),
                one.seed(),
                one.week(),
                said,
                day(one.came()),
                LATER == 0
                        ? ""
                        : String.format(
                                Locale.ROOT,
                                "  in %d weeks %2d .. %2d  came %2d",
                                LATER,
                                one.count().get(0),
                                one.count().get(1),
                                one.count().get(2)));
    }

    private static String line(String name, List<Case> all) {
        List<Case> closed = with(all, Projection.Outcome.WITHIN_REACH);
        List<Case> unsure = with(all, Projection.Outcome.NOT_SURE);
        List<Case> out = with(all, Projection.Outcome.OUT_OF_REACH);
        return String.format(
                Locale.ROOT,
                "%-22s %6d %7d %6.2f %8.2f %7.2f %7.1f %9d %6.2f %7d %6.2f%s%n",
                name,
                all.size(),
                closed.size(),
                share(closed, Case::holds),
                share(closed, Case::isBefore),
                share(closed, c -> !c.holds() && !c.isBefore()),
                closed.stream().mapToDouble(Case::width).average().orElse(Double.NaN),
                unsure.size(),
                share(unsure, c -> c.came().isPresent()),
                out.size(),
                share(out, c -> c.came().isPresent()),
                LATER == 0 ? "" : String.format(Locale.ROOT, " %9.2f", share(all, Case::countHolds)));
    }

    private static List<Case> with(List<Case> all, Projection.Outcome outcome) {
        return all.stream().filter(c -> c.said().outcome() == outcome).toList();
    }

    private static double share(List<Case> cases, java.util.function.Predicate<Case> which) {
        return cases.isEmpty()
                ? Double.NaN
                : (double) cases.stream().filter(which).count() / cases.size();
    }

    private static String day(Optional<LocalDate> day) {
        return day.map(LocalDate::toString).orElse("----------");
    }

    /** A look at a child, until it is known what came. */
    private static final class Look {
        private final int week;
        private final Projection said;
        private final long[] count;
        private Optional<LocalDate> came = Optional.empty();

        Look(int week, Projection said, long[] count) {
            this.week = week;
            this.said = said;
            this.count = count;
        }
    }

    private static List<Case> of(SimulatedLearnerKind kind, long seed, List<Integer> weeks) {
        Calendar calendar = kind.calendar(seed);
        SchoolYear year = new SchoolYear(
                kind.create(seed), new LastingGain(), Policies.named("ours").blank(), calendar, seed, a -> {});
        List<Look> looks = new ArrayList<>();
        long end = day(SchoolYear.START.plus(Duration.ofDays(7L * calendar.weeks())));
        year.run(calendar.weeks(), true, new SchoolYear.Watcher() {
            @Override
            public void drilled(int drill, Instant next) {
                if (year.progress().families(Mastery.FLUENT) == Families.COUNT) {
                    LocalDate today = LocalDate.ofEpochDay(day(year.now()));
                    looks.stream().filter(l -> l.came.isEmpty()).forEach(l -> l.came = Optional.of(today));
                }
            }

            @Override
            public void weekEnded(int week, Instant at) {
                Progress now = year.progress();
                looks.stream()
                        .filter(l -> l.week + LATER == week)
                        .forEach(l -> l.count[2] = now.families(Mastery.FLUENT));
                if (weeks.contains(week) && Outlook.isPossible(now) && now.families(Mastery.FLUENT) < Families.COUNT) {
                    looks.add(look(now, week, day(at), end, (double) year.drills() / week, seed));
                }
            }
        });
        return looks.stream()
                .map(l -> new Case(
                        kind.name(), seed, l.week, l.said, l.came, List.of(l.count[0], l.count[1], l.count[2])))
                .toList();
    }

    private static long day(Instant at) {
        return LocalDate.ofInstant(at, ZoneOffset.UTC).toEpochDay();
    }

    private static Look look(Progress progress, int week, long today, long end, double aWeek, long seed) {
        PracticeDays days = PracticeDays.aWeek(aWeek);
        Outlook far = new Outlook(progress, today, end - 1, days, new HashSet<>(Families.all()), seed);
        List<Outlook.Run> runs = new ArrayList<>();
        for (int i = 0; i < Outlook.RUNS && !isDecided(runs); i++) {
            runs.add(far.run(i));
        }
        return new Look(
                week,
                far.projection(runs, Outlook.RUNS),
                LATER == 0 ? new long[] {0, 0, 0} : near(far, today + 7L * LATER - 1));
    }

    /** Whether nothing that may still come decides what is said: it is out of reach, or not sure. */
    private static boolean isDecided(List<Outlook.Run> runs) {
        long reached = runs.stream().filter(Outlook.Run::isReached).count();
        long failed = runs.size() - reached;
        boolean open = failed > Outlook.RUNS / 10;
        return 2 * failed > Outlook.RUNS || (open && 2 * reached >= Outlook.RUNS);
    }

    private static long[] near(Outlook far, long until) {
        Outlook near = new Outlook(far.progress(), far.from(), until, far.days(), far.goal(), far.seed());
        long[] fluent = IntStream.range(0, Outlook.RUNS)
                .mapToLong(i -> near.toTheEnd(i).fluent())
                .sorted()
                .toArray();
        int tenth = Outlook.RUNS / 10 - 1;
        return new long[] {fluent[tenth], fluent[Outlook.RUNS - 1 - tenth], 0};
    }
}
