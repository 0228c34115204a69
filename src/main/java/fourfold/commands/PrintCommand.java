// SPDX-License-Identifier: Apache-2.0
package fourfold.commands;

import fourfold.home.Home;
import fourfold.home.MadePage;
import fourfold.home.PageOrder;
import fourfold.insight.PageChoice;
import fourfold.insight.PageContent;
import fourfold.insight.PageKind;
import fourfold.insight.Portfolio;
import fourfold.log.Child;
import fourfold.paper.Layout;
import fourfold.paper.Paper;
import fourfold.paper.PrintedPage;
import fourfold.records.PortfolioJson;
import java.io.IOException;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import picocli.CommandLine.Spec;

/** Makes pages to print. */
@Command(
        name = "print",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        footer = {"  fourfold print practice --child Mina", "  fourfold print practice --tables 6,7 --asked quotients"})
final class PrintCommand implements Callable<Integer> {
    private static final int MOST_COPIES = 20;

    @ParentCommand
    private App app;

    @Spec
    private CommandSpec spec;

    @Parameters(index = "0", paramLabel = "${bundle:label.page}", descriptionKey = "page")
    private String page;

    @Option(names = "--tables", split = ",", paramLabel = "${bundle:label.table}")
    private List<Integer> tables = List.of();

    @Option(names = "--asked", paramLabel = "both|products|quotients|missing")
    private @Nullable String asked;

    @Option(names = "--pick", paramLabel = "due|mixed")
    private String pick = "due";

    @Option(names = "--questions", paramLabel = "N")
    private @Nullable Integer questions;

    @Option(names = "--copies", paramLabel = "N")
    private int copies = 1;

    @Option(names = "--from", paramLabel = "${bundle:label.day}")
    private @Nullable String from;

    @Option(names = "--to", paramLabel = "${bundle:label.day}")
    private @Nullable String to;

    @Option(names = "--letters", paramLabel = "usual|large")
    private String letters = "usual";

    @Option(names = "--size", paramLabel = "a4|letter")
    private String size = "a4";

    @Option(names = "--output", paramLabel = "${bundle:label.file}")
    private @Nullable String output;

    @Option(names = "--no-browser")
    private boolean quiet;

    @Option(names = "--json")
    private boolean json;

    @Override
    public Integer call() throws IOException {
        PageKind kind = word(PageKind.class, page, "page");
        Layout layout = new Layout(word(Paper.class, size, "size"), isLarge());
        PageChoice choice = choice(kind);
        if (copies < 1 || copies > MOST_COPIES) {
            throw refused("copies", "1–" + MOST_COPIES, copies);
        }
        try (Home home = app.open()) {
            LocalDate today =
                    LocalDate.ofInstant(home.moments().now(), home.moments().zone());
            PageOrder order = new PageOrder(kind, choice, copies, period(today));
            List<PageContent> pages = kind == PageKind.TABLE ? List.of(new PageContent.Table()) : ofAChild(home, order);
            for (PageContent content : pages) {
                put(home, content, layout, today);
            }
            return ExitCode.DONE;
        }
    }

    private List<PageContent> ofAChild(Home home, PageOrder order) {
        Child whose = app.child(home, spec);
        List<PageContent> pages =
                home.printPages().content(whose, order, home.moments().now());
        if (pages.isEmpty()) {
            throw new ParameterException(
                    spec.commandLine(), app.words().say("print." + order.kind().nothing(), whose.name()));
        }
        return pages;
    }

    private void put(Home home, PageContent content, Layout layout, LocalDate today) throws IOException {
        if (json) {
            if (!(content instanceof PageContent.Report report)) {
                throw refused("json", PageKind.REPORT.key() + ", " + PageKind.CANDO.key(), page);
            }
            app.world().out().print(PortfolioJson.portfolio(report));
            return;
        }
        String html = PrintedPage.html(content, layout, app.words());
        if (output == null) {
            MadePage made = home.printPages().keep(PrintedPage.fileName(content, today, app.words()), html, !quiet);
            String told = app.words().say(made.before() ? "print.before" : "print.made", made.file());
            app.world().out().println(made.shown() ? told + " " + app.words().say("print.shown") : told);
        } else if (output.equals("-")) {
            app.world().data().print(html);
        } else {
            app.make(Home.path(output), writer -> writer.write(html));
        }
    }

    private PageChoice choice(PageKind kind) {
        PageChoice usual = PageChoice.usual(kind);
        PageChoice.Asked how = asked == null ? usual.asked() : word(PageChoice.Asked.class, asked, "asked");
        int most = Math.max(2, kind.most());
        int count = questions == null ? most : questions;
        if (count < 2 || count > most) {
            throw refused("questions", "2–" + most, count);
        }
        if (tables.stream().anyMatch(t -> t < 1 || t > 10)) {
            throw refused("tables", "1–10", tables.stream().map(String::valueOf).collect(Collectors.joining(",")));
        }
        return new PageChoice(tables, how, word(PageChoice.Pick.class, pick, "pick"), count);
    }

    private boolean isLarge() {
        if (!List.of("usual", "large").contains(letters)) {
            throw refused("letters", "usual, large", letters);
        }
        return letters.equals("large");
    }

    private Optional<Portfolio.Period> period(LocalDate today) {
        if (from == null && to == null) {
            return Optional.empty();
        }
        LocalDate last = to == null ? today : day("to", to);
        LocalDate first = from == null ? last.minusYears(1).plusDays(1) : day("from", from);
        if (last.isBefore(first)) {
            throw refused("to", "≥ " + first, last);
        }
        return Optional.of(new Portfolio.Period(first, last));
    }

    private LocalDate day(String option, String written) {
        try {
            return LocalDate.parse(written);
        } catch (DateTimeException e) {
            throw refused(option, "YYYY-MM-DD", written);
        }
    }

    private <E extends Enum<E>> E word(Class<E> choices, String word, String option) {
        return Stream.of(choices.getEnumConstants())
                .filter(c -> c.name().toLowerCase(Locale.ROOT).equals(word))
                .findFirst()
                .orElseThrow(() -> refused(
                        option,
                        Stream.of(choices.getEnumConstants())
                                .map(c -> c.name().toLowerCase(Locale.ROOT))
                                .collect(Collectors.joining(", ")),
                        word));
    }

    private ParameterException refused(String option, String wanted, Object given) {
        String named = option.equals("page") ? app.words().help().getString("label.page") : "--" + option;
        return new ParameterException(spec.commandLine(), app.words().say("command.print.value", named, wanted, given));
    }
}
