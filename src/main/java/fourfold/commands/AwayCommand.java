// SPDX-License-Identifier: Apache-2.0
package fourfold.commands;

import fourfold.home.Home;
import fourfold.log.AwayPractice;
import fourfold.log.ParentAction;
import fourfold.progress.DateSpan;
import fourfold.words.Words;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import picocli.CommandLine.Spec;

/** Tick off practice away from the screen: cards, a page or a game, today or on another day. */
@Command(
        name = "away",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        footer = "  fourfold away cards --child Mina")
final class AwayCommand implements Callable<Integer> {
    private static final String KINDS =
            Stream.of(AwayPractice.values()).map(AwayPractice::key).collect(Collectors.joining(", "));

    @ParentCommand
    private App app;

    @Spec
    private CommandSpec spec;

    @Parameters(arity = "1..2", paramLabel = "[${bundle:label.day}] cards|page|game", descriptionKey = "practised")
    private List<String> what = List.of();

    @Override
    public Integer call() {
        String kind = what.get(what.size() - 1);
        AwayPractice practice = Stream.of(AwayPractice.values())
                .filter(p -> p.key().equals(kind))
                .findFirst()
                .orElseThrow(() -> refused("command.settings.value", "away", KINDS, kind));
        Optional<LocalDate> named = what.size() < 2 ? Optional.empty() : Optional.of(day(what.get(0)));
        try (Home home = app.open()) {
            LocalDate day = named.orElseGet(() -> home.records().today());
            if (day.isAfter(home.records().today())) {
                throw refused("command.away.future", day);
            }
            home.steering()
                    .keep(
                            app.child(home, spec),
                            List.of(new ParentAction.Away(day, practice)),
                            home.moments().now());
            Words words = app.words(home);
            app.world()
                    .out()
                    .println(words.say("command.away.done", words.namedDate(day), words.say("away.kind." + kind)));
            return ExitCode.DONE;
        }
    }

    private LocalDate day(String text) {
        try {
            return DateSpan.parse(text).first();
        } catch (IllegalArgumentException e) {
            throw refused("command.calendar.day", text);
        }
    }

    private ParameterException refused(String key, Object... gaps) {
        return new ParameterException(spec.commandLine(), app.words().say(key, gaps));
    }
}
