// SPDX-License-Identifier: Apache-2.0
package fourfold.commands;

import fourfold.home.Home;
import fourfold.insight.Today;
import fourfold.insight.YearView;
import fourfold.log.Child;
import fourfold.plain.YearText;
import fourfold.records.YearJson;
import fourfold.words.Words;
import java.io.IOException;
import java.time.LocalDate;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParentCommand;
import picocli.CommandLine.Spec;

/** Prints the school year at a glance, in sentences. */
@Command(name = "year", mixinStandardHelpOptions = true, sortOptions = false, footer = "  fourfold year --child Mina")
final class YearCommand implements Callable<Integer> {
    @ParentCommand
    private App app;

    @Spec
    private CommandSpec spec;

    @Option(names = "--json")
    private boolean json;

    @Override
    public Integer call() throws IOException {
        try (Home home = app.open()) {
            Child whose = app.child(home, spec);
            Words words = app.words(home);
            LocalDate day =
                    LocalDate.ofInstant(home.moments().now(), home.moments().zone());
            Today today = home.records().today(whose, day);
            YearView year = home.records().year(whose, day);
            app.world()
                    .out()
                    .print(
                            json
                                    ? YearJson.year(whose.name(), year)
                                    : YearText.sentences(
                                            words,
                                            whose.name(),
                                            year,
                                            today,
                                            app.world().unicode()));
            return ExitCode.DONE;
        }
    }
}
