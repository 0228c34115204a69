// SPDX-License-Identifier: Apache-2.0
package fourfold.commands;

import fourfold.plain.Signs;
import fourfold.plain.Spoken;
import fourfold.words.TeachingNotes;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;

/** Prints how to teach a table. */
@Command(name = "note", mixinStandardHelpOptions = true, sortOptions = false, footer = "  fourfold note 7")
final class NoteCommand implements Callable<Integer> {
    @ParentCommand
    private App app;

    @Parameters(
            paramLabel = "${bundle:label.table}",
            converter = FamilyArgument.TableReader.class,
            descriptionKey = "table")
    private int table;

    @Option(names = "--plain", descriptionKey = "plain")
    private boolean plain;

    @Override
    public Integer call() {
        TeachingNotes.of(app.words(), table).stream()
                .filter(line -> !plain || !line.isBlank())
                .map(line -> plain ? Spoken.heard(app.words(), line) : line)
                .forEach(line -> app.world()
                        .out()
                        .println(Signs.printable(line, app.world().unicode())));
        return ExitCode.DONE;
    }
}
