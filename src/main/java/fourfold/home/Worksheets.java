package fourfold.home;

import fourfold.commands.NewFile;
import fourfold.facts.Question;
import fourfold.home.Records.Printable;
import fourfold.insight.DrillRates;
import fourfold.insight.Grid;
import fourfold.insight.PaperQuestions;
import fourfold.insight.TableCount;
import fourfold.insight.Weeks;
import fourfold.log.Child;
import fourfold.log.Problem;
import fourfold.log.Reason;
import fourfold.log.RecordsFailure;
import fourfold.log.RecordsFailure.Task;
import fourfold.paper.Paper;
import fourfold.paper.PrintedPages;
import fourfold.progress.Progress;
import fourfold.store.Failure;
import fourfold.store.Store;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;

/** Pages of paper for a child, made from the home's records. */
public final class Worksheets {
    private final Household household;
    private final Store store;

    Worksheets(Household household, Store store) {
        this.household = household;
        this.store = store;
    }

    /** A page to print; empty if the child has met nothing that could stand on it. A practice page is remembered. */
    public Optional<String> page(Child child, Printable wanted, Paper paper, Instant at) {
        Progress progress = household.progress(child);
        Grid grid = Grid.of(progress, at);
        LocalDate day = LocalDate.ofEpochDay(progress.localDay(at));
        if (wanted == Printable.TABLE) {
            return Optional.of(PrintedPages.table(paper));
        }
        if (wanted == Printable.PROGRESS) {
            DrillRates rates = new DrillRates();
            household.read(child, rates);
            Weeks weeks = Weeks.of(
                    Household.told(() -> store.sittings(child.id())),
                    day.toEpochDay(),
                    progress.steering().settings().days());
            return Optional.of(PrintedPages.progress(
                    child.name(),
                    day,
                    grid,
                    rates.drills(),
                    TableCount.of(progress),
                    weeks,
                    household.foreseen(child),
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
        household.printed(child, questions);
        return Optional.of(PrintedPages.practice(child.name(), day, questions, paper));
    }

    /** Makes the page as a file in a folder, under the first free name of the day; gives the file. */
    String file(Child child, Printable page, Paper paper, Instant at, Path folder, ZoneId zone) {
        String html = page(child, page, paper, at)
                .orElseThrow(() ->
                        new RecordsFailure(Task.PRINT, List.of(), Problem.of(Reason.NOTHING_TO_PRINT, child.name())));
        String stem = "fourfold-" + page.name().toLowerCase(Locale.ROOT) + "-" + LocalDate.ofInstant(at, zone);
        Path made = folder.resolve(stem + ".html");
        for (int number = 2; Files.exists(made); number++) {
            made = folder.resolve(stem + "-" + number + ".html");
        }
        try {
            NewFile.write(made, "the page", writer -> writer.write(html));
        } catch (UncheckedIOException e) {
            throw new RecordsFailure(
                    Task.PRINT, Failure.shown(made), Failure.problem(Objects.requireNonNull(e.getCause())), e);
        }
        return made.toString();
    }
}
