package fourfold.commands;

import fourfold.home.Home;
import fourfold.store.DataPath;
import fourfold.store.Store;
import fourfold.upkeep.Backups;
import fourfold.upkeep.Merge;
import fourfold.words.SafeText;
import fourfold.words.Words;
import java.nio.file.Path;
import java.time.Instant;
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
@Command(
        name = "merge",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        description =
                "Take in the children, drills, answers and changes of another computer's file, which is only read.",
        footer = {"", "Example:", "  fourfold merge other.db"})
final class MergeCommand implements Callable<Integer> {
    @ParentCommand
    private App app;

    @Spec
    private CommandSpec spec;

    @Parameters(paramLabel = "OTHER", description = "The other computer's file, or a copy of it.")
    private String other;

    @Option(names = "--same", paramLabel = "NAME", description = "A name that means the same child in both files.")
    private Set<String> same = Set.of();

    @Option(
            names = "--apart",
            paramLabel = "NAME=NEW",
            description = "A name that means two children, and what the other file's child is to be called here.")
    private Map<String, String> apart = Map.of();

    @Option(names = "--yes", description = "Do it. Without this, only say what would be done.")
    private boolean yes;

    @Override
    public Integer call() {
        Path from = DataPath.of(other);
        Path file = app.place();
        if (from.toAbsolutePath().normalize().equals(file.toAbsolutePath().normalize())) {
            throw new ParameterException(spec.commandLine(), words().say("command.merge.self"));
        }
        try (Home home = app.open()) {
            Instant now = home.moments().now();
            Merge.Said said = new Merge.Said(same, apart, now, home.moments().zoneOffsetMinutes(now));
            Merge preview = Merge.preview(home.store(), from, said);
            tell(preview);
            if (!preview.unsettled().isEmpty()) {
                preview.unsettled().forEach(this::ask);
                return ExitCode.USAGE;
            }
            if (yes) {
                merge(home.store(), from, said, file);
            } else {
                say(words().say("command.merge.unchanged"));
            }
        }
        return ExitCode.DONE;
    }

    private void merge(Store store, Path from, Merge.Said said, Path file) {
        Backups.of(file).named("before-merge");
        Merge.of(store, from, said);
        say(words().say("command.merge.done", Backups.of(file).folder()));
    }

    private void tell(Merge merge) {
        Words words = words();
        say(words.say(
                "command.merge.new",
                other,
                words.counted("count.children", merge.children(), merge.children()),
                words.counted("count.drills", merge.drills(), merge.drills()),
                words.counted("count.answers", merge.answers(), merge.answers()),
                words.counted("count.changes", merge.acts(), merge.acts())));
        merge.leftOut().forEach(name -> say(words.say("command.merge.leftout", name, other)));
    }

    private void ask(Merge.Clash clash) {
        say(words().say("command.merge.clash", clash.name()));
        say("  " + words().say("command.merge.clash.same", clash.name()));
        say("  " + words().say("command.merge.clash.apart", clash.name()));
    }

    private Words words() {
        return app.world().words();
    }

    private void say(String line) {
        app.world().out().println(SafeText.safe(line));
    }
}
