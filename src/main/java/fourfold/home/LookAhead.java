package fourfold.home;

import fourfold.insight.PageContent;
import fourfold.log.Child;
import fourfold.log.RecordsFailure;
import fourfold.outlook.Outlook;
import fourfold.outlook.Projection;
import fourfold.progress.Progress;
import fourfold.store.Store;
import fourfold.terminal.SessionClock;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** When all families may be fluent: plays the rest of the way, and remembers what that came to for a printed page. */
public final class LookAhead {
    private static final String NONE = "-";

    private final Store store;
    private final SessionClock moments;

    LookAhead(Store store, SessionClock moments) {
        this.store = store;
        this.moments = moments;
    }

    /**
     * A look ahead in which nothing was played yet.
     *
     * @param daysAWeek on how many days a week there is practice
     */
    public Outlook from(Progress progress, double daysAWeek, Instant at) {
        return new Outlook(progress, at, daysAWeek, progress.answers());
    }

    /**
     * Remembers what the last look ahead came to, so that a printed page can show it.
     *
     * @throws RecordsFailure if the file does not take it
     */
    public void remember(Child child, Projection projection, Instant at) {
        String text = Stream.of(
                        Optional.of(LocalDate.ofInstant(at, moments.zone())),
                        projection.early(),
                        projection.middle(),
                        projection.late())
                .map(day -> day.map(LocalDate::toString).orElse(NONE))
                .collect(Collectors.joining(" "));
        store.keepHomeSetting(name(child), text);
    }

    /** The last look ahead; empty if there was none. */
    public Optional<PageContent.Forecast> remembered(Child child) {
        return store.homeSetting(name(child))
                .map(text -> text.split(" "))
                .filter(days -> days.length == 4)
                .map(days ->
                        new PageContent.Forecast(LocalDate.parse(days[0]), day(days[1]), day(days[2]), day(days[3])));
    }

    private static Optional<LocalDate> day(String text) {
        return text.equals(NONE) ? Optional.empty() : Optional.of(LocalDate.parse(text));
    }

    private static String name(Child child) {
        return "ahead" + child.id().toString().replace("-", "");
    }
}
