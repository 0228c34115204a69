package fourfold.home;

import fourfold.facts.Families;
import fourfold.facts.Question;
import fourfold.insight.DrillRates;
import fourfold.insight.Grid;
import fourfold.insight.LifetimeProgress;
import fourfold.insight.PageContent;
import fourfold.insight.PaperQuestions;
import fourfold.insight.TableCount;
import fourfold.insight.Weeks;
import fourfold.log.Child;
import fourfold.log.RecordsFailure;
import fourfold.progress.Progress;
import fourfold.store.Failure;
import fourfold.store.Store;
import fourfold.terminal.SessionClock;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Pages to print for a child: chooses their content and remembers it; the room paper draws them. */
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

    /**
     * What stands on a page; empty if the child has met nothing that could stand on it. The questions of a practice page
     * are remembered.
     */
    public Optional<PageContent> content(Child child, Printable wanted, Instant at) {
        if (wanted == Printable.TABLE) {
            return Optional.of(new PageContent.Table());
        }
        if (wanted == Printable.WHOLE) {
            return whole(child);
        }
        Standing standing = records.standing(child);
        Progress progress = standing.progress();
        Grid grid = Grid.of(progress, at);
        LocalDate day = LocalDate.ofEpochDay(progress.localDay(at));
        if (wanted == Printable.PROGRESS) {
            return Optional.of(report(child, standing, day));
        }
        int most = wanted == Printable.CARDS ? PaperQuestions.CARDS : PaperQuestions.MOST;
        List<Question> questions = PaperQuestions.of(grid, most, progress.answers());
        if (questions.isEmpty()) {
            return Optional.empty();
        }
        if (wanted == Printable.CARDS) {
            return Optional.of(new PageContent.Cards(child.name(), questions));
        }
        remember(child, questions);
        return Optional.of(new PageContent.Practice(child.name(), day, questions));
    }

    /** The last page; empty before the stairs are whole. */
    private Optional<PageContent> whole(Child child) {
        LifetimeProgress stones = records.lifetime(child);
        return stones.lastLaid()
                .filter(day -> stones.isWhole())
                .map(day -> new PageContent.Whole(child.name(), LocalDate.ofEpochDay(day)));
    }

    private PageContent report(Child child, Standing standing, LocalDate day) {
        DrillRates rates = new DrillRates();
        records.read(child, rates);
        Weeks weeks = Weeks.of(
                records.sessions(child),
                day.toEpochDay(),
                standing.progress().steering().settings().days());
        return new PageContent.Report(
                child.name(),
                day,
                standing.stones(),
                rates.drills(),
                TableCount.of(standing.progress()),
                weeks,
                ahead.remembered(child));
    }

    /**
     * Keeps a page that was drawn, beside the family's file, under the first free name of the day.
     *
     * @return the file
     * @throws RecordsFailure if the file can't be made
     */
    public String keep(Printable page, String html, Instant at) {
        // Beside the answers, where the family looks for what is theirs; the demo has no place of its own.
        Path folder = file.map(Path::toAbsolutePath)
                .map(Path::getParent)
                .orElseGet(() -> Path.of(System.getProperty("java.io.tmpdir", ".")));
        String stem = "fourfold-" + page.key() + "-" + LocalDate.ofInstant(at, moments.zone());
        Path made = folder.resolve(stem + ".html");
        for (int number = 2; Files.exists(made); number++) {
            made = folder.resolve(stem + "-" + number + ".html");
        }
        try {
            NewFile.write(made, writer -> writer.write(html));
        } catch (IOException e) {
            throw new RecordsFailure(RecordsFailure.Task.PRINT, Failure.shown(made), Failure.problem(e), e);
        }
        return made.toString();
    }

    /** The questions of the page that was last printed and not yet entered; none if there is no such page. */
    List<Question> remembered(Child child) {
        String text = store.homeSetting(name(child)).orElse("");
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
        store.keepHomeSetting(name(child), text.isEmpty() ? " " : text);
    }

    private static String name(Child child) {
        return "paper" + child.id().toString().replace("-", "");
    }
}
