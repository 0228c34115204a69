package fourfold.home;

import fourfold.facts.Families;
import fourfold.facts.Question;
import fourfold.home.Records.NotKept;
import fourfold.home.Records.Printable;
import fourfold.insight.DrillRates;
import fourfold.insight.Grid;
import fourfold.insight.PageContent;
import fourfold.insight.PaperQuestions;
import fourfold.insight.TableCount;
import fourfold.insight.Weeks;
import fourfold.log.Child;
import fourfold.progress.Progress;
import fourfold.store.Store;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Pages to print for a child: chooses what stands on them and remembers it; drawing them is for others. */
public final class PrintPages {
    private final Household household;
    private final Store store;

    PrintPages(Household household, Store store) {
        this.household = household;
        this.store = store;
    }

    /**
     * What stands on a page; empty if the child has met nothing that could stand on it. The questions of a practice page
     * are remembered.
     */
    public Optional<PageContent> content(Child child, Printable wanted, Instant at) {
        if (wanted == Printable.TABLE) {
            return Optional.of(new PageContent.Table());
        }
        Progress progress = household.progress(child);
        Grid grid = Grid.of(progress, at);
        LocalDate day = LocalDate.ofEpochDay(progress.localDay(at));
        if (wanted == Printable.PROGRESS) {
            return Optional.of(report(child, progress, grid, day));
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

    private PageContent report(Child child, Progress progress, Grid grid, LocalDate day) {
        DrillRates rates = new DrillRates();
        household.read(child, rates);
        Weeks weeks = Weeks.of(
                Household.told(() -> store.sittings(child.id())),
                day.toEpochDay(),
                progress.steering().settings().days());
        return new PageContent.Report(
                child.name(), day, grid, rates.drills(), TableCount.of(progress), weeks, household.foreseen(child));
    }

    /** The questions of the page that was last printed and not yet entered; none if there is no such page. */
    List<Question> remembered(Child child) {
        String text = Household.told(() -> store.homeSetting(name(child))).orElse("");
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
        Household.told(() -> {
            store.keepHomeSetting(name(child), text.isEmpty() ? " " : text);
            return true;
        });
    }

    private static String name(Child child) {
        return "paper" + child.id().toString().replace("-", "");
    }

    /** Keeps a page as a new file in a folder, under the first free name of the day; gives the file. */
    String keep(Printable page, String html, LocalDate day, Path folder) {
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
}
