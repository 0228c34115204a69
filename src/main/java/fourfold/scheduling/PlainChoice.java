package fourfold.scheduling;

import fourfold.facts.Families;
import fourfold.facts.Family;
import fourfold.facts.Purpose;
import fourfold.facts.Question;
import fourfold.facts.Trace;
import java.time.Duration;
import java.util.Optional;

/**
 * The frame that all simple policies share, so that a comparison is fair: the same rails, re-asks, inverses, openings and
 * endings as the policy the program uses. Only the ranking of what may be asked differs.
 */
final class PlainChoice {
    private static final Duration NO_MORE_PRODUCTS = Duration.ofSeconds(20);

    private final Situation here;
    private final Asked asked;
    private final Rules rules;
    private final Ranking ranking;
    private final Opening opening;
    private final long seed;
    private final boolean productsMayCome;

    PlainChoice(Situation here, Rules rules, Ranking ranking, long seed) {
        this.here = here;
        this.asked = here.asked;
        this.rules = rules;
        this.ranking = ranking;
        this.opening = new Opening(here, rules);
        this.seed = seed;
        Duration left = here.drill.sitting().planned().minus(here.practised);
        this.productsMayCome = left.compareTo(NO_MORE_PRODUCTS) > 0;
    }

    Optional<Turn> turn() {
        if (here.practised.compareTo(here.drill.sitting().planned()) >= 0) {
            return new Ending(here, this::division, this::ask).turn();
        }
        return opening.teach()
                .or(this::again)
                .or(this::owed)
                .or(this::justMet)
                .or(() -> opening.join(ranking.waiting(), ranking.weak()))
                .or(this::ranked)
                .or(this::longestAgo)
                .or(this::lastResort)
                .or(opening::atLast);
    }

    private Optional<Turn> again() {
        int best = -1;
        for (int t = 0; t < Trace.COUNT; t++) {
            boolean missed = asked.errors(t) > 0 && !asked.lastRight(t);
            if (missed
                    && asked.ago(t) > rules.againAfter()
                    && canAsk(t)
                    && (best < 0 || asked.ago(t) > asked.ago(best))) {
                best = t;
            }
        }
        return turnFor(best);
    }

    private Optional<Turn> owed() {
        int family = -1;
        for (int f = 0; f < Families.COUNT; f++) {
            int since = asked.owedSince(f);
            if (since < Asked.NEVER
                    && since > GuardRails.APART
                    && !here.isHeld(f)
                    && asked.ago(Families.at(f)) >= GuardRails.APART
                    && !here.repeats(Families.at(f))
                    && (family < 0 || since > asked.owedSince(family))) {
                family = f;
            }
        }
        return family < 0 ? Optional.empty() : turnFor(division(family));
    }

    /** The family's division asked least in this drill; of two alike the one that ranks higher. */
    private int division(int family) {
        int best = -1;
        for (int d : Situation.divisionsOf(family)) {
            boolean alike = best >= 0 && here.rests(d) == here.rests(best);
            if (best < 0
                    || (here.rests(best) && !here.rests(d))
                    || (alike && asked.times(d) < asked.times(best))
                    || (alike && asked.times(d) == asked.times(best) && ranking.of(d) > ranking.of(best))) {
                best = d;
            }
        }
        return best;
    }

    private Optional<Turn> justMet() {
        for (int t = 0; t < Trace.COUNT; t++) {
            int f = Situation.familyOf(t);
            if (here.isFamilyMet(f)
                    && here.progress.standing(t).asked() == 0
                    && asked.sinceInView(Families.at(f)) >= GuardRails.APART
                    && canAsk(t)) {
                return turnFor(t);
            }
        }
        return Optional.empty();
    }

    private Optional<Turn> ranked() {
        int best = -1;
        double most = Double.NEGATIVE_INFINITY;
        for (int t = 0; t < Trace.COUNT; t++) {
            if (here.isMet(t) && canAsk(t)) {
                double rank = ranking.of(t) + (isFocused(t) ? 1e9 : 0);
                if (rank > most) {
                    most = rank;
                    best = t;
                }
            }
        }
        return turnFor(best);
    }

    private boolean isFocused(int t) {
        return asked.times(t) < 3 && here.progress.isFocused(Families.at(Situation.familyOf(t)));
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
            int f = Situation.familyOf(t);
            boolean may = Situation.isProduct(t) ? productsMayCome : asked.owedSince(f) >= GuardRails.APART;
            if (here.isMet(t)
                    && may
                    && !here.rests(t)
                    && !here.isHeld(f)
                    && !here.repeats(Families.at(f))
                    && (best < 0 || asked.ago(t) > asked.ago(best))) {
                best = t;
            }
        }
        return turnFor(best);
    }

    private boolean canAsk(int t) {
        return (productsMayCome || !Situation.isProduct(t)) && here.allows(t);
    }

    private Optional<Turn> turnFor(int t) {
        return t < 0 ? Optional.empty() : Optional.of(ask(t));
    }

    private Turn ask(int t) {
        Trace trace = Situation.trace(t);
        Family family = trace.family();
        Question question = Situation.isProduct(t)
                ? Question.product(family.low(), family.high())
                : Question.quotient(family, trace.divisor());
        if (Situation.isProduct(t) && Mixing.of(seed, asked.turns()) < 0) {
            question = question.turnAround();
        }
        Purpose purpose = !here.isMet(t) ? Purpose.PROBE : asked.times(t) > 0 ? Purpose.AGAIN : Purpose.PRACTISE;
        return new Turn(question, purpose);
    }
}
