package fourfold.home;

import fourfold.facts.Families;
import fourfold.facts.Question;
import fourfold.insight.LifetimeProgress;
import fourfold.insight.Timings;
import fourfold.log.ActionRecord;
import fourfold.log.Answer;
import fourfold.log.Child;
import fourfold.log.ChildName;
import fourfold.log.DrillSession;
import fourfold.log.ParentAction;
import fourfold.log.Problem;
import fourfold.log.Reason;
import fourfold.log.RecordsFailure;
import fourfold.outlook.Outlook;
import fourfold.outlook.Projection;
import fourfold.paper.Paper;
import fourfold.progress.Progress;
import fourfold.progress.Steering;
import fourfold.store.DrillLock;
import fourfold.store.Store;
import fourfold.terminal.SessionClock;
import fourfold.upkeep.Backups;
import fourfold.words.Words;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Consumer;
import java.util.function.LongSupplier;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** The home's records on a store file: what the screens see of the store. */
public final class Household implements Records {
    private final Store store;
    private final SessionClock moments;
    private final LongSupplier seeds;
    private final Optional<Path> file;
    private final HouseGate gate;
    private final FileWork fileWork = new FileWork();
    private Optional<DrillLock> seat = Optional.empty();
    private final List<String> toTell = new ArrayList<>();
    private Words words = Words.english();

    public Household(Store store, SessionClock moments) {
        this(store, moments, () -> new SecureRandom().nextLong());
    }

    /** With given seeds for drills, one after the other, and without backups. */
    public Household(Store store, SessionClock moments, LongSupplier seeds) {
        this(store, moments, seeds, Optional.empty());
    }

    /** With backups of the store's file, and one drill of a child at a time. */
    public Household(Store store, SessionClock moments, Path file) {
        this(store, moments, () -> new SecureRandom().nextLong(), Optional.of(file));
    }

    private Household(Store store, SessionClock moments, LongSupplier seeds, Optional<Path> file) {
        this.file = file;
        this.store = store;
        this.moments = moments;
        this.seeds = seeds;
        this.gate = new HouseGate(store);
    }

    /** From now on, in this language. */
    public void speak(Words language) {
        words = language;
    }

    @Override
    public Words words() {
        return words;
    }

    @Override
    public FileWork fileWork() {
        return fileWork;
    }

    @Override
    public List<Child> children() {
        return told(store::children);
    }

    @Override
    public Child add(String name, Instant at) {
        Child child = new Child(UUID.randomUUID(), ChildName.chosen(name), at.truncatedTo(ChronoUnit.MILLIS));
        return told(() -> {
            store.add(child);
            return child;
        });
    }

    @Override
    public List<Known> allChildren() {
        return told(() -> {
            List<UUID> here = store.children().stream().map(Child::id).toList();
            return store.allChildren().stream()
                    .map(c -> new Known(c, !here.contains(c.id())))
                    .toList();
        });
    }

    @Override
    public void rename(Child child, String name, Instant at) {
        ChildName.chosen(name);
        keep(child, List.of(new ParentAction.Choose(ParentAction.Choose.NAME, name)), at);
    }

    @Override
    public void putAway(Child child, boolean away, Instant at) {
        keep(child, List.of(new ParentAction.Choose(ParentAction.Choose.AWAY, away ? "yes" : "no")), at);
    }

    @Override
    public Optional<String> remove(Child child, Instant at) {
        takeSeat(child);
        try {
            return told(() -> {
                Optional<String> backup = file.map(
                        f -> Backups.of(f).named("before-removal").file().toString());
                store.remove(child.id(), at);
                return backup;
            });
        } finally {
            leaveSeat();
        }
    }

    @Override
    public void foreseen(Child child, Projection projection, Instant at) {
        String text = Stream.of(
                        Optional.of(LocalDate.ofInstant(at, moments.zone())),
                        projection.early(),
                        projection.middle(),
                        projection.late())
                .map(day -> day.map(LocalDate::toString).orElse("-"))
                .collect(Collectors.joining(" "));
        told(() -> {
            store.keepHomeSetting(name("ahead", child), text);
            return true;
        });
    }

    /** The last look ahead in one sentence, with its day; empty if there was none. */
    Optional<String> foreseen(Child child) {
        return told(() -> store.homeSetting(name("ahead", child)))
                .map(text -> text.split(" "))
                .filter(days -> days.length == 4)
                .map(days -> "All " + Families.COUNT + " families fluent, as foreseen on " + days[0] + ": perhaps "
                        + later(days[2])
                        + ", between " + later(days[1]) + " and " + later(days[3])
                        + " in eight of ten cases. A guess, not a promise.");
    }

    private static String later(String day) {
        return day.equals("-") ? "later than is looked ahead" : day;
    }

    @Override
    public List<Question> onPaper(Child child) {
        String text = told(() -> store.homeSetting(name("paper", child))).orElse("");
        return text.isBlank()
                ? List.of()
                : Stream.of(text.split(" "))
                        .map(q -> Families.questions().get(Integer.parseInt(q, 36)))
                        .toList();
    }

    @Override
    public void printed(Child child, List<Question> questions) {
        // The place in the list of all questions, in two characters at most: a page fits into what is remembered.
        String text = questions.stream()
                .map(q -> Integer.toString(Families.questions().indexOf(q), 36))
                .collect(Collectors.joining(" "));
        told(() -> {
            store.keepHomeSetting(name("paper", child), text.isEmpty() ? " " : text);
            return true;
        });
    }

    @Override
    public String print(Child child, Printable page, boolean letter, Instant at) {
        // Beside the answers, where the family looks for what is theirs; the demo has no place of its own.
        Path folder = file.map(Path::toAbsolutePath)
                .map(Path::getParent)
                .orElseGet(() -> Path.of(System.getProperty("java.io.tmpdir", ".")));
        return worksheets().file(child, page, letter ? Paper.LETTER : Paper.A4, at, folder, moments.zone());
    }

    /** What the screens and commands print from. */
    public Worksheets worksheets() {
        return new Worksheets(this, store);
    }

    private static String name(String what, Child child) {
        return what + child.id().toString().replace("-", "");
    }

    @Override
    public Gate gate() {
        return gate;
    }

    @Override
    public Progress progress(Child child) {
        return told(() -> folded(child, new Progress.Fold(Steering.of(store.acts(child.id())))));
    }

    /** How far the child has come, several times as fast as {@link #progress}; it can't choose or foresee. */
    public Progress levels(Child child) {
        return told(() -> folded(child, Progress.Fold.ofLevels(Steering.of(store.acts(child.id())))));
    }

    private Progress folded(Child child, Progress.Fold fold) {
        store.readAnswers(child.id(), fold);
        return fold.progress();
    }

    @Override
    public void read(Child child, Consumer<Answer> each) {
        told(() -> {
            store.readAnswers(child.id(), each);
            return true;
        });
    }

    @Override
    public Ahead ahead(Progress progress, double daysAWeek, Instant at) {
        Outlook outlook = new Outlook(progress, at, daysAWeek, progress.answers());
        return new Ahead() {
            @Override
            public boolean isPossible() {
                return Outlook.isPossible(progress);
            }

            @Override
            public void playOnce() {
                outlook.playOnce();
            }

            @Override
            public Projection projection() {
                return outlook.projection();
            }
        };
    }

    @Override
    public LifetimeProgress filling(Child child) {
        return told(() -> {
            LifetimeProgress filling = new LifetimeProgress();
            store.readAnswers(child.id(), filling);
            return filling;
        });
    }

    @Override
    public Timings timings(Child child) {
        return told(() -> {
            Timings timings = new Timings();
            store.readAnswers(child.id(), timings);
            return timings;
        });
    }

    @Override
    public DrillSession newSitting(Child child, int minutes, Instant at) {
        takeSeat(child);
        return new DrillSession(
                UUID.randomUUID(),
                child.id(),
                at.truncatedTo(ChronoUnit.MILLIS),
                moments.zoneOffsetMinutes(at),
                Duration.ofMinutes(minutes),
                seeds.getAsLong());
    }

    /** Two drills of one child at the same time would each count what the other does not know of. */
    private void takeSeat(Child child) {
        leaveSeat();
        if (file.isPresent()) {
            seat = told(() -> DrillLock.take(file.get(), child.id()));
            if (seat.isEmpty()) {
                throw new RecordsFailure(
                        RecordsFailure.Task.BEGIN_DRILL,
                        List.of(),
                        Problem.of(Reason.PRACTISING_ELSEWHERE, child.name()));
            }
        }
    }

    /** The child may practise elsewhere again. */
    void leaveSeat() {
        seat.ifPresent(DrillLock::close);
        seat = Optional.empty();
    }

    @Override
    public void begin(DrillSession sitting) {
        told(() -> {
            store.begin(sitting);
            return true;
        });
    }

    @Override
    public void keep(Answer answer) {
        told(() -> {
            store.keep(answer);
            return true;
        });
    }

    @Override
    public Optional<RecordsFailure> ended(DrillSession sitting, Instant at) {
        leaveSeat();
        try {
            store.checkpoint();
            file.map(Backups::of).ifPresent(b -> b.ofDay(LocalDate.ofEpochDay(sitting.localDay())));
            return Optional.empty();
        } catch (RecordsFailure e) {
            return Optional.of(e);
        }
    }

    @Override
    public void tellParent(String line) {
        leaveSeat();
        toTell.add(line);
    }

    /** What a grown-up must be told now that the program ends and {@link #fileWork} is done. */
    public List<String> toTell() {
        return List.copyOf(toTell);
    }

    @Override
    public void keep(Child child, List<ParentAction> deeds, Instant at) {
        told(() -> {
            store.keepActs(deeds.stream()
                    .map(deed -> new ActionRecord(
                            UUID.randomUUID(),
                            child.id(),
                            at.truncatedTo(ChronoUnit.MILLIS),
                            moments.zoneOffsetMinutes(at),
                            deed))
                    .toList());
            return true;
        });
    }

    @Override
    public List<ActionRecord> acts(Child child) {
        return told(() -> store.acts(child.id()));
    }

    @Override
    public List<PastDrill> drills(Child child) {
        return told(() -> {
            Map<UUID, int[]> counts = new HashMap<>();
            store.readAnswers(child.id(), answer -> {
                if (answer.purpose().isFromMemory()) {
                    int[] count = counts.computeIfAbsent(answer.drill(), d -> new int[2]);
                    count[0]++;
                    count[1] += answer.isCorrect() ? 1 : 0;
                }
            });
            List<PastDrill> drills = new ArrayList<>();
            for (DrillSession sitting : store.sittings(child.id())) {
                int[] count = counts.getOrDefault(sitting.id(), new int[2]);
                drills.add(0, new PastDrill(sitting, count[0], count[1]));
            }
            return drills;
        });
    }

    /** Work on the store; what it throws goes on to whoever asked. */
    static <T> T told(Supplier<T> work) {
        return work.get();
    }
}
