package fourfold.scheduling;

import fourfold.facts.Families;
import fourfold.facts.Family;
import fourfold.facts.Operation;
import fourfold.facts.Question;
import fourfold.facts.Trace;
import fourfold.log.Purpose;
import fourfold.progress.DrillSoFar;
import fourfold.progress.FactMastery;
import fourfold.progress.Mastery;
import fourfold.progress.Progress;
import java.time.Duration;
import java.time.Instant;
import java.util.Comparator;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Stream;

/**
 * A plain policy to try drills with, apart from the program's own: each trace is due after plainly growing gaps of days, the weakest first.
 *
 * <p>Order of turns: two sure facts to begin with, a re-ask that is due, an inverse that is owed, the facts of a family
 * just introduced, a new family if one may join, due traces, anything asked longest ago.
 */
public final class GrowingGaps implements Scheduler {
    /** After an error a trace comes back when this many others were asked. */
    static final int AGAIN_AFTER = 8;

    private static final int SURE_FACTS = 2;
    private static final int FEWEST = 3;
    private static final int MOST_SHAKY = 8;
    private static final int MOST_WAITING = 15;
    private static final Duration NEW_EVERY = Duration.ofMinutes(5);
    private static final Duration ROOM_FOR_NEW = Duration.ofSeconds(100);
    private static final Duration NO_MORE_PRODUCTS = Duration.ofSeconds(20);
    private static final Duration LONGEST_ENDING = Duration.ofSeconds(150);

    @Override
    public Optional<Turn> next(Progress progress, Instant at, long seed) {
        DrillSoFar drill = progress.drill().orElseThrow(() -> new IllegalArgumentException("no drill is going on"));
        return new Choice(progress, drill, at, seed).turn();
    }

    /** One choice, with all it looks at. */
    private static final class Choice {
        private final Progress progress;
        private final DrillSoFar drill;
        private final TurnHistory asked;
        private final Instant at;
        private final long today;
        private final long seed;

        Choice(Progress progress, DrillSoFar drill, Instant at, long seed) {
            this.progress = progress;
            this.drill = drill;
            this.asked = new TurnHistory(drill);
            this.at = at;
            this.today = progress.localDay(at);
            this.seed = seed;
        }

        Optional<Turn> turn() {
            if (drill.isOver(at)) {
                return ending();
            }
            return sureFact()
                    .or(this::again)
                    .or(() -> owed(GuardRails.APART + 1))
                    .or(this::justIntroduced)
                    .or(this::newFamily)
                    .or(() -> practise(this::isDue))
                    .or(() -> practise(t -> asked.times(t) == 0))
                    .or(() -> practise(t -> true))
                    .or(() -> lastResort(t -> true))
                    .or(() -> progress.nextNew().map(this::introduce));
        }

        /** After the planned time only what is owed is asked, with sure divisions between to keep it apart. */
        private Optional<Turn> ending() {
            boolean owing = Families.all().stream()
                    .anyMatch(f -> asked.owedSince(f) < TurnHistory.NEVER && !progress.isHeld(f));
            boolean tooLate =
                    drill.practised(at).compareTo(drill.session().planned().plus(LONGEST_ENDING)) >= 0;
            if (!owing || tooLate) {
                return Optional.empty();
            }
            return owed(GuardRails.APART)
                    .or(() -> practise(t -> t.operation() == Operation.DIVIDE))
                    .or(() -> lastResort(t -> t.operation() == Operation.DIVIDE));
        }

        private Optional<Turn> sureFact() {
            if (asked.turns() >= SURE_FACTS) {
                return Optional.empty();
            }
            return met().filter(t -> progress.mastery(t).level().atLeast(Mastery.ACCURATE))
                    .filter(t -> asked.times(t) == 0)
                    .filter(this::allow)
                    .min(longestAgo())
                    .map(t -> ask(t, Purpose.PRACTISE));
        }

        private Optional<Turn> again() {
            return met().filter(t -> asked.times(t) > 0 && !asked.lastRight(t) && asked.errors(t) < 2)
                    .filter(t -> asked.ago(t) > AGAIN_AFTER)
                    .filter(this::allow)
                    .max(Comparator.comparingInt(asked::ago))
                    .map(t -> ask(t, Purpose.AGAIN));
        }

        private Optional<Turn> owed(int apart) {
            return Families.all().stream()
                    .filter(f -> asked.owedSince(f) < TurnHistory.NEVER && asked.owedSince(f) >= apart)
                    .flatMap(f -> f.traces().stream())
                    .filter(t -> t.operation() == Operation.DIVIDE)
                    .filter(t -> asked.times(t) == 0 || asked.lastRight(t) || asked.errors(t) < 2)
                    .filter(t -> asked.ago(t.family()) >= GuardRails.APART && !progress.isHeld(t.family()))
                    .filter(t -> !repeats(t))
                    .max(Comparator.<Trace>comparingInt(t -> asked.owedSince(t.family()))
                            .thenComparing(weakestFirst().reversed()))
                    .map(t -> ask(t, asked.times(t) > 0 ? Purpose.AGAIN : Purpose.PRACTISE));
        }

        private boolean repeats(Trace trace) {
            return asked.recent().stream()
                    .limit(1)
                    .anyMatch(q -> q.family().product() == trace.family().product());
        }

        private Optional<Turn> justIntroduced() {
            return asked.inView().stream()
                    .flatMap(f -> f.traces().stream())
                    .filter(t -> asked.times(t) == 0 && asked.sinceInView(t.family()) >= GuardRails.APART)
                    .filter(t -> progress.mastery(t).asked() == 0)
                    .filter(this::allow)
                    .findFirst()
                    .map(t -> ask(t, Purpose.PRACTISE));
        }

        private Optional<Turn> newFamily() {
            Optional<Family> next = progress.nextNew();
            boolean first = Families.all().stream().noneMatch(progress::isMet);
            if (next.isEmpty() || (!first && !mayJoin())) {
                return Optional.empty();
            }
            return next.filter(f ->
                            asked.recent().stream().noneMatch(q -> GuardRails.areNeighbours(q.family(), f)) || first)
                    .map(this::introduce);
        }

        private Turn introduce(Family family) {
            return new Turn(Question.product(family.low(), family.high()), Purpose.INTRODUCE);
        }

        private boolean mayJoin() {
            Duration practised = drill.practised(at);
            long joined = asked.inView().stream()
                    .filter(f -> f.traces().stream()
                            .allMatch(t -> progress.mastery(t).asked() <= asked.times(t)))
                    .count();
            long shaky = Families.all().stream()
                    .filter(f -> progress.isMet(f) && !progress.isHeld(f))
                    .filter(f -> !progress.level(f).atLeast(Mastery.ACCURATE))
                    .count();
            boolean roomLeft = drill.session().planned().minus(practised).compareTo(ROOM_FOR_NEW) > 0;
            long allowed = 1 + practised.dividedBy(NEW_EVERY);
            // At the very start there is nothing else to ask; a handful of families makes practice possible.
            boolean starting = Families.all().stream().filter(progress::isMet).count() < FEWEST;
            return roomLeft
                    && (starting
                            || (joined
                                            < Math.min(
                                                    allowed,
                                                    progress.steering()
                                                            .settings()
                                                            .newInDrill())
                                    && shaky < MOST_SHAKY
                                    && waiting() <= MOST_WAITING));
        }

        private long waiting() {
            return met().filter(t -> isDue(t) && asked.times(t) == 0).count();
        }

        private boolean isDue(Trace trace) {
            FactMastery mastery = progress.mastery(trace);
            boolean focused = progress.isFocused(trace.family()) && asked.times(trace) < 3;
            boolean dueToday = asked.times(trace) == 0
                    && mastery.dueDay().map(d -> d <= today).orElse(true);
            return focused || dueToday;
        }

        private Optional<Turn> practise(Predicate<Trace> wanted) {
            return met().filter(wanted)
                    .filter(t -> asked.errors(t) < 2)
                    .filter(this::allow)
                    .min(Comparator.<Trace, Boolean>comparing(t -> !progress.isFocused(t.family()))
                            .thenComparingInt(asked::times)
                            .thenComparing(weakestFirst()))
                    .map(t -> ask(t, asked.times(t) == 0 ? Purpose.PRACTISE : Purpose.AGAIN));
        }

        /** Whether a fact of this trace may be asked now. */
        private boolean allow(Trace trace) {
            Family family = trace.family();
            return !progress.isHeld(family)
                    && asked.errors(trace) < GuardRails.MOST_ERRORS
                    && asked.ago(family) >= GuardRails.APART
                    && !repeats(trace)
                    && asked.recent().stream().noneMatch(q -> confusable(q.family(), family));
        }

        private boolean confusable(Family a, Family b) {
            return GuardRails.areNeighbours(a, b)
                    && !(progress.level(a).atLeast(Mastery.ACCURATE)
                            && progress.level(b).atLeast(Mastery.ACCURATE));
        }

        /** When the rails leave nothing, only the same question and the same product in a row stay forbidden. */
        private Optional<Turn> lastResort(Predicate<Trace> wanted) {
            return met().filter(wanted)
                    .filter(t -> !repeats(t))
                    .filter(t -> t.operation() == Operation.MULTIPLY || asked.owedSince(t.family()) >= GuardRails.APART)
                    .max(Comparator.<Trace>comparingInt(t -> asked.ago(t)).thenComparingInt(Trace::index))
                    .map(t -> ask(t, asked.times(t) == 0 ? Purpose.PRACTISE : Purpose.AGAIN));
        }

        /** A product is asked only while its inverse can still follow: time is left, and not every division rests. */
        private boolean canBeUndone(Trace trace) {
            return trace.operation() == Operation.DIVIDE
                    || (drill.session().planned().minus(drill.practised(at)).compareTo(NO_MORE_PRODUCTS) > 0
                            && trace.family().traces().stream()
                                    .anyMatch(t -> t.operation() == Operation.DIVIDE && asked.errors(t) < 2));
        }

        private Stream<Trace> met() {
            return Families.traces().stream()
                    .filter(t -> progress.mastery(t).isMet())
                    .filter(this::canBeUndone)
                    .filter(t -> !progress.isHeld(t.family()));
        }

        private Comparator<Trace> weakestFirst() {
            return Comparator.<Trace>comparingInt(
                            t -> progress.mastery(t).level().ordinal())
                    .thenComparing(longestAgo());
        }

        private Comparator<Trace> longestAgo() {
            return Comparator.<Trace>comparingLong(
                            t -> progress.mastery(t).lastDay().orElse(Long.MIN_VALUE))
                    .thenComparingLong(t -> Mixing.of(seed, t.index()));
        }

        /** Both orders of a product take turns; which comes first is a free choice. */
        private Turn ask(Trace trace, Purpose purpose) {
            var questions = trace.questions();
            int pick = questions.size() == 1 ? 0 : Math.floorMod(Mixing.of(seed, asked.turns()), 2);
            return new Turn(questions.get(pick), purpose);
        }
    }
}
