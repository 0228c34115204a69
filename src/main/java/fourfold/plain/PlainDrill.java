// SPDX-License-Identifier: Apache-2.0
package fourfold.plain;

import fourfold.drill.Drill;
import fourfold.drill.Event;
import fourfold.drill.Phase;
import fourfold.drill.Phase.Asking;
import fourfold.drill.Step;
import fourfold.home.Environment;
import fourfold.home.Home;
import fourfold.home.Keeping;
import fourfold.insight.LifetimeProgress;
import fourfold.insight.Today;
import fourfold.log.Answer;
import fourfold.log.Child;
import fourfold.words.ClockAdvice;
import fourfold.words.SafeText;
import fourfold.words.TodayWords;
import fourfold.words.Words;
import java.io.IOException;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/** A drill in plain lines: each prompt is a line, each answer is a line. */
public final class PlainDrill {
    /** A line may be thought about for any time. */
    private static final Duration NEVER = Duration.ofDays(1_000_000);

    private final Environment world;
    private final Home home;
    private final Child child;
    private final Keeping keeping;
    private final Words language;
    private final PlainWords words;
    private boolean stopped;

    public PlainDrill(Environment world, Home home, Words words, Child child) {
        this.world = world;
        this.home = home;
        this.child = child;
        this.keeping = new Keeping(home.practice());
        this.language = words;
        this.words = new PlainWords(words);
    }

    /** Asks and reads until the drill is over, the child stops, or the input ends. */
    public void run(Drill ready) throws IOException {
        Today today = home.records().today(child, home.records().today());
        say(words.hello(child.name(), ready.session().planned(), TodayWords.forChild(language, today)));
        ClockAdvice.of(language, ready.progress(), now()).ifPresent(advice -> say(List.of(advice)));
        Drill drill = on(ready, new Event.Enter(now()));
        while (!drill.isFinished() && !stopped) {
            drill = turn(drill);
        }
        if (keeping.isBehind() && !keeping.tryNow(now())) {
            say(words.lost(keeping.answers()));
            home.practice().lost(language.lost(keeping.answers(), keeping.failure()));
            return;
        }
        if (drill.phase() instanceof Phase.Finished finished) {
            say(words.summary(finished.summary()));
            say(List.of(stairs(), words.say("plain.see", SafeText.safe(child.name()))));
        }
        home.practice()
                .ended(drill.session(), now())
                .ifPresent(failure -> say(List.of(SafeText.safe(language.failure(failure)))));
    }

    private String stairs() {
        LifetimeProgress stones = home.records().lifetime(child);
        return stones.isWhole() ? language.say("summary.whole") : words.say("plain.stairs", stones.begun());
    }

    private Drill turn(Drill drill) throws IOException {
        Phase phase = drill.phase();
        if (phase instanceof Phase.Right right) {
            say(List.of(words.right(right.answer())));
            return on(drill, new Event.Tick(right.until()));
        }
        if (phase instanceof Phase.Meeting meeting) {
            say(words.meeting(meeting));
        } else if (phase instanceof Phase.Paused paused) {
            say(List.of(words.say(paused.byItself() ? "plain.away" : "plain.pause")));
        } else if (phase instanceof Phase.HandsOff) {
            say(List.of(words.say("plain.handsoff")));
        } else if (phase instanceof Phase.OneMinute) {
            say(List.of(words.say("plain.minute")));
        } else if (phase instanceof Asking asking) {
            say(List.of(words.ask(asking)));
        }
        Drill shown = on(drill, new Event.Painted(now()));
        home.moments().sleptSince(NEVER);
        Optional<String> line = line();
        Optional<Instant> asleep = home.moments().sleptSince(NEVER);
        if (asleep.isPresent()) {
            home.moments().catchUp();
            if (shown.phase() instanceof Asking) {
                shown = interrupted(shown, asleep.get());
            }
        }
        Instant at = now();
        if (line.isEmpty() || line.get().equalsIgnoreCase("q")) {
            return on(shown, new Event.Leave(at));
        }
        return reply(shown, line.get(), at);
    }

    private Drill reply(Drill drill, String line, Instant at) throws IOException {
        if (line.equalsIgnoreCase("p")) {
            return drill.phase() instanceof Phase.Paused ? drill : on(drill, new Event.Pause(at));
        }
        if (!(drill.phase() instanceof Asking asking)) {
            return on(drill, new Event.Enter(at));
        }
        Optional<String> digits = digits(line);
        if (digits.isEmpty() || (digits.get().isEmpty() && asking.isInView())) {
            say(List.of(
                    digits.isEmpty() ? words.say("plain.digits", Answer.LONGEST_TYPED) : words.say("plain.number")));
            return drill;
        }
        return on(afterAbsence(drill, asking, at), new Event.Line(digits.get(), at));
    }

    /** Beyond the calm limit the child was probably away: the rest of that time is a pause, and the answer untimed. */
    private Drill afterAbsence(Drill drill, Asking asking, Instant at) throws IOException {
        Duration calm = drill.progress().steering().settings().calm();
        Optional<Instant> limit =
                asking.shownAt().map(shown -> shown.plus(calm)).filter(at::isAfter);
        if (limit.isEmpty()) {
            return drill;
        }
        return interrupted(drill, limit.get());
    }

    /** The question stands again as after a pause that began then: it goes on, and no time of it is kept. */
    private Drill interrupted(Drill drill, Instant since) throws IOException {
        Drill paused = on(drill, new Event.Pause(since));
        return on(on(paused, new Event.Enter(now())), new Event.Painted(now()));
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

    /** Effects first, then the state: what is said to count is kept, unless the child goes on without. */
    private Drill on(Drill drill, Event event) throws IOException {
        Step step = drill.on(event);
        boolean kept = keeping.keep(step.effects(), event.at());
        while (!kept && !keeping.isGoingOn()) {
            say(words.notKept(keeping.failure()));
            Optional<String> typed = line();
            if (typed.isEmpty() || typed.get().equalsIgnoreCase("q")) {
                stopped = true;
                keeping.goOn();
            } else if (typed.get().equalsIgnoreCase("g")) {
                keeping.goOn();
            } else {
                kept = keeping.tryNow(now());
            }
        }
        return step.next();
    }

    private Optional<String> line() throws IOException {
        return Optional.ofNullable(world.in().readLine()).map(String::strip);
    }

    private Instant now() {
        return home.moments().now();
    }

    private void say(List<String> lines) {
        lines.forEach(world.out()::println);
        // Nobody is asked what nobody can read: the reader of these lines went away.
        stopped |= world.out().checkError();
    }
}
