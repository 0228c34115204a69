// SPDX-License-Identifier: Apache-2.0
package fourfold.commands;

import fourfold.home.Home;
import fourfold.log.Problem;
import fourfold.log.Reason;
import fourfold.upkeep.Backups;
import fourfold.upkeep.Verification;
import fourfold.words.SafeText;
import fourfold.words.Words;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;

/** Looks into every corner of a file. */
@Command(name = "verify", mixinStandardHelpOptions = true, sortOptions = false, footer = "  fourfold verify")
final class VerifyCommand implements Callable<Integer> {
    @ParentCommand
    private App app;

    @Parameters(arity = "0..1", paramLabel = "${bundle:label.file}", descriptionKey = "file")
    private @Nullable String name;

    @Override
    public Integer call() {
        Path file = name == null ? app.place() : Home.path(name);
        Words words = app.words();
        List<Problem> findings = LongWork.of(app, advance -> Verification.of(file, advance));
        Verification.notes(file).forEach(note -> say(words.problem(note)));
        if (findings.isEmpty()) {
            say(words.say("command.verify.well", file));
            return ExitCode.DONE;
        }
        findings.forEach(f -> say(file + ": " + words.problem(f)));
        // A write that was cut short is completed by the next start: nothing is to be restored or salvaged.
        boolean startCompletes = findings.stream().allMatch(f -> f.reason() == Reason.WRITE_CUT_SHORT);
        if (name == null && !startCompletes) {
            say(Backups.of(file)
                    .lastGood()
                    .map(b -> words.say("command.verify.backup", b.name()))
                    .orElseGet(() -> words.say("command.verify.nobackup")));
        }
        return ExitCode.WORLD;
    }

    private void say(String line) {
        app.world().out().println(SafeText.safe(line));
    }
}
