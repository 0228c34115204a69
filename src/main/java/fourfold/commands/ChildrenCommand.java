// SPDX-License-Identifier: Apache-2.0
package fourfold.commands;

import fourfold.home.ChildRegister;
import fourfold.home.Home;
import fourfold.log.Child;
import fourfold.log.ChildName;
import fourfold.log.InvalidValue;
import fourfold.words.SafeText;
import java.time.Instant;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ParentCommand;
import picocli.CommandLine.Spec;

/** Lists the children; adds, renames, puts away, brings back or removes one. */
@Command(
        name = "children",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        footer = "  fourfold children --add Juno")
final class ChildrenCommand implements Callable<Integer> {
    @ParentCommand
    private App app;

    @Spec
    private CommandSpec spec;

    @Option(names = "--add", paramLabel = "${bundle:label.name}")
    private @Nullable String added;

    @Option(names = "--rename", paramLabel = "${bundle:label.new}")
    private @Nullable String renamed;

    @Option(names = "--archive", paramLabel = "${bundle:label.name}")
    private @Nullable String archived;

    @Option(names = "--return", paramLabel = "${bundle:label.name}")
    private @Nullable String returned;

    @Option(names = "--remove", paramLabel = "${bundle:label.name}")
    private @Nullable String removed;

    @Option(names = "--yes")
    private boolean yes;

    @Override
    public Integer call() {
        try (Home home = app.open()) {
            if (added != null) {
                add(home, added);
            }
            change(home);
            if (app.child().isPresent()) {
                print(app.child(home, spec).name());
            } else {
                home.children()
                        .all()
                        .forEach(k -> print(
                                k.away()
                                        ? app.words()
                                                .say(
                                                        "command.children.away",
                                                        k.child().name())
                                        : k.child().name()));
            }
            return ExitCode.DONE;
        }
    }

    private void print(String line) {
        app.world().out().println(SafeText.safe(line));
    }

    private void change(Home home) {
        Instant now = home.moments().now();
        if (renamed != null) {
            check(renamed);
            home.children().rename(app.child(home, spec), renamed, now);
        }
        if (archived != null) {
            home.children().putAway(any(home, archived), now);
        }
        if (returned != null) {
            home.children().bringBack(any(home, returned), now);
        }
        if (removed != null) {
            remove(home, any(home, removed), now);
        }
    }

    private void remove(Home home, Child child, Instant now) {
        if (!yes) {
            throw new ParameterException(spec.commandLine(), app.words().say("command.children.remove", child.name()));
        }
        ChildRegister.Removal removal = home.children().remove(child, now);
        if (!removal.done()) {
            throw new PractisingElsewhere(child);
        }
        removal.backup()
                .ifPresent(backup -> app.world()
                        .out()
                        .println(app.words().say("command.children.backup", SafeText.safe(child.name()), backup)));
    }

    /** The child of that name, put away or not. */
    private Child any(Home home, String name) {
        return home.children().namedAmongAll(name).fitting().stream()
                .findFirst()
                .orElseThrow(() -> new ParameterException(
                        spec.commandLine(), app.words().say("usage.child.unknown", SafeText.safe(name))));
    }

    private void check(String name) {
        try {
            ChildName.chosen(name);
        } catch (InvalidValue e) {
            throw new ParameterException(spec.commandLine(), app.words().problem(e.problem()), e);
        }
    }

    private void add(Home home, String name) {
        check(name);
        home.children().add(name, home.moments().now());
    }
}
