package fourfold.commands;

import fourfold.home.Home;
import fourfold.upkeep.Backups;
import fourfold.upkeep.Verification;
import fourfold.words.SafeText;
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
        List<String> findings = Verification.of(file);
        Verification.notes(file).forEach(this::say);
        if (findings.isEmpty()) {
            say(file + ": all is well.");
            return ExitCode.DONE;
        }
        findings.forEach(f -> say(file + ": " + f));
        if (name == null) {
            say(Backups.of(file)
                    .lastGood()
                    .map(b -> "The last good backup is " + b.name() + ". To go back to it: fourfold restore")
                    .orElse("There is no backup. To save what can be read: fourfold salvage NEW-FILE"));
        }
        return ExitCode.WORLD;
    }

    private void say(String line) {
        app.world().out().println(SafeText.safe(line));
    }
}
