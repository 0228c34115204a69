package fourfold.home;

import fourfold.facts.Families;
import fourfold.facts.Question;
import fourfold.home.Records.NotKept;
import fourfold.insight.DrillRates;
import fourfold.insight.Grid;
import fourfold.insight.PaperQuestions;
import fourfold.insight.TableCount;
import fourfold.insight.Weeks;
import fourfold.log.Child;
import fourfold.paper.Paper;
import fourfold.paper.PrintedPages;
import fourfold.progress.Progress;
import fourfold.store.Store;
import fourfold.terminal.SessionClock;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Pages of paper for a child, made from the home's records. */
public final class PrintPages {
    private final Store store;
    private final SessionClock moments;
    private final PracticeRecords records;
    private final LookAhead ahead;
    private final Optional<Path> file;

    PrintPages(Store store, SessionClock moments, PracticeRecords records, LookAhead ahead, Optional<Path> file) {
        this.store = store;
        this.moments = moments;
        this.records = records;
        this.ahead = ahead;
        this.file = file;
    }

    /** A page to print; empty if the child has met nothing that could stand on it. A practice page is remembered. */
    public Optional<String> page(Child child, Printable wanted, Paper paper, Instant at) {
        Progress progress = records.progress(child);
        Grid grid = Grid.of(progress, at);
        LocalDate day = LocalDate.ofEpochDay(progress.localDay(at));
        if (wanted == Printable.TABLE) {
            return Optional.of(PrintedPages.table(paper));
        }
        if (wanted == Printable.PROGRESS) {
            DrillRates rates = new DrillRates();
            records.read(child, rates);
            Weeks weeks = Weeks.of(
                    records.sessions(child),
                    day.toEpochDay(),
                    progress.steering().settings().days());
            return Optional.of(PrintedPages.progress(
                    child.name(),
                    day,
                    grid,
                    rates.drills(),
                    TableCount.of(progress),
                    weeks,
                    ahead.remembered(child).map(PrintPages::sentence),
                    paper));
        }
        int most = wanted == Printable.CARDS ? PrintedPages.CARDS : PaperQuestions.MOST;
        List<Question> questions = PaperQuestions.of(grid, most, progress.answers());
        if (questions.isEmpty()) {
            return Optional.empty();
        }
        if (wanted == Printable.CARDS) {
            return Optional.of(PrintedPages.cards(child.name(), questions, paper));
        }
        remember(child, questions);
        return Optional.of(PrintedPages.practice(child.name(), day, questions, paper));
    }

    /**
     * Makes the page as a file beside the family's, under the first free name of the day.
     *
     * @return the file; empty if there is nothing to print
     * @throws NotKept if the file can't be made
     */
    public Optional<String> file(Child child, Printable page, Paper paper, Instant at) {
        return page(child, page, paper, at).map(html -> kept(page, html, LocalDate.ofInstant(at, moments.zone())));
    }

    private String kept(Printable page, String html, LocalDate day) {
        // Beside the answers, where the family looks for what is theirs; the demo has no place of its own.
        Path folder = file.map(Path::toAbsolutePath)
                .map(Path::getParent)
                .orElseGet(() -> Path.of(System.getProperty("java.io.tmpdir", ".")));
        String stem = "fourfold-" + page.key() + "-" + day;
        Path made = folder.resolve(stem + ".html");
        for (int number = 2; Files.exists(made); number++) {
            made = folder.resolve(stem + "-" + number + ".html");
        }
        try {
            NewFile.write(made, "the page", writer -> writer.write(html));
        } catch (UncheckedIOException e) {
            throw new NotKept(String.valueOf(e.getMessage()), e);
        }
        return made.toString();
    }

    /** The last look ahead in one sentence, with its day. */
    private static String sentence(LookAhead.Remembered seen) {
        return "All " + Families.COUNT + " families fluent, as foreseen on " + seen.day() + ": perhaps "
                + later(seen.middle()) + ", between " + later(seen.early()) + " and " + later(seen.late())
                + " in eight of ten cases. A guess, not a promise.";
    }

    private static String later(Optional<LocalDate> day) {
        return day.map(LocalDate::toString).orElse("later than is looked ahead");
    }

    /** The questions of the page that was last printed and not yet entered; none if there is no such page. */
    List<Question> remembered(Child child) {
        String text = OnStore.read(() -> store.homeSetting(name(child))).orElse("");
        return text.isBlank()
                ? List.of()
                : Stream.of(text.split(" "))
                        .map(q -> Families.questions().get(Integer.parseInt(q, 36)))
                        .toList();
    }

    /** Remembers the questions of a page that was printed, in place of those before. */
    void remember(Child child, List<Question> questions) {
        // The place in the list of all questions, in two characters at most: a page fits into what is remembered.
        String text = questions.stream()
                .map(q -> Integer.toString(Families.questions().indexOf(q), 36))
                .collect(Collectors.joining(" "));
        OnStore.write(() -> store.keepHomeSetting(name(child), text.isEmpty() ? " " : text));
    }

    private static String name(Child child) {
        return "paper" + child.id().toString().replace("-", "");
    }
}
