package fourfold.simulation;

import fourfold.facts.Families;
import fourfold.outlook.Outlook;
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
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;

/**
 * How often the projection's range holds what then happens: simulated children are looked ahead at after some weeks, and
 * then practise on. A child who does not get there within the year counts as held if the range reaches past the year.
 * System properties: {@code outlook.kinds} (all by default), {@code outlook.seeds} (a range of {@link Seeds}, tuning by
 * default), {@code outlook.children} (of each kind, 4), {@code outlook.weeks} (22), {@code outlook.runs} (20), {@code
 * outlook.folder} (for outlook.txt; target/policies).
 */
class OutlookBenchmark {
    /** One child: what was said after some weeks, and when it came. */
    record Case(String kind, long seed, Projection said, Optional<LocalDate> came, LocalDate end) {
        boolean holds() {
            // A child who has not come by the end says nothing against an early end that lies after it.
            boolean notBefore = came.isEmpty()
                    || said.early().filter(early -> !came.get().isBefore(early)).isPresent();
            boolean notAfter = said.late()
                    .map(late -> came.map(c -> !c.isAfter(late)).orElse(late.isAfter(end)))
                    .orElse(true);
            return notBefore && notAfter;
        }

        /** Whether the range has no upper end. */
        boolean isOpen() {
            return said.late().isEmpty();
        }

        /** Weeks from the early to the late end; empty where it is open. */
        Optional<Double> width() {
            return said.early().flatMap(early -> said.late().map(late -> ChronoUnit.DAYS.between(early, late) / 7.0));
        }
    }

    @Test
    void outlook() throws IOException, InterruptedException, ExecutionException {
        int weeks = Integer.getInteger("outlook.weeks", 22);
        int runs = Integer.getInteger("outlook.runs", 20);
        String kinds = System.getProperty("outlook.kinds", "");
        LongStream seeds = Seeds.named(System.getProperty("outlook.seeds", "tuning"))
                .take(Integer.getInteger("outlook.children", 4));
        List<Long> children = seeds.boxed().toList();
        ExecutorService threads =
                Executors.newFixedThreadPool(Runtime.getRuntime().availableProcessors());
        List<Case> cases = new ArrayList<>();
        try {
            List<Future<Case>> futures = new ArrayList<>();
            for (SimulatedLearnerKind kind :
                    SimulatedLearnerKind.named(kinds.isEmpty() ? List.of() : List.of(kinds.split(",", -1)))) {
                children.forEach(seed -> futures.add(threads.submit(() -> of(kind, seed, weeks, runs))));
            }
            for (Future<Case> future : futures) {
                cases.add(future.get());
            }
        } finally {
            threads.shutdownNow();
        }
        String text = text(cases);
        System.out.println(text);
        Path folder = Path.of(System.getProperty("outlook.folder", "target/policies"));
        Files.createDirectories(folder);
        Files.writeString(folder.resolve("outlook.txt"), text);
    }

    /** One line for each child, and what they come to: share held, width, share open. */
    static String text(List<Case> cases) {
        StringBuilder text = new StringBuilder();
        for (Case one : cases) {
            text.append(String.format(
                    Locale.ROOT,
                    "%-22s %6d  said %s .. %s .. %s  came %s  %s%n",
                    one.kind(),
                    one.seed(),
                    day(one.said().early()),
                    day(one.said().middle()),
                    day(one.said().late()),
                    day(one.came()),
                    one.holds() ? "held" : "missed"));
        }
        double held = cases.stream().filter(Case::holds).count();
        double open = cases.stream().filter(Case::isOpen).count();
        double width = cases.stream()
                .flatMap(c -> c.width().stream())
                .mapToDouble(w -> w)
                .average()
                .orElse(Double.NaN);
        long came = cases.stream().filter(c -> c.came().isPresent()).count();
        return text.append(String.format(
                        Locale.ROOT,
                        "the 80 %% range held for %.2f of %d children; it was open for %.2f of them, else %.1f weeks wide;"
                                + " %d got there within the year%n",
                        held / cases.size(),
                        cases.size(),
                        open / cases.size(),
                        width,
                        came))
                .toString();
    }

    private static String day(Optional<LocalDate> day) {
        return day.map(LocalDate::toString).orElse("----------");
    }

    private static Case of(SimulatedLearnerKind kind, long seed, int weeks, int runs) {
        Calendar calendar = kind.calendar(seed);
        Policy policy = Policies.named("ours");
        SimulatedLearner child = kind.create(seed);
        SchoolYear year = new SchoolYear(child, new LastingGain(), policy.blank(), calendar, seed, a -> {});
        Projection[] said = new Projection[1];
        LocalDate[] came = new LocalDate[1];
        year.run(calendar.weeks(), true, new SchoolYear.Watcher() {
            @Override
            public void drilled(int drill, Instant next) {
                if (said[0] != null && came[0] == null && year.progress().families(Mastery.FLUENT) == Families.COUNT) {
                    came[0] = local(year.now());
                }
            }

            @Override
            public void weekEnded(int week, Instant end) {
                if (week == weeks) {
                    said[0] = look(year.progress(), end, (double) year.drills() / week, seed, runs);
                }
            }
        });
        return new Case(kind.name(), seed, said[0], Optional.ofNullable(came[0]), local(year.now()));
    }

    private static LocalDate local(Instant at) {
        return LocalDate.ofInstant(at, ZoneOffset.UTC);
    }

    private static Projection look(Progress progress, Instant now, double daysAWeek, long seed, int runs) {
        Outlook outlook = new Outlook(progress, now.plus(Duration.ofHours(1)), daysAWeek, seed);
        for (int run = 0; run < runs; run++) {
            outlook.playOnce();
        }
        return outlook.projection();
    }
}
