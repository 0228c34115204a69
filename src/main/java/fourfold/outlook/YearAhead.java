// SPDX-License-Identifier: Apache-2.0
package fourfold.outlook;

import fourfold.facts.Families;
import fourfold.facts.Family;
import fourfold.log.ParentAction;
import fourfold.progress.Mastery;
import fourfold.progress.Progress;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * A look ahead in the making, a value: when all families may be fluent within the school year; if they may not, which changes
 * would bring that within reach, each played through and none guessed; and what earlier days foretold for today. Each
 * {@link #step} plays one run more, which takes some tenths of a second.
 */
public final class YearAhead {
    private final Basis basis;
    private final Progress progress;
    private final List<Play> plays;
    private final List<Change> untried;
    private final List<Long> earlierDays;

    private YearAhead(
            Basis basis, Progress progress, List<Play> plays, Collection<Change> untried, Collection<Long> earlier) {
        this.basis = basis;
        this.progress = progress;
        this.plays = List.copyOf(plays);
        this.untried = List.copyOf(untried);
        this.earlierDays = List.copyOf(earlier);
    }

    /** A look ahead of which nothing was played yet. */
    public static YearAhead of(Basis basis) {
        Progress progress = basis.onTheMorningOf(basis.today(), List.of());
        List<Long> earlier = basis.practised().keySet().stream()
                .filter(day -> day < basis.today())
                .sorted(Comparator.reverseOrder())
                .toList();
        YearAhead begun = new YearAhead(basis, progress, List.of(), List.of(), earlier);
        return begun.isPossible() ? begun.with(begun.play(Optional.empty()), List.of(), earlier) : begun;
    }

    /** Whether there were answers enough by this morning to guess from. */
    public boolean isPossible() {
        return Outlook.isPossible(progress);
    }

    /** Whether all families were fluent this morning. */
    public boolean isThere() {
        return progress.families(Mastery.FLUENT) == Families.COUNT;
    }

    /** Planned length of a drill in it, in minutes. */
    public int minutes() {
        return progress.steering().settings().minutes();
    }

    /** Answers until this morning. */
    public long answers() {
        return progress.answers();
    }

    /** With one run more; the same once it is done. */
    public YearAhead step() {
        if (plays.isEmpty()) {
            return this;
        }
        Play last = plays.get(plays.size() - 1);
        if (!last.isDone()) {
            List<Play> more = new ArrayList<>(plays.subList(0, plays.size() - 1));
            more.add(last.step());
            return new YearAhead(basis, progress, more, untried, earlierDays);
        }
        return next(last);
    }

    /** The next question, if there is one. */
    private YearAhead next(Play last) {
        boolean first = plays.size() == 1 && untried.isEmpty() && !last.isClosed();
        List<Change> left = new ArrayList<>(
                first ? Change.toTry(progress, days(basis.today()).aWeek()) : untried);
        left.removeIf(change ->
                last.isClosed() && last.change().filter(change::isLike).isPresent());
        if (!left.isEmpty()) {
            Change change = left.remove(0);
            return with(play(Optional.of(change)), left, earlierDays);
        }
        if (earlierDays.isEmpty()) {
            // What need not be tried any more is done with, or this would never be.
            return new YearAhead(basis, progress, plays, left, earlierDays);
        }
        List<Long> rest = earlierDays.subList(1, earlierDays.size());
        return earlier(earlierDays.get(0))
                .map(play -> with(play, left, rest))
                .orElseGet(() -> new YearAhead(basis, progress, plays, left, rest));
    }

    private YearAhead with(Play more, List<Change> left, List<Long> earlier) {
        List<Play> all = new ArrayList<>(plays);
        all.add(more);
        return new YearAhead(basis, progress, all, left, earlier);
    }

    private PracticeDays days(long day) {
        return basis.practised().getOrDefault(day, PracticeDays.aWeek(1));
    }

    private Play play(Optional<Change> change) {
        PracticeDays days = days(basis.today());
        Set<Family> goal = new HashSet<>(Families.all());
        List<ParentAction> actions = change.map(c -> c.actions(progress)).orElse(List.of());
        if (change.isPresent() && change.get() instanceof Change.MoreDays more) {
            days = days.with(more.aWeek());
        } else if (change.isPresent() && change.get() instanceof Change.FewerTables fewer) {
            goal.removeAll(fewer.families());
        }
        Progress from = actions.isEmpty() ? progress : basis.onTheMorningOf(basis.today(), actions);
        long until = Math.max(basis.today(), basis.yearEnd());
        Outlook outlook = new Outlook(from, basis.today(), until, days, goal, basis.seed(basis.today()));
        return new Play(change, outlook, false, basis.runs(), List.of());
    }

    private Optional<Play> earlier(long day) {
        Progress then = basis.onTheMorningOf(day, List.of());
        Outlook outlook =
                new Outlook(then, day, basis.today() - 1, days(day), new HashSet<>(Families.all()), basis.seed(day));
        return Optional.of(new Play(Optional.empty(), outlook, true, basis.runs(), List.of()))
                .filter(play -> Outlook.isPossible(then));
    }

    /** Whether everything is played. */
    public boolean isDone() {
        return plays.isEmpty() || (untried.isEmpty() && earlierDays.isEmpty() && last().isDone() && !isOnlyOpen());
    }

    private Play last() {
        return plays.get(plays.size() - 1);
    }

    /** Whether the first question is answered with no, and no change was tried yet. */
    private boolean isOnlyOpen() {
        return plays.size() == 1 && !last().isClosed();
    }

    /** How many runs of the first question were played. */
    public int played() {
        return plays.isEmpty() ? 0 : plays.get(0).runs().size();
    }

    /** When all may be fluent as things are; empty until that is played. */
    public Optional<Projection> projection() {
        return plays.stream()
                .limit(1)
                .filter(Play::isDone)
                .map(Play::projection)
                .findFirst();
    }

    /** The changes known so far to bring it within reach, the smallest of each kind. */
    public List<Within> within() {
        return plays.stream()
                .filter(Play::isClosed)
                .flatMap(p -> p.change().map(c -> new Within(c, p.projection())).stream())
                .toList();
    }

    /** What earlier days foretold for today, as far as it is played, the latest of them first. */
    public List<EarlierForecast> earlier() {
        int came = (int) progress.families(Mastery.FLUENT);
        return plays.stream()
                .filter(p -> p.toTheEnd() && p.isDone())
                .map(p -> earlier(p, came))
                .toList();
    }

    private static EarlierForecast earlier(Play play, int came) {
        long[] sorted =
                play.runs().stream().mapToLong(Outlook.Run::fluent).sorted().toArray();
        return new EarlierForecast(
                LocalDate.ofEpochDay(play.outlook().from()),
                (int) Outlook.smallest(sorted, 0.1),
                (int) Outlook.smallest(sorted, 0.9),
                came);
    }
}
