// SPDX-License-Identifier: Apache-2.0
package fourfold.commands;

import static org.junit.jupiter.api.Assertions.assertEquals;

import fourfold.screens.DigitReader;
import fourfold.terminal.PtyProgram;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;

/** Guards against a packaged program that stands still while another program holds its file. */
@Execution(ExecutionMode.CONCURRENT)
class HeldFileEndToEnd {
    @TempDir
    private Path folder;

    @Test
    void keysAreAnsweredWhileTheFileIsHeldAndTheAnswerCountsWhenItIsLetGo() {
        Path file = Practised.children(folder, "Mina");
        List<String> command = PackagedProgramEndToEnd.fourfold("drill", "--minutes", "5");
        try (PtyProgram program = PtyProgram.start(Map.of("FOURFOLD_STORE", file.toString()), 80, 24, command)) {
            program.awaitText("Type each answer");
            program.type("\r");
            program.awaitThat(
                    "a number stands there",
                    () -> DigitReader.read(program.text())
                            .filter(shown -> shown.matches("[0-9]+"))
                            .isPresent());
            String number = DigitReader.read(program.text()).orElseThrow();
            try (Holder other = Holder.writing(file)) {
                program.type(number);
                program.awaitText("Enter ready");
                program.type("\r");
                program.awaitText("One moment.");
                program.type("7");
                program.awaitText("One moment..");
                assertEquals(List.of(), Rows.column(file, "SELECT typed FROM answer_log"));
                other.letGo();
            }
            program.awaitThat("it goes on", () -> !program.text().contains("One moment"));
            program.type("\u0003");
            assertEquals(0, program.exitCode());
            assertEquals(List.of(number), Rows.column(file, "SELECT typed FROM answer_log"));
        }
    }
}
