package fourfold.commands;

import fourfold.home.Home;
import fourfold.upkeep.Merge;
import fourfold.words.SafeText;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import picocli.CommandLine.Spec;

/** Takes in what another computer's file holds. */
@Command(name = "merge", mixinStandardHelpOptions = true, sortOptions = false, footer = "  fourfold merge other.db")
final class MergeCommand implements Callable<Integer> {
    @ParentCommand
    private App app;

    @Spec
    private CommandSpec spec;

    @Parameters(paramLabel = "${bundle:label.other}", descriptionKey = "other")
    private String other;

    @Option(names = "--same", paramLabel = "${bundle:label.name}")
    private Set<String> same = Set.of();

    @Option(names = "--apart", paramLabel = "${bundle:label.pair}")
    private Map<String, String> apart = Map.of();

    @Option(names = "--yes")
    private boolean yes;

    @Override
    public Integer call() {
        Path from = Home.path(other);
        Path file = app.place();
        if (from.toAbsolutePath().normalize().equals(file.toAbsolutePath().normalize())) {
            throw new ParameterException(spec.commandLine(), "OTHER is the answers' file itself; name another file");
        }
        try (Home home = app.open()) {
            Instant now = home.moments().now();
            Merge.Said said = new Merge.Said(same, apart, now, home.moments().zoneOffsetMinutes(now));
            Merge preview = home.mergeFile().preview(from, said);
            tell(preview);
            if (!preview.unsettled().isEmpty()) {
                preview.unsettled().forEach(this::ask);
                return ExitCode.USAGE;
            }
            if (yes) {
                home.mergeFile()
                        .merge(from, said)
                        .ifPresent(folder ->
                                say(List.of("Merged. A backup of the file as it was before is in " + folder + ".")));
            } else {
                say(List.of("Nothing was changed. Add --yes to do it."));
            }
        }
        return ExitCode.DONE;
    }

    private void tell(Merge merge) {
        say(List.of("New in " + other + ": " + merge.children() + " children, " + merge.drills() + " drills, "
                + merge.answers() + " answers, " + merge.acts() + " changes by parents."));
        merge.leftOut()
                .forEach(name -> say(List.of(
                        "\"" + name + "\" was removed on this computer and is left out. It stays in " + other + ".")));
    }

    private void ask(Merge.Clash clash) {
        say(List.of(
                "Both files have a child called \"" + clash.name() + "\". Is it one child?",
                "  Yes: add --same \"" + clash.name() + "\"",
                "  No: add --apart \"" + clash.name() + "=NEW\" with another name for the other file's child"));
    }

    private void say(List<String> lines) {
        lines.forEach(line -> app.world().out().println(SafeText.safe(line)));
    }
}
