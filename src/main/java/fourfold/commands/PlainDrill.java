package fourfold.commands;

import fourfold.drill.Drill;
import fourfold.drill.Effect;
import fourfold.drill.Event;
import fourfold.drill.Phase;
import fourfold.drill.Phase.Asking;
import fourfold.drill.Step;
import fourfold.drill.Summary;
import fourfold.export.PlainText;
import fourfold.facts.Answer;
import fourfold.facts.Child;
import fourfold.facts.Fact;
import fourfold.facts.Question;
import java.io.IOException;
import java.time.Instant;
import java.util.Optional;

/** A drill in plain lines: each prompt is a line, each answer is a line. */
final class PlainDrill {
    private final World world;
    private final Home home;
    private final Child child;

    PlainDrill(World world, Home home, Child child) {
        this.world = world;
        this.home = home;
        this.child = child;
    }

    void run(Drill ready) throws IOException {
        say("Hello " + PlainText.safe(child.name()) + ". Type each answer and press Enter.");
        say("An empty line shows the answer. p pauses. q stops.");
        Drill drill = on(ready, new Event.Enter(now()));
        while (!drill.isFinished()) {
            drill = turn(drill);
        }
        summary(((Phase.Finished) drill.phase()).summary());
    }

    private Drill turn(Drill drill) throws IOException {
        Phase phase = drill.phase();
        if (phase instanceof Phase.Right right) {
            say("Right.");
            return on(drill, new Event.Tick(right.until()));
        }
        if (phase instanceof Phase.Meeting meeting) {
            say("A new family:");
            meeting.family().facts().forEach(f -> say("  " + written(f)));
            say("Press Enter to go on.");
        } else if (phase instanceof Phase.Paused) {
            say("Pause. Press Enter to go on, or q to stop.");
        } else if (phase instanceof Asking asking) {
            ask(asking);
        }
        Drill shown = on(drill, new Event.Painted(now()));
        Optional<String> line = Optional.ofNullable(world.in().readLine());
        Instant at = now();
        if (line.isEmpty() || line.get().strip().equalsIgnoreCase("q")) {
            return on(shown, new Event.Leave(at));
        }
        return reply(shown, line.get().strip(), at);
    }

    private Drill reply(Drill drill, String line, Instant at) {
        if (line.equalsIgnoreCase("p")) {
            return drill.phase() instanceof Phase.Paused ? drill : on(drill, new Event.Pause(at));
        }
        if (!(drill.phase() instanceof Asking asking)) {
            return on(drill, new Event.Enter(at));
        }
        Optional<String> digits = digits(line);
        if (digits.isEmpty() || (digits.get().isEmpty() && asking.isInView())) {
            say("Please type a number of up to " + Answer.LONGEST_TYPED + " digits.");
            return drill;
        }
        return on(drill, new Event.Line(digits.get(), at));
    }

    /** Digits of any script as ASCII digits; empty if something else was typed. */
    private static Optional<String> digits(String line) {
        StringBuilder digits = new StringBuilder();
        for (int c : line.codePoints().toArray()) {
            int digit = Character.digit(c, 10);
            if (digit < 0) {
                return Optional.empty();
            }
            digits.append(digit);
        }
        return digits.length() > Answer.LONGEST_TYPED ? Optional.empty() : Optional.of(digits.toString());
    }

    private void ask(Asking asking) {
        String why = switch (asking.reason()) {
            case WARMING_UP -> "Type this number: ";
            case MEETING -> "Type what it comes to. ";
            case PUTTING_RIGHT -> "It goes like this. Type it once. ";
            case SHOWN -> "Here it is. Type it once. ";
            case RECALL -> "";
        };
        if (asking.prompt() instanceof Question question) {
            say(why + (asking.isInView() ? written(question.fact()) : sign(question.toString()) + " ="));
        } else {
            say(why + asking.prompt().expected());
        }
    }

    private void summary(Summary summary) {
        say("You practised " + summary.practised().plusSeconds(30).toMinutes() + " minutes. " + summary.right() + " of "
                + summary.asked() + " answers came right from memory.");
        say("Everything is kept. See you next time.");
    }

    private String written(Fact fact) {
        return sign(fact.toString());
    }

    private String sign(String text) {
        return world.unicode() ? text : text.replace('×', 'x').replace('÷', '/');
    }

    private Drill on(Drill drill, Event event) {
        Step step = drill.on(event);
        for (Effect effect : step.effects()) {
            if (effect instanceof Effect.Begin begin) {
                home.records().begin(begin.sitting());
            } else if (effect instanceof Effect.Keep keep) {
                home.records().keep(keep.answer());
            }
        }
        return step.next();
    }

    private Instant now() {
        return home.moments().now();
    }

    private void say(String line) {
        world.out().println(line);
        world.out().flush();
    }
}
