// SPDX-License-Identifier: Apache-2.0
package fourfold.commands;

import fourfold.home.Gate;
import fourfold.home.Home;
import fourfold.home.Pin;
import java.io.IOException;
import java.time.Instant;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ParentCommand;
import picocli.CommandLine.Spec;

/** The gate before the grown-ups' pages. */
@Command(name = "gate", mixinStandardHelpOptions = true, sortOptions = false, footer = "  fourfold gate")
final class GateCommand implements Callable<Integer> {
    @ParentCommand
    private App app;

    @Spec
    private CommandSpec spec;

    @Option(names = "--set")
    private boolean set;

    @Option(names = "--reset")
    private boolean reset;

    @Override
    public Integer call() throws IOException {
        if (set && reset) {
            throw new ParameterException(spec.commandLine(), app.words().say("command.gate.both"));
        }
        try (Home home = app.open()) {
            Gate gate = home.gate();
            if (set) {
                set(gate, home.moments().now());
            } else if (reset) {
                gate.remove();
            }
            app.world().out().println(app.words().say(gate.isSet() ? "command.gate.set" : "command.gate.open"));
            return ExitCode.DONE;
        }
    }

    private void set(Gate gate, Instant now) throws IOException {
        app.world().out().println(app.words().say("command.gate.type"));
        app.world().out().flush();
        String pin = app.world().in().readLine();
        if (pin == null || !Pin.isPossible(pin.strip())) {
            throw new ParameterException(spec.commandLine(), app.words().say("command.gate.pin"));
        }
        gate.set(pin.strip(), now);
    }
}
