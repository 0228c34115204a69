// SPDX-License-Identifier: Apache-2.0
package fourfold.home;

import fourfold.insight.PageContent;
import fourfold.insight.SchoolYears;
import fourfold.insight.Weeks;
import fourfold.log.ActionRecord;
import fourfold.log.Answer;
import fourfold.log.Child;
import fourfold.log.DrillSession;
import fourfold.log.RecordsFailure;
import fourfold.outlook.Basis;
import fourfold.outlook.PracticeDays;
import fourfold.outlook.Projection;
import fourfold.outlook.YearAhead;
import fourfold.progress.Steering;
import fourfold.store.Store;
import fourfold.terminal.SessionClock;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** When all families may be fluent: plays the rest of the way, and remembers what that came to for a printed page. */
public final class LookAhead {
    private static final String NONE = "-";

    /** How far apart the earlier days are whose forecasts are held against what came, and how far back they go. */
    private static final int WEEKS_BETWEEN = 4;

    private static final int EARLIEST_WEEKS = 12;

    private final Store store;
    private final SessionClock moments;
    private final PracticeRecords records;

    LookAhead(Store store, SessionClock moments, PracticeRecords records) {
        this.store = store;
        this.moments = moments;
        this.records = records;
    }

    /**
     * A look ahead in which nothing was played yet; the same whenever it is asked for on one day, unless the parent changes
     * something. Reads all answers.
     *
     * @param runs how often each way is played through, 1 or more; {@link fourfold.outlook.Outlook#RUNS} usually
     * @throws RecordsFailure if the file can't be read
     */
    public YearAhead begin(Child child, Instant at, int runs) {
        List<Answer> answers = new ArrayList<>();
        records.read(child, answers::add);
        List<ActionRecord> actions = records.actions(child);
        List<DrillSession> drills = records.sessions(child);
        LocalDate date = LocalDate.ofInstant(at, moments.zone());
        long today = date.toEpochDay();
        Steering steering = Steering.of(actions);
        int planned = steering.settings().days();
        LocalDate end = SchoolYears.end(steering.calendar(), drills, date);
        Set<Long> off = date.datesUntil(end.plusDays(1))
                .filter(steering.calendar()::isOff)
                .map(LocalDate::toEpochDay)
                .collect(Collectors.toSet());
        Map<Long, PracticeDays> practised = new HashMap<>();
        for (int weeks = 0; weeks <= EARLIEST_WEEKS; weeks += WEEKS_BETWEEN) {
            long day = today - 7L * weeks;
            // On the evening before, since the forecast rests on what was known that morning.
            practised.put(
                    day, new PracticeDays(Weeks.of(drills, day - 1, planned).usualDays(), weeks == 0 ? off : Set.of()));
        }
        return YearAhead.of(new Basis(child.id(), actions, answers, today, end.toEpochDay(), practised, runs));
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
                        projection.late(),
                        Optional.of(projection.until()))
                .map(day -> day.map(LocalDate::toString).orElse(NONE))
                .collect(Collectors.joining(" "));
        store.keepHomeSetting(name(child), text);
    }

    /** The last look ahead; empty if there was none. */
    public Optional<PageContent.Forecast> remembered(Child child) {
        return store.homeSetting(name(child))
                .map(text -> text.split(" "))
                .filter(days -> days.length == 5)
                .map(days -> new PageContent.Forecast(
                        LocalDate.parse(days[0]), day(days[1]), day(days[2]), day(days[3]), LocalDate.parse(days[4])));
    }

    private static Optional<LocalDate> day(String text) {
        return text.equals(NONE) ? Optional.empty() : Optional.of(LocalDate.parse(text));
    }

    private static String name(Child child) {
        return "ahead" + child.id().toString().replace("-", "");
    }
}
