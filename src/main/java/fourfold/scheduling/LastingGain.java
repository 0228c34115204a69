package fourfold.scheduling;

import fourfold.facts.Families;
import fourfold.facts.Family;
import fourfold.facts.Purpose;
import fourfold.facts.Question;
import fourfold.facts.Trace;
import fourfold.progress.DrillSoFar;
import fourfold.progress.Progress;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;

/**
 * The policy the program uses: what is due is what the child's memory would not give quickly enough at the next drill, and
 * of that first what gains most for long per second of practice.
 *
 * <p>Order of turns: two sure facts to begin with, a re-ask that is due, an inverse that is owed, the facts of a family
 * just met, a new family if one may join, due traces, weak ones once more if they are few, the least certain not yet
 * asked in this drill, anything asked longest ago.
 */
public final class LastingGain implements Scheduler {
    private static final int SURE_FACTS = 2;
    private static final Duration NO_MORE_PRODUCTS = Duration.ofSeconds(20);

    private final Rules rules;

    /** The policy with the usual rules. */
    public LastingGain() {
        this(Rules.usual());
    }

    /** The policy with other rules. */
    public LastingGain(Rules rules) {
        this.rules = rules;
    }

    @Override
    public Optional<Turn> next(Progress progress, Instant at, long seed) {
        DrillSoFar drill = progress.drill().orElseThrow(() -> new IllegalArgumentException("no drill is going on"));
        return new Choice(rules, new Situation(progress, drill, at), seed).turn();
    }

    /** One choice. */
    private static final class Choice {
        private final Rules rules;
        private final Situation here;
        private final Asked asked;
        private final Worth worth;
        private final Opening opening;
        private final long seed;
        private final boolean productsMayCome;

        Choice(Rules rules, Situation here, long seed) {
            this.rules = rules;
            this.here = here;
            this.asked = here.asked;
            this.worth = new Worth(here, rules);
            this.opening = new Opening(here, rules);
            this.seed = seed;
            Duration left = here.drill.sitting().planned().minus(here.practised);
            this.productsMayCome = left.compareTo(NO_MORE_PRODUCTS) > 0;
        }

        Optional<Turn> turn() {
            if (here.practised.compareTo(here.drill.sitting().planned()) >= 0) {
                return rules.pairs() ? new Ending(here, worth::weakestDivision, this::ask).turn() : Optional.empty();
            }
            return opening.teach()
                    .or(this::sureFact)
                    .or(this::again)
                    .or(() -> owed(GuardRails.APART + 1))
                    .or(this::justMet)
                    .or(() -> worth.isGentle() ? Optional.empty() : opening.join(waiting(), worth.weak()))
                    .or(this::due)
                    .or(this::weak)
                    .or(this::leastCertain)
                    .or(this::longestAgo)
                    .or(this::lastResort)
                    .or(opening::atLast);
        }

        private Optional<Turn> sureFact() {
            if (asked.turns() >= SURE_FACTS) {
                return Optional.empty();
            }
            int best = -1;
            double most = 0;
            for (int t = 0; t < Trace.COUNT; t++) {
                if (here.isMet(t) && asked.times(t) == 0 && here.isAccurate(family(t)) && canAsk(t)) {
                    double chance = worth.chanceNow(t);
                    if (chance > most) {
                        most = chance;
                        best = t;
                    }
                }
            }
            return turnFor(best);
        }

        private Optional<Turn> again() {
            int gap = here.memory.chanceRightAgain() >= rules.usuallyRight() ? rules.againAfter() : rules.againSoon();
            int best = -1;
            for (int t = 0; t < Trace.COUNT; t++) {
                int errors = asked.errors(t);
                boolean missed = errors > 0 && !asked.lastRight(t);
                if (missed && asked.ago(t) > gap && canAsk(t) && (best < 0 || asked.ago(t) > asked.ago(best))) {
                    best = t;
                }
            }
            return turnFor(best);
        }

        private Optional<Turn> owed(int apart) {
            int family = -1;
            for (int f = 0; rules.pairs() && f < Families.COUNT; f++) {
                int since = asked.owedSince(f);
                if (since < Asked.NEVER
                        && since >= apart
                        && !here.isHeld(f)
                        && asked.ago(Families.at(f)) >= GuardRails.APART
                        && !here.repeats(Families.at(f))
                        && (family < 0 || since > asked.owedSince(family))) {
                    family = f;
                }
            }
            return family < 0 ? Optional.empty() : turnFor(worth.weakestDivision(family));
        }

        /** The facts of a family met in this drill that have not been asked from memory yet. */
        private Optional<Turn> justMet() {
            for (int t = 0; t < Trace.COUNT; t++) {
                int f = family(t);
                if (here.isFamilyMet(f)
                        && here.progress.standing(t).asked() == 0
                        && asked.sinceInView(Families.at(f)) >= GuardRails.APART
                        && canAsk(t)) {
                    return turnFor(t);
                }
            }
            return Optional.empty();
        }

        private int waiting() {
            int count = 0;
            for (int t = 0; t < Trace.COUNT; t++) {
                count += isDue(t) ? 1 : 0;
            }
            return count;
        }

        private boolean isDue(int t) {
            return here.isMet(t) && !here.rests(t) && asked.times(t) == 0 && !here.isHeld(family(t)) && worth.isDue(t);
        }

        private Optional<Turn> due() {
            int best = -1;
            double most = Double.NEGATIVE_INFINITY;
            for (int t = 0; t < Trace.COUNT; t++) {
                if ((isDue(t) || worth.isFocused(t)) && canAsk(t)) {
                    double value = worth.of(t);
                    if (value > most) {
                        most = value;
                        best = t;
                    }
                }
            }
            return turnFor(best);
        }

        /** What was asked and would still be weak at the next drill is asked again, while few traces are. */
        private Optional<Turn> weak() {
            if (worth.isGentle() || worth.weak() > rules.mostWeak()) {
                return Optional.empty();
            }
            int best = -1;
            double most = Double.NEGATIVE_INFINITY;
            for (int t = 0; t < Trace.COUNT; t++) {
                boolean wanted = worth.isWeak(t)
                        && asked.times(t) < rules.mostAsked()
                        && asked.ago(t) > rules.weakApart()
                        && canAsk(t);
                if (wanted && worth.of(t) > most) {
                    most = worth.of(t);
                    best = t;
                }
            }
            return turnFor(best);
        }

        private Optional<Turn> leastCertain() {
            int best = -1;
            double least = Double.POSITIVE_INFINITY;
            for (int t = 0; t < Trace.COUNT; t++) {
                if (here.isMet(t) && asked.times(t) == 0 && canAsk(t)) {
                    double certainty = worth.isGentle() ? -worth.activationNext(t) : worth.activationNext(t);
                    if (certainty < least) {
                        least = certainty;
                        best = t;
                    }
                }
            }
            return turnFor(best);
        }

        private Optional<Turn> longestAgo() {
            int best = -1;
            for (int t = 0; t < Trace.COUNT; t++) {
                if (here.isMet(t) && canAsk(t) && (best < 0 || asked.ago(t) > asked.ago(best))) {
                    best = t;
                }
            }
            return turnFor(best);
        }

        /** When the rails leave nothing, only the same question and the same product in a row stay forbidden. */
        private Optional<Turn> lastResort() {
            int best = -1;
            for (int t = 0; t < Trace.COUNT; t++) {
                int f = family(t);
                boolean inverse = Situation.isProduct(t)
                        ? productsMayCome && !here.isHeld(f)
                        : asked.owedSince(f) >= GuardRails.APART && !here.isHeld(f);
                if (here.isMet(t)
                        && inverse
                        && !here.rests(t)
                        && !here.repeats(Families.at(f))
                        && (best < 0 || asked.ago(t) > asked.ago(best))) {
                    best = t;
                }
            }
            return turnFor(best);
        }

        /** A product is asked only while its inverse can still follow. */
        private boolean canAsk(int t) {
            return (productsMayCome || !Situation.isProduct(t) || !rules.pairs()) && here.allows(t);
        }

        private Optional<Turn> turnFor(int t) {
            return t < 0 ? Optional.empty() : Optional.of(ask(t));
        }

        /** Both orders of a product take turns; which comes first is a free choice. */
        private Turn ask(int t) {
            Trace trace = Situation.trace(t);
            Family family = trace.family();
            Question question = Situation.isProduct(t)
                    ? Question.product(family.low(), family.high())
                    : Question.quotient(family, trace.divisor());
            if (Situation.isProduct(t) && Mixing.of(seed, asked.turns()) < 0) {
                question = question.turnAround();
            }
            boolean unmet = !here.isMet(t);
            Purpose purpose = unmet ? Purpose.PROBE : asked.times(t) > 0 ? Purpose.AGAIN : Purpose.PRACTISE;
            return new Turn(question, purpose);
        }

        private static int family(int t) {
            return Situation.familyOf(t);
        }
    }
}
