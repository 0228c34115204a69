// SPDX-License-Identifier: Apache-2.0
package fourfold.commands;

import fourfold.drill.Drill;
import fourfold.home.Home;
import fourfold.log.Child;
import fourfold.log.Surface;
import fourfold.plain.PlainDrill;
import fourfold.progress.Progress;
import fourfold.screens.child.DrillPage;
import fourfold.terminal.TerminalException;
import fourfold.terminal.TerminalSession;
import java.io.IOException;
import java.time.Instant;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParentCommand;
import picocli.CommandLine.Spec;

/** Begins a drill at once. */
@Command(
        name = "drill",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        footer = "  fourfold drill --child Mina --plain")
final class DrillCommand implements Callable<Integer> {
    @ParentCommand
    private App app;

    @Spec
    private CommandSpec spec;

    @Option(names = "--minutes", paramLabel = "${bundle:label.number}", converter = Minutes.class)
    private @Nullable Integer minutes;

    @Option(names = "--plain")
    private boolean plain;

    @Override
    public Integer call() throws IOException, TerminalException {
        try (Home home = app.open()) {
            Child whose = app.child(home, spec);
            app.meetOthers(home);
            Progress progress = home.records().progress(whose);
            int length = minutes == null ? progress.steering().settings().minutes() : minutes;
            Instant now = home.moments().now();
            if (plain || app.isDumb()) {
                Drill drill = drill(home, whose, progress, length, now, Surface.PLAIN);
                new PlainDrill(app.world(), home, app.words(home), whose).run(drill);
                return app.reportLosses(home);
            }
            try (TerminalSession stage = home.stage(app.world())) {
                Drill drill = drill(home, whose, progress, length, now, stage.surface());
                app.loop(home, stage, new DrillPage(app.words(home), whose, drill, now).greeting())
                        .run();
                home.rememberWindow(stage);
            }
            return app.reportLosses(home);
        }
    }

    private Drill drill(Home home, Child whose, Progress progress, int length, Instant at, Surface surface) {
        return Drill.ready(
                progress,
                home.practice().newSession(whose, length, at).orElseThrow(() -> new PractisingElsewhere(whose)),
                app.world().scheduler(),
                surface);
    }

    /** Reads the minutes, 1 to 30. */
    static final class Minutes implements ITypeConverter<Integer> {
        @Override
        public Integer convert(String text) {
            if (!text.matches("0*([1-9]|[12][0-9]|30)")) {
                throw new WrongValue("usage.minutes", text);
            }
            return Integer.valueOf(text);
        }
    }
}
