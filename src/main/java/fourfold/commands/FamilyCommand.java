package fourfold.commands;

import fourfold.facts.Family;
import fourfold.home.Home;
import fourfold.home.Standing;
import fourfold.insight.FamilyRecord;
import fourfold.log.Child;
import fourfold.plain.FamilyText;
import fourfold.records.ProgressJson;
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

    @Override
    public Integer call() throws IOException {
        try (Home home = app.open()) {
            Child whose = app.child(home, spec);
            Standing standing = home.records().standingOfLevels(whose);
            if (json) {
                FamilyRecord record = new FamilyRecord(family);
                home.records().read(whose, record);
                app.world().out().print(ProgressJson.family(whose.name(), family, standing.progress(), record));
            } else {
                FamilyText.write(
                        app.world().out(),
                        app.words(home),
                        whose.name(),
                        family,
                        standing,
                        app.world().unicode());
            }
            return ExitCode.DONE;
        }
    }
}
