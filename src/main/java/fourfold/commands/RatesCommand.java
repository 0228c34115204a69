// SPDX-License-Identifier: Apache-2.0
package fourfold.commands;

import fourfold.home.Home;
import fourfold.insight.DrillRates;
import fourfold.log.Child;
import fourfold.plain.RatesText;
import fourfold.records.PlanJson;
import java.io.IOException;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParentCommand;
import picocli.CommandLine.Spec;

/** Prints a child's rates. */
@Command(name = "rates", mixinStandardHelpOptions = true, sortOptions = false, footer = "  fourfold rates --child Mina")
final class RatesCommand implements Callable<Integer> {
    @ParentCommand
    private App app;

    @Spec
    private CommandSpec spec;

    @Option(names = "--json")
    private boolean json;

    @Option(names = "--plain", descriptionKey = "plain")
    private boolean plain;

    @Override
    public Integer call() throws IOException {
        try (Home home = app.open()) {
            Child whose = app.child(home, spec);
            DrillRates rates = new DrillRates();
            home.records().read(whose, rates);
            if (json) {
                app.world().out().print(PlanJson.rates(whose.name(), rates.drills()));
            } else if (plain) {
                app.world().out().print(RatesText.sentences(app.words(home), whose.name(), rates.drills()));
            } else {
                RatesText.write(
                        app.world().out(),
                        app.words(home),
                        whose.name(),
                        rates.drills(),
                        app.world().unicode());
            }
            return ExitCode.DONE;
        }
    }
}
