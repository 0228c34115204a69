package fourfold.drill;

import fourfold.drill.Phase.Asking;
import fourfold.facts.Answer;
import fourfold.facts.Sitting;
import fourfold.facts.Surface;
import fourfold.progress.DrillSoFar;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Optional;

/** How what was typed becomes an answer: its place in the drill, and times only where they mean something. */
final class Answering {
    private Answering() {}

    static Answer answer(Asking asking, Instant at, DrillSoFar drill, Surface surface) {
        Instant shown = asking.shownAt().orElseThrow().truncatedTo(ChronoUnit.MILLIS);
        Optional<Duration> whole = asking.interrupted()
                ? Optional.empty()
                : asking.shownAt().map(s -> Drill.atLeastZero(Duration.between(s, at)));
        Sitting sitting = drill.sitting();
        return new Answer(
                sitting.child(),
                sitting.id(),
                drill.size() + 1,
                shown,
                sitting.zoneOffsetMinutes(),
                asking.purpose(),
                asking.prompt(),
                asking.typed(),
                asking.firstKey(),
                whole,
                asking.erasures(),
                surface);
    }
}
