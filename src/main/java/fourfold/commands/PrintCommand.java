package fourfold.commands;

import fourfold.home.Home;
import fourfold.home.NewFile;
import fourfold.home.Printable;
import fourfold.log.Child;
import fourfold.paper.Paper;
import fourfold.paper.PrintedPages;
import java.nio.file.Path;
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
        Printable wanted = word(Printable.class, page, "PAGE is cards, practice, table or progress");
        Paper paper = word(Paper.class, size, "--size is a4 or letter");
        String html = wanted == Printable.TABLE ? PrintedPages.table(paper) : ofAChild(wanted, paper);
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

    private String ofAChild(Printable wanted, Paper paper) {
        try (Home home = app.open()) {
            Child whose = app.child(home, spec);
            return home.printPages()
                    .page(whose, wanted, paper, home.moments().now())
                    .orElseThrow(() -> new ParameterException(
                            spec.commandLine(), whose.name() + " has met no family yet; there is nothing to print"));
        }
    }
}
