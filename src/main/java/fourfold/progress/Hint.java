// SPDX-License-Identifier: Apache-2.0
package fourfold.progress;

import fourfold.facts.Fact;
import fourfold.facts.Family;
import fourfold.facts.Operation;
import fourfold.facts.Question;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Predicate;

/**
 * A way to a fact from facts that the child knows already: a derived fact (common practice in teaching, no source; that
 * teaching them beside timed practice helps with larger numbers: Woodward 2006, Learning Disability Quarterly 29,
 * 269–289). Which way is offered first where several lead there is our own choice: the shortest.
 *
 * @param way how it goes
 * @param question what it leads to
 * @param from the facts it starts from, one or two
 * @param step the number that is added, taken away or doubled; 0 where there is none
 */
public record Hint(Way way, Question question, List<Fact> from, int step) {
    /** Ways to a fact. */
    public enum Way {
        /** The product that a division undoes. */
        INVERSE,
        /** Ten times a number: its tens. */
        TENS,
        /** Nine times a number from ten times it: take the number away once. */
        NINES,
        /** Five times a number from ten times it: half of it. */
        FIVES,
        /** A neighbour of a square: the number once more. */
        NEAR_SQUARE,
        /** Twice as much as half of it. */
        DOUBLE,
        /** One group more. */
        ONE_MORE,
        /** One group less. */
        ONE_LESS,
        /** Two parts that come together: five times and the rest. */
        PARTS;

        /** Its name in texts and files. */
        public String key() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    public Hint {
        from = List.copyOf(from);
    }

    /** The shortest way to a question from the families a child knows; empty if none leads there. */
    public static Optional<Hint> to(Question question, Predicate<Family> known) {
        if (question.operation() == Operation.DIVIDE) {
            Fact product = new Fact(Operation.MULTIPLY, question.right(), question.expected());
            return known.test(question.family())
                    ? Optional.of(new Hint(Way.INVERSE, question, List.of(product), 0))
                    : Optional.empty();
        }
        Optional<Hint> straight = toProduct(question, question.left(), question.right(), known);
        return straight.isPresent() || question.left() == question.right()
                ? straight
                : toProduct(question, question.right(), question.left(), known);
    }

    /** The shortest way from what a child has made accurate. */
    public static Optional<Hint> to(Question question, Progress progress) {
        return to(question, family -> isKnown(progress, family, question));
    }

    /** A product counts as known from accurate on; for a division, the family's own product is asked alone. */
    private static boolean isKnown(Progress progress, Family family, Question question) {
        return progress.mastery(fourfold.facts.Trace.product(family)).level().atLeast(Mastery.ACCURATE)
                && (question.operation() == Operation.DIVIDE || !family.equals(question.family()));
    }

    /** With {@code groups} groups of {@code each}; the groups are what is changed. */
    private static Optional<Hint> toProduct(Question question, int groups, int each, Predicate<Family> known) {
        if (groups == 10 && each > 1) {
            return Optional.of(new Hint(Way.TENS, question, List.of(product(groups, each)), each));
        }
        if (groups == 9 && known.test(Family.of(10, each))) {
            return hint(Way.NINES, question, each, product(10, each));
        }
        if (groups == 5 && known.test(Family.of(10, each))) {
            return hint(Way.FIVES, question, 0, product(10, each));
        }
        if (groups == each + 1 && known.test(Family.of(each, each))) {
            return hint(Way.NEAR_SQUARE, question, each, product(each, each));
        }
        if (groups % 2 == 0 && known.test(Family.of(groups / 2, each))) {
            return hint(Way.DOUBLE, question, 2, product(groups / 2, each));
        }
        if (groups > 1 && known.test(Family.of(groups - 1, each))) {
            return hint(Way.ONE_MORE, question, each, product(groups - 1, each));
        }
        if (groups < 10 && known.test(Family.of(groups + 1, each))) {
            return hint(Way.ONE_LESS, question, each, product(groups + 1, each));
        }
        if (groups > 5 && known.test(Family.of(5, each)) && known.test(Family.of(groups - 5, each))) {
            return hint(Way.PARTS, question, 0, product(5, each), product(groups - 5, each));
        }
        return Optional.empty();
    }

    private static Optional<Hint> hint(Way way, Question question, int step, Fact... from) {
        return Optional.of(new Hint(way, question, List.of(from), step));
    }

    private static Fact product(int groups, int each) {
        return new Fact(Operation.MULTIPLY, groups, each);
    }

    /** The number that the way leads to, worked out from where it starts: always the right answer. */
    public int arrival() {
        int start = from.get(0).result();
        return switch (way) {
            case INVERSE -> from.get(0).right();
            case TENS -> start;
            case NINES, ONE_LESS -> start - step;
            case FIVES -> start / 2;
            case NEAR_SQUARE, ONE_MORE -> start + step;
            case DOUBLE -> start * 2;
            case PARTS -> start + from.get(1).result();
        };
    }
}
