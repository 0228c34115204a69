package fourfold.scheduling;

import fourfold.facts.Families;
import fourfold.facts.Family;
import fourfold.facts.Operation;
import fourfold.facts.Question;
import fourfold.facts.Trace;
import fourfold.log.Answer;
import fourfold.log.Purpose;
import fourfold.progress.DrillSoFar;
import fourfold.progress.FactMastery;
import fourfold.progress.Mastery;
import fourfold.progress.Progress;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Passes a policy's turns on and writes down beside each what stood at that moment, reckoned from the answers and the
 * standings alone, apart from the policy's own books.
 */
final class Onlooker implements Scheduler {
    private static final Duration NO_MORE_PRODUCTS = Duration.ofSeconds(20);
    /** For so many questions a drill's forecasts are written down. */
    static final int EASY_START = 8;

    private static final long LONGEST_GAP = 30;
    private static final long LONGEST_GAP_OF_LASTING = 60;

    private final Scheduler policy;
    private final List<Seen> seen = new ArrayList<>();

    Onlooker(Scheduler policy) {
        this.policy = policy;
    }

    /** All turns so far. */
    List<Seen> seen() {
        return seen;
    }

    /**
     * A turn.
     *
     * @param turn what is asked
     * @param turns how many questions from memory came before it in its drill
     * @param ending whether the planned time was over
     * @param owed whether it undoes a product of this drill that no division has followed yet
     * @param handful whether it opens a family while so few are met that they are all neighbours
     * @param close whether a neighbour was among the last three questions, and one of the two is shaky
     * @param choice whether the rails left anything to ask
     * @param missedTwice whether it was missed twice in this drill before
     * @param rests whether the last gap was bridged quickly and a gap as long is not over yet
     * @param othersDue whether the rails left a due trace that does not rest and was not asked in this drill
     * @param families how many families were met
     * @param chance the forecast of a quick right answer
     * @param medianChance the median of the forecasts of all traces met
     */
    record Seen(
            Turn turn,
            int turns,
            boolean ending,
            boolean owed,
            boolean handful,
            boolean close,
            boolean choice,
            boolean missedTwice,
            boolean rests,
            boolean othersDue,
            long families,
            double chance,
            double medianChance) {
        boolean isFromMemory() {
            return turn.purpose() != Purpose.INTRODUCE;
        }
    }

    @Override
    public Optional<Turn> next(Progress progress, Instant at, long seed) {
        Optional<Turn> turn = policy.next(progress, at, seed);
        turn.ifPresent(t -> seen.add(new Moment(progress, at).look(t)));
        return turn;
    }

    /** What stands when a turn is chosen. */
    private static final class Moment {
        private final Progress progress;
        private final DrillSoFar drill;
        private final Instant at;
        private final Duration quick;
        private final long families;
        /** From memory, newest first. */
        private final List<Question> asked = new ArrayList<>();

        private final int[] times = new int[Trace.COUNT];
        private final int[] errors = new int[Trace.COUNT];

        Moment(Progress progress, Instant at) {
            this.progress = progress;
            this.at = at;
            this.drill = progress.drill().orElseThrow();
            this.quick = progress.steering().settings().quick();
            for (Answer answer : drill.newestFirst()) {
                if (answer.purpose().isFromMemory()) {
                    Question question = answer.question().orElseThrow();
                    asked.add(question);
                    times[question.traceIndex()]++;
                    errors[question.traceIndex()] += answer.isCorrect() ? 0 : 1;
                }
            }
            this.families = Families.all().stream().filter(progress::isMet).count();
        }

        Seen look(Turn turn) {
            Trace trace = turn.question().trace();
            boolean rests = times[trace.index()] == 0 && rests(trace);
            boolean close = close(trace.family());
            return new Seen(
                    turn,
                    asked.size(),
                    drill.isOver(at),
                    turn.question().operation() == Operation.DIVIDE && owes(trace.family()),
                    opensAmongAHandful(trace.family()),
                    close,
                    !close || Families.traces().stream().anyMatch(this::allowed),
                    errors[trace.index()] >= 2,
                    rests,
                    rests && Families.traces().stream().anyMatch(this::isDueAndAllowed),
                    families,
                    asked.size() < EASY_START ? chance(trace) : 0,
                    asked.isEmpty() ? medianChance() : 0);
        }

        private double medianChance() {
            double[] chances = Families.traces().stream()
                    .filter(t -> progress.mastery(t).isMet())
                    .mapToDouble(this::chance)
                    .sorted()
                    .toArray();
            return chances.length == 0 ? 0 : chances[chances.length / 2];
        }

        private double chance(Trace trace) {
            return progress.memory().forecast(trace, at).chanceRightWithin(quick);
        }

        private boolean owes(Family family) {
            for (Question question : asked) {
                if (question.family().equals(family)) {
                    return question.operation() == Operation.MULTIPLY;
                }
            }
            return false;
        }

        private boolean opensAmongAHandful(Family family) {
            return !progress.isMet(family) && families < NewFamilyPolicy.HANDFUL;
        }

        private boolean shaky(Family family) {
            return !progress.level(family).atLeast(Mastery.ACCURATE)
                    || family.traces().stream().anyMatch(t -> errors[t.index()] > 0);
        }

        private boolean close(Family family) {
            boolean shaky = shaky(family);
            for (int ago = 1; ago <= Math.min(3, asked.size()); ago++) {
                Family before = asked.get(ago - 1).family();
                if (neighbours(before, family) && (shaky || shaky(before))) {
                    return true;
                }
            }
            return false;
        }

        /** A shared factor, and products within twice that factor. */
        private static boolean neighbours(Family a, Family b) {
            for (int n = 1; n <= 10; n++) {
                if (a.contains(n) && b.contains(n) && Math.abs(a.product() - b.product()) <= 2 * n) {
                    return !a.equals(b);
                }
            }
            return false;
        }

        /** Whether every rail of the drill lets the trace be asked. */
        private boolean allowed(Trace trace) {
            Family family = trace.family();
            boolean product = trace.operation() == Operation.MULTIPLY;
            Duration left = drill.session().planned().minus(drill.practised(at));
            if (!progress.mastery(trace).isMet() || progress.isHeld(family) || errors[trace.index()] >= 2) {
                return false;
            }
            for (int ago = 1; ago <= Math.min(2, asked.size()); ago++) {
                if (asked.get(ago - 1).family().equals(family)) {
                    return false;
                }
            }
            if (!asked.isEmpty() && asked.get(0).family().product() == family.product()) {
                return false;
            }
            boolean inverseCanFollow = left.compareTo(NO_MORE_PRODUCTS) > 0
                    && family.traces().stream()
                            .anyMatch(t -> t.operation() == Operation.DIVIDE && errors[t.index()] < 2);
            return (!product || inverseCanFollow) && !close(family);
        }

        private static long longestGap(FactMastery mastery) {
            return mastery.level() == Mastery.LASTING ? LONGEST_GAP_OF_LASTING : LONGEST_GAP;
        }

        private boolean rests(Trace trace) {
            FactMastery mastery = progress.mastery(trace);
            long bridged = Math.min(longestGap(mastery), mastery.bridged(quick.dividedBy(2)));
            return bridged > 0 && progress.localDay(at) - mastery.lastDay().orElseThrow() < bridged;
        }

        private boolean isDueAndAllowed(Trace trace) {
            if (times[trace.index()] > 0 || !allowed(trace) || rests(trace)) {
                return false;
            }
            Rules rules = Rules.usual();
            Instant next = drill.session().startedAt().plus(rules.nextDrill());
            boolean weak = progress.memory().activation(trace.index(), next.toEpochMilli())
                    < progress.memory().activationFor(rules.target());
            FactMastery mastery = progress.mastery(trace);
            Duration longest = Duration.ofDays(longestGap(mastery));
            Instant last = Instant.ofEpochMilli(progress.memory().lastAsked(trace.index()));
            boolean longAgo = mastery.asked() > 0 && Duration.between(last, at).compareTo(longest) >= 0;
            return weak || longAgo;
        }
    }
}
