// SPDX-License-Identifier: Apache-2.0
package fourfold.commands;

import fourfold.drill.Drill;
import fourfold.home.Environment;
import fourfold.home.Home;
import fourfold.log.Child;
import fourfold.log.ChildName;
import fourfold.log.InvalidValue;
import fourfold.log.Surface;
import fourfold.plain.PlainDrill;
import fourfold.progress.Progress;
import fourfold.words.SafeText;
import fourfold.words.Words;
import java.io.IOException;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/** The program where the terminal can't draw: who practises is asked in plain lines, and the drill goes on in them. */
final class PlainStart {
    private final Home home;
    private final Environment world;
    private final Words words;

    PlainStart(App app, Home home) {
        this.home = home;
        this.world = app.world();
        this.words = app.words(home);
    }

    /** Asks, and runs a drill of the child's usual length; nothing if the input ends before a child is chosen. */
    void run() throws IOException {
        Optional<Child> chosen = Optional.empty();
        boolean ended = false;
        while (chosen.isEmpty() && !ended) {
            List<Child> children = home.children().list();
            ask(children);
            String line = world.in().readLine();
            ended = line == null;
            chosen = line == null ? Optional.empty() : answered(children, line.strip());
        }
        if (chosen.isPresent()) {
            drill(chosen.get());
        }
    }

    private void ask(List<Child> children) {
        if (children.isEmpty()) {
            world.out().println(words.say("name.question"));
        } else {
            world.out().println(words.say("home.who"));
            for (int i = 0; i < children.size(); i++) {
                world.out()
                        .println((i + 1) + " " + SafeText.safe(children.get(i).name()));
            }
        }
        world.out().flush();
    }

    private Optional<Child> answered(List<Child> children, String line) {
        if (children.isEmpty()) {
            return added(line);
        }
        Optional<Child> numbered = line.matches("[0-9]{1,3}")
                ? children.stream()
                        .skip(Math.max(0, Integer.parseInt(line) - 1L))
                        .findFirst()
                : Optional.empty();
        return numbered.or(() -> home.children().named(Optional.of(line)).only());
    }

    private Optional<Child> added(String name) {
        try {
            ChildName.chosen(name);
            return Optional.of(home.children().add(name, home.moments().now()));
        } catch (InvalidValue e) {
            world.out().println(words.problem(e.problem()));
            return Optional.empty();
        }
    }

    private void drill(Child whose) throws IOException {
        Progress progress = home.records().progress(whose);
        Instant now = home.moments().now();
        Drill drill = Drill.ready(
                progress,
                home.practice()
                        .newSession(whose, progress.steering().settings().minutes(), now)
                        .orElseThrow(() -> new PractisingElsewhere(whose)),
                world.scheduler(),
                Surface.PLAIN);
        new PlainDrill(world, home, words, whose).run(drill);
    }
}
