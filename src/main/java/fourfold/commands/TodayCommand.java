// SPDX-License-Identifier: Apache-2.0
package fourfold.commands;

import fourfold.home.Home;
import fourfold.insight.Today;
import fourfold.log.Child;
import fourfold.records.YearJson;
import fourfold.words.SafeText;
import fourfold.words.TodayWords;
import fourfold.words.Words;
import java.io.IOException;
import java.time.LocalDate;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParentCommand;
import picocli.CommandLine.Spec;

/** Prints what today holds. */
@Command(name = "today", mixinStandardHelpOptions = true, sortOptions = false, footer = "  fourfold today --child Mina")
final class TodayCommand implements Callable<Integer> {
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
            if (json) {
                app.world().out().print(YearJson.today(whose.name(), day, today));
            } else {
                app.world().out().println(TodayWords.forParent(words, today));
                app.world().out().println(SafeText.safe(whose.name()) + ": " + TodayWords.forChild(words, today));
            }
            return ExitCode.DONE;
        }
    }
}
