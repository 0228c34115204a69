// SPDX-License-Identifier: Apache-2.0
package fourfold.store;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** A main class of the tests as a program of its own, which can be killed. */
final class OwnProcess {
    private OwnProcess() {}

    /** The program, ready to be started; what it complains of is seen in the test's own output. */
    static ProcessBuilder of(Class<?> main, String... arguments) {
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:TieredStopAtLevel=1",
                "-XX:+UseSerialGC",
                "-cp",
                System.getProperty("java.class.path"),
                main.getName()));
        command.addAll(List.of(arguments));
        return new ProcessBuilder(command).redirectError(ProcessBuilder.Redirect.INHERIT);
    }
}
