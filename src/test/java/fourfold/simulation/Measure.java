package fourfold.simulation;

import java.util.Locale;
import java.util.function.ToDoubleFunction;

/** The columns of the benchmark's table. */
public enum Measure {
    WEEK_6("f6", 1, o -> o.fluentAt().get(0)),
    WEEK_12("f12", 1, o -> o.fluentAt().get(1)),
    WEEK_24("f24", 1, o -> o.fluentAt().get(2)),
    WEEK_36("f36", 1, o -> o.fluentAt().get(3)),
    TO_28("min28", 0, o -> o.minutesTo().get(0)),
    TO_50("min50", 0, o -> o.minutesTo().get(1)),
    TO_55("min55", 0, o -> o.minutesTo().get(2)),
    KEPT_14("kept14", 3, o -> o.keptAfter().get(0)),
    KEPT_60("kept60", 3, o -> o.keptAfter().get(1)),
    QUOTIENTS_14("quot14", 3, Outcome::quotientsKept),
    SUCCESS("success", 3, Outcome::success),
    PER_DRILL("perDrill", 0, Outcome::perDrill),
    ON_LASTING("onLasting", 2, Outcome::onLasting);

    private final String heading;
    private final int places;

    // A function without state; the interface is only not marked so.
    @SuppressWarnings("ImmutableEnumChecker")
    private final ToDoubleFunction<Outcome> reader;

    Measure(String heading, int places, ToDoubleFunction<Outcome> reader) {
        this.heading = heading;
        this.places = places;
        this.reader = reader;
    }

    /** The column's name. */
    public String heading() {
        return heading;
    }

    /** The measure of one outcome. */
    public double of(Outcome outcome) {
        return reader.applyAsDouble(outcome);
    }

    /** A value as the table shows it. */
    String shown(double x) {
        return String.format(Locale.ROOT, "%." + places + "f", x);
    }
}
