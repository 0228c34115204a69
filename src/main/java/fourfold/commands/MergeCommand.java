// SPDX-License-Identifier: Apache-2.0
package fourfold.commands;

import fourfold.home.Home;
import fourfold.upkeep.Merge;
import fourfold.upkeep.RowCounts.Kind;
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

    @Option(names = "--bring-back", paramLabel = "${bundle:label.name}")
    private Set<String> back = Set.of();

    @Option(names = "--yes")
    private boolean yes;

    @Override
    public Integer call() {
        Path from = Home.path(other);
        Path file = app.place();
        if (from.toAbsolutePath().normalize().equals(file.toAbsolutePath().normalize())) {
            throw new ParameterException(spec.commandLine(), words().say("command.merge.self"));
        }
        try (Home home = app.open()) {
            Instant now = home.moments().now();
            Merge.Said said =
                    new Merge.Said(same, apart, back, now, home.moments().zoneOffsetMinutes(now));
            Merge preview = LongWork.of(app, advance -> home.mergeFile().preview(from, said, advance));
            print(preview);
            if (!preview.unsettled().isEmpty()) {
                preview.unsettled().forEach(this::ask);
                return ExitCode.USAGE;
            }
            if (yes) {
                LongWork.of(app, () -> home.mergeFile().merge(from, said))
                        .ifPresent(folder -> say(words().say("command.merge.done", folder)));
            } else {
                say(words().say("command.merge.unchanged"));
            }
        }
        return ExitCode.DONE;
    }

    private void print(Merge merge) {
        Words words = words();
        say(words.say(
                "command.merge.new",
                other,
                words.counted(
                        "count.children",
                        merge.came().of(Kind.CHILD),
                        merge.came().of(Kind.CHILD)),
                words.counted(
                        "count.drills",
                        merge.came().of(Kind.DRILL),
                        merge.came().of(Kind.DRILL)),
                words.counted(
                        "count.answers",
                        merge.came().of(Kind.ANSWER),
                        merge.came().of(Kind.ANSWER)),
                words.counted(
                        "count.changes",
                        merge.came().of(Kind.ACTION),
                        merge.came().of(Kind.ACTION))));
        merge.removed().forEach(name -> say(words.say("command.merge.removed", name, other)));
        merge.leftOut().forEach(name -> say(words.say("command.merge.leftout", name, other)));
    }

    private void ask(Merge.Clash clash) {
        say(words().say("command.merge.clash", clash.name()));
        say("  " + words().say("command.merge.clash.same", clash.name()));
        say("  " + words().say("command.merge.clash.apart", clash.name()));
    }

    private Words words() {
        return app.words();
    }

    private void say(String line) {
        app.world().out().println(SafeText.safe(line));
    }
}
