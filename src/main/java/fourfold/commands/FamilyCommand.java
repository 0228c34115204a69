// SPDX-License-Identifier: Apache-2.0
package fourfold.commands;

import fourfold.facts.Family;
import fourfold.home.Home;
import fourfold.home.Standing;
import fourfold.insight.FamilyRecord;
import fourfold.insight.FamilyReport;
import fourfold.log.Child;
import fourfold.plain.FamilyText;
import fourfold.progress.Steering;
import fourfold.records.ProgressJson;
import fourfold.words.Words;
import java.io.IOException;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import picocli.CommandLine.Spec;

/** Prints one family in numbers. */
@Command(
        name = "family",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        footer = "  fourfold family 6x7 --child Mina")
final class FamilyCommand implements Callable<Integer> {
    @ParentCommand
    private App app;

    @Spec
    private CommandSpec spec;

    @Parameters(
            paramLabel = "${bundle:label.family}",
            converter = FamilyArgument.FamilyReader.class,
            descriptionKey = "family")
    private Family family;

    @Option(names = "--json")
    private boolean json;

    @Option(names = "--plain", descriptionKey = "plain")
    private boolean plain;

    @Override
    public Integer call() throws IOException {
        try (Home home = app.open()) {
            Child whose = app.child(home, spec);
            Standing standing = home.records().standing(whose);
            FamilyRecord record = new FamilyRecord(family);
            home.records().read(whose, record);
            FamilyReport report = FamilyReport.of(
                    standing.progress(),
                    standing.stones(),
                    record,
                    family,
                    home.moments().now());
            Steering steering = standing.progress().steering();
            Words words = app.words(home);
            boolean unicode = app.world().unicode();
            app.world()
                    .out()
                    .print(
                            json
                                    ? ProgressJson.family(whose.name(), report)
                                    : plain
                                            ? FamilyText.sentences(words, whose.name(), report, steering, unicode)
                                            : FamilyText.table(words, whose.name(), report, steering, unicode));
            return ExitCode.DONE;
        }
    }
}
