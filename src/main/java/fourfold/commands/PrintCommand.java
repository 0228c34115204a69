package fourfold.commands;

import fourfold.export.Paper;
import fourfold.export.PrintedPages;
import fourfold.facts.Child;
import fourfold.facts.Question;
import fourfold.progress.DrillRates;
import fourfold.progress.Grid;
import fourfold.progress.PaperQuestions;
import fourfold.progress.Progress;
import fourfold.progress.TableCount;
import fourfold.progress.Weeks;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import picocli.CommandLine.Spec;

/** Makes a page to print. */
@Command(
        name = "print",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        description = {
            "Make a page to print, as one HTML file; open it in a browser and print it from there.",
            "cards: questions to cut out, the answers behind them when printed on both sides. practice: mixed questions"
                    + " with the answers on a page of their own. table: the table to 10 x 10, blank and filled."
                    + " progress: where the child stands."
        },
        footer = {"", "Example:", "  fourfold print practice --child Mina"})
final class PrintCommand implements Callable<Integer> {
    /** What can be printed. */
    enum Page {
        CARDS,
        PRACTICE,
        TABLE,
        PROGRESS
    }

    @ParentCommand
    private App app;

    @Spec
    private CommandSpec spec;

    @Parameters(index = "0", paramLabel = "PAGE", description = "cards, practice, table or progress.")
    private String page;

    @Option(names = "--size", paramLabel = "a4|letter", description = "Paper. Default: a4.")
    private String size = "a4";

    @Option(names = "--output", paramLabel = "FILE", description = "The file to make. Default: the standard output.")
    private @Nullable Path output;

    @Override
    public Integer call() {
        Page wanted = word(Page.class, page, "PAGE is cards, practice, table or progress");
        Paper paper = word(Paper.class, size, "--size is a4 or letter");
        String html = wanted == Page.TABLE ? PrintedPages.table(paper) : ofAChild(wanted, paper);
        if (output == null) {
            app.world().data().print(html);
        } else {
            NewFile.write(output, "the page", writer -> writer.write(html));
        }
        return ExitCode.DONE;
    }

    private <E extends Enum<E>> E word(Class<E> choices, String word, String otherwise) {
        try {
            return Enum.valueOf(choices, word.toUpperCase(Locale.ROOT));
        } catch (IllegalArgumentException e) {
            throw new ParameterException(spec.commandLine(), otherwise + ", not " + word, e);
        }
    }

    private String ofAChild(Page wanted, Paper paper) {
        try (Home home = app.open()) {
            Child whose = home.child(app.child(), spec);
            Progress progress = home.records().progress(whose);
            Instant now = home.moments().now();
            Grid grid = Grid.of(progress, now);
            LocalDate day = LocalDate.ofEpochDay(progress.localDay(now));
            if (wanted == Page.PROGRESS) {
                return progressPage(home, whose, progress, grid, day, paper);
            }
            List<Question> questions = PaperQuestions.of(
                    grid, wanted == Page.CARDS ? PrintedPages.CARDS : PaperQuestions.MOST, progress.answers());
            if (questions.isEmpty()) {
                throw new ParameterException(
                        spec.commandLine(), whose.name() + " has met no family yet; there is nothing to print");
            }
            if (wanted == Page.CARDS) {
                return PrintedPages.cards(whose.name(), questions, paper);
            }
            home.records().printed(whose, questions);
            return PrintedPages.practice(whose.name(), day, questions, paper);
        }
    }

    private static String progressPage(
            Home home, Child whose, Progress progress, Grid grid, LocalDate day, Paper paper) {
        DrillRates rates = new DrillRates();
        home.records().read(whose, rates);
        Weeks weeks = Weeks.of(
                home.store().sittings(whose.id()),
                day.toEpochDay(),
                progress.steering().settings().days());
        return PrintedPages.progress(whose.name(), day, grid, rates.drills(), TableCount.of(progress), weeks, paper);
    }
}
