package fourfold.commands;

import fourfold.home.Home;
import fourfold.home.Printable;
import fourfold.insight.PageContent;
import fourfold.log.Child;
import fourfold.paper.Paper;
import fourfold.paper.PrintedPage;
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
        footer = "  fourfold print practice --child Mina")
final class PrintCommand implements Callable<Integer> {
    @ParentCommand
    private App app;

    @Spec
    private CommandSpec spec;

    @Parameters(index = "0", paramLabel = "${bundle:label.page}", descriptionKey = "page")
    private String page;

    @Option(names = "--size", paramLabel = "a4|letter")
    private String size = "a4";

    @Option(names = "--output", paramLabel = "${bundle:label.file}")
    private @Nullable Path output;

    @Override
    public Integer call() {
        Printable wanted = word(Printable.class, page, "command.print.page");
        Paper paper = word(Paper.class, size, "command.print.size");
        String html = wanted == Printable.TABLE
                ? PrintedPage.html(new PageContent.Table(), paper, app.words())
                : ofAChild(wanted, paper);
        if (output == null) {
            app.world().data().print(html);
        } else {
            app.make(output, writer -> writer.write(html));
        }
        return ExitCode.DONE;
    }

    private <E extends Enum<E>> E word(Class<E> choices, String word, String otherwise) {
        try {
            return Enum.valueOf(choices, word.toUpperCase(Locale.ROOT));
        } catch (IllegalArgumentException e) {
            throw new ParameterException(spec.commandLine(), app.words().say(otherwise, word), e);
        }
    }

    private String ofAChild(Printable wanted, Paper paper) {
        try (Home home = app.open()) {
            Child whose = app.child(home, spec);
            PageContent content = home.printPages()
                    .content(whose, wanted, home.moments().now())
                    .orElseThrow(() -> new ParameterException(
                            spec.commandLine(), app.words().say("print." + wanted.nothing(), whose.name())));
            return PrintedPage.html(content, paper, app.words());
        }
    }
}
