// SPDX-License-Identifier: Apache-2.0
package fourfold.simulation.policy20261127;

import fourfold.facts.Families;
import fourfold.facts.Family;
import fourfold.facts.Question;
import fourfold.facts.Trace;
import fourfold.log.Purpose;
import fourfold.progress.DrillSoFar;
import fourfold.scheduling.Turn;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;

/**
 * The frame of turns, the same for every policy: pairs, re-asks, gaps, openings, endings and the guard rails. A policy
 * only ranks what may be asked ({@link Ranking}), so that a comparison of two is one of their choices.
 *
 * <p>Order of turns: two sure facts to begin with, a re-ask that is due, an inverse that is owed, the facts of a family
 * just met, a new family if one may join, due traces, weak ones once more if they are few, the least sure not yet asked
 * in this drill, anything asked longest ago. When much went wrong, or after weeks away, easy facts come first and no
 * family joins.
 */
final class TurnFrame {
    private static final int SURE_FACTS = 2;
    private static final int FOCUS_TIMES = 3;
    private static final Duration NO_MORE_PRODUCTS = Duration.ofSeconds(20);

    private final Rules rules;
    private final Ranker policy;

    /**
     * A policy in the frame.
     *
     * @param rules how many may wait and how far apart turns are; what is due is the policy's own
     * @param policy ranks what may be asked
     */
    TurnFrame(Rules rules, Ranker policy) {
        this.rules = rules;
        this.policy = policy;
    }

    /** The next turn. */
    Optional<Turn> next(Progress progress, Instant at, long seed) {
        DrillSoFar drill = progress.drill().orElseThrow(() -> new IllegalArgumentException("no drill is going on"));
        ChoiceContext here = new ChoiceContext(progress, drill, at);
        return new Choice(rules, here, policy.rank(here, seed), seed).turn();
    }

    /** One choice. */
    private static final class Choice {
        private final Rules rules;
        private final ChoiceContext here;
        private final TurnHistory asked;
        private final Ranking ranking;
        private final NewFamilyPolicy opening;
        private final long seed;
        private final boolean productsMayCome;
        private final boolean gentle;

        Choice(Rules rules, ChoiceContext here, Ranking ranking, long seed) {
            this.rules = rules;
            this.here = here;
            this.asked = here.asked;
            this.ranking = ranking;
            this.opening = new NewFamilyPolicy(here, rules);
            this.seed = seed;
            this.gentle = here.isTimeToBeGentle();
            Duration left = here.drill.session().planned().minus(here.practised);
            this.productsMayCome = left.compareTo(NO_MORE_PRODUCTS) > 0;
        }

        Optional<Turn> turn() {
            if (here.practised.compareTo(here.drill.session().planned()) >= 0) {
                return rules.pairs() ? new WrapUp(here, this::ask).turn() : Optional.empty();
            }
            return opening.teach()
                    .or(this::sureFact)
                    .or(this::again)
                    .or(this::owed)
                    .or(this::justMet)
                    .or(() -> gentle || opening.isOver() ? Optional.empty() : opening.join(waiting(), countWeak()))
                    .or(this::due)
                    .or(this::weak)
                    .or(this::leastSure)
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
                    double chance = here.memory.chanceQuick(t, here.now);
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

        private Optional<Turn> owed() {
            int family = -1;
            for (int f = 0; rules.pairs() && f < Families.COUNT; f++) {
                int since = asked.owedSince(f);
                if (since < TurnHistory.NEVER
                        && since > GuardRails.APART
                        && !here.isHeld(f)
                        && asked.ago(Families.at(f)) >= GuardRails.APART
                        && !here.repeats(Families.at(f))
                        && (family < 0 || since > asked.owedSince(family))) {
                    family = f;
                }
            }
            return family < 0 ? Optional.empty() : turnFor(here.weakestDivision(family, ranking));
        }

        /** The facts of a family met in this drill that have not been asked from memory yet. */
        private Optional<Turn> justMet() {
            for (int t = 0; t < Trace.COUNT; t++) {
                int f = family(t);
                if (here.isFamilyMet(f)
                        && here.progress.mastery(t).asked() == 0
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
                count += mayBeDue(t) && ranking.isWaiting(t) ? 1 : 0;
            }
            return count;
        }

        private boolean mayBeDue(int t) {
            return here.isMet(t) && !here.rests(t) && !here.isHeld(family(t));
        }

        private boolean isWeak(int t) {
            return here.isMet(t) && !here.isHeld(family(t)) && ranking.isWeak(t);
        }

        private int countWeak() {
            int count = 0;
            for (int t = 0; t < Trace.COUNT; t++) {
                count += isWeak(t) ? 1 : 0;
            }
            return count;
        }

        private Optional<Turn> due() {
            int best = -1;
            double most = Double.NEGATIVE_INFINITY;
            for (int t = 0; t < Trace.COUNT; t++) {
                if (((mayBeDue(t) && ranking.isDue(t)) || isFocused(t)) && canAsk(t)) {
                    double value = value(t);
                    if (value > most) {
                        most = value;
                        best = t;
                    }
                }
            }
            return turnFor(best);
        }

        /** What the parent wants practised comes first; of the rest what has the greatest value, or what is easy. */
        private double value(int t) {
            double focus = isFocused(t) ? 1e6 : 0;
            return focus + (gentle ? here.memory.activation(t, here.now) : ranking.value(t));
        }

        /** Whether the parent wants the trace practised, and it was not asked often enough in this drill yet. */
        private boolean isFocused(int t) {
            if (here.progress.steering().focused().isEmpty() || asked.times(t) >= FOCUS_TIMES) {
                return false;
            }
            return here.isMet(t) && here.progress.isFocused(Families.at(family(t)));
        }

        /** What was asked and would still be weak at the next drill is asked again, while few traces are. */
        private Optional<Turn> weak() {
            if (gentle || countWeak() > rules.mostWeak()) {
                return Optional.empty();
            }
            int best = -1;
            double most = Double.NEGATIVE_INFINITY;
            for (int t = 0; t < Trace.COUNT; t++) {
                boolean wanted = isWeak(t)
                        && asked.times(t) < rules.mostAsked()
                        && asked.ago(t) > rules.weakApart()
                        && canAsk(t);
                double value = wanted ? value(t) : Double.NEGATIVE_INFINITY;
                if (value > most) {
                    most = value;
                    best = t;
                }
            }
            return turnFor(best);
        }

        private Optional<Turn> leastSure() {
            int best = -1;
            double least = Double.POSITIVE_INFINITY;
            for (int t = 0; t < Trace.COUNT; t++) {
                if (here.isMet(t) && asked.times(t) == 0 && canAsk(t)) {
                    double sureness = gentle ? -ranking.sureness(t) : ranking.sureness(t);
                    if (sureness < least) {
                        least = sureness;
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
                boolean may = ChoiceContext.isProduct(t) ? productsMayCome : asked.owedSince(f) >= GuardRails.APART;
                if (may
                        && mayBeDue(t)
                        && !here.repeats(Families.at(f))
                        && (best < 0 || asked.ago(t) > asked.ago(best))) {
                    best = t;
                }
            }
            return turnFor(best);
        }

        /** A product is asked only while its inverse can still follow. */
        private boolean canAsk(int t) {
            return (productsMayCome || !ChoiceContext.isProduct(t) || !rules.pairs()) && here.allows(t);
        }

        private Optional<Turn> turnFor(int t) {
            return t < 0 ? Optional.empty() : Optional.of(ask(t));
        }

        /** Both orders of a product take turns; which comes first is a free choice. */
        private Turn ask(int t) {
            Trace trace = ChoiceContext.trace(t);
            Family family = trace.family();
            Question question = ChoiceContext.isProduct(t)
                    ? Question.product(family.low(), family.high())
                    : Question.quotient(family, trace.divisor());
            if (ChoiceContext.isProduct(t) && Mixing.of(seed, asked.turns()) < 0) {
                question = question.turnAround();
            }
            boolean unmet = !here.isMet(t);
            Purpose purpose = unmet ? Purpose.PROBE : asked.times(t) > 0 ? Purpose.AGAIN : Purpose.PRACTISE;
            return new Turn(question, purpose);
        }

        private static int family(int t) {
            return ChoiceContext.familyOf(t);
        }
    }
}
