package fourfold.simulation;

import fourfold.facts.Families;
import fourfold.outlook.Outlook;
import fourfold.outlook.Projection;
import fourfold.progress.Mastery;
import fourfold.progress.Progress;
import fourfold.scheduling.LastingGain;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;

/**
 * How often the projection's range holds what then happens: simulated children of every kind are looked ahead at after
 * some weeks, and then practise on. A child who does not get there within the year counts as held if the range reaches
 * past the year. Arguments: first seed, children a kind, weeks, runs. Outside the tests, since it takes minutes.
 */
public final class OutlookCalibration {
    private record Case(String kind, long seed, Projection said, Optional<LocalDate> came, LocalDate end) {
        boolean holds() {
            // A child who has not come by the end says nothing against an early end that lies after it.
            boolean notBefore = came.isEmpty()
                    || said.early().filter(early -> !came.get().isBefore(early)).isPresent();
            boolean notAfter = said.late()
                    .map(late -> came.map(c -> !c.isAfter(late)).orElse(late.isAfter(end)))
                    .orElse(true);
            return notBefore && notAfter;
        }
    }

    private OutlookCalibration() {}

    public static void main(String[] arguments) throws InterruptedException, ExecutionException {
        long first = Long.parseLong(arguments[0]);
        int children = Integer.parseInt(arguments[1]);
        int weeks = Integer.parseInt(arguments[2]);
        int runs = Integer.parseInt(arguments[3]);
        ExecutorService threads = Executors.newFixedThreadPool(2);
        List<Future<Case>> futures = new ArrayList<>();
        for (SimulatedLearnerKind kind : SimulatedLearnerKind.all()) {
            for (long seed = first; seed < first + children; seed++) {
                long own = seed;
                futures.add(threads.submit(() -> of(kind, own, weeks, runs)));
            }
        }
        int held = 0;
        int arrived = 0;
        int closed = 0;
        for (Future<Case> future : futures) {
            Case one = future.get();
            held += one.holds() ? 1 : 0;
            arrived += one.came().isPresent() ? 1 : 0;
            closed += one.said().late().isPresent() ? 1 : 0;
            System.out.printf(
                    Locale.ROOT,
                    "%-12s %5d  said %s .. %s .. %s  came %s  %s%n",
                    one.kind(),
                    one.seed(),
                    day(one.said().early()),
                    day(one.said().middle()),
                    day(one.said().late()),
                    day(one.came()),
                    one.holds() ? "held" : "missed");
        }
        threads.shutdown();
        System.out.printf(
                Locale.ROOT,
                "the 80 %% range held for %d of %d children; %d got there within the year; %d ranges had an upper end%n",
                held,
                futures.size(),
                arrived,
                closed);
    }

    private static String day(Optional<LocalDate> day) {
        return day.map(LocalDate::toString).orElse("----------");
    }

    private static Case of(SimulatedLearnerKind kind, long seed, int weeks, int runs) {
        SchoolYear year = new SchoolYear(kind.create(seed), new LastingGain(), seed, a -> {});
        Projection[] said = new Projection[1];
        LocalDate[] came = new LocalDate[1];
        year.run(SchoolYear.SLOTS, true, (slot, next) -> {
            if (slot == weeks * 4 - 1) {
                said[0] = look(year.progress(), year.now(), slot, year.drills(), seed, runs);
            }
            if (came[0] == null && slot >= weeks * 4 && year.progress().families(Mastery.FLUENT) == Families.COUNT) {
                came[0] = local(year.now());
            }
        });
        return new Case(kind.name(), seed, said[0], Optional.ofNullable(came[0]), local(year.now()));
    }

    private static LocalDate local(Instant at) {
        return LocalDate.ofInstant(at, ZoneOffset.UTC);
    }

    private static Projection look(Progress progress, Instant now, int slot, int drills, long seed, int runs) {
        Outlook outlook = new Outlook(progress, now.plus(Duration.ofHours(20)), 4.0 * drills / (slot + 1), seed);
        for (int run = 0; run < runs; run++) {
            outlook.playOnce();
        }
        return outlook.projection();
    }
}
