package fourfold.drill;

import fourfold.facts.Family;
import fourfold.facts.Operation;
import fourfold.facts.Question;
import fourfold.progress.Mastery;
import fourfold.progress.Progress;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * A way to a fact from facts the child already knows. Derived facts beside practice are what Woodward 2006 (Learning
 * Disability Quarterly 29, 269–289) taught; doubling, one group more, one less than ten and two parts are common practice.
 *
 * @param way how it leads there
 * @param from the facts it starts from, each accurate; two for parts
 * @param group the size of the group that is added or taken away
 */
public record Bridge(Way way, List<Question> from, int group) {
    /** How a known fact leads to a new one. */
    public enum Way {
        /** From ten groups take one away. */
        TEN_LESS_ONE,
        /** The double of it. */
        DOUBLE,
        /** One group more. */
        ONE_MORE,
        /** Five groups and the rest. */
        PARTS,
        /** A division from its product. */
        BACK
    }

    public Bridge {
        from = List.copyOf(from);
    }

    /** A way to the product of a family; empty if the child knows no fact that leads there. */
    public static Optional<Bridge> to(Family family, Progress progress) {
        int low = family.low();
        int high = family.high();
        return Stream.of(tenLessOne(low, high), doubled(low, high), oneMore(low, high), parts(low, high))
                .flatMap(List::stream)
                .filter(b -> b.from.stream().allMatch(q -> isKnown(progress, q)))
                .findFirst();
    }

    /** A way to a question: to a product as above, to a quotient back from its product. */
    static Optional<Bridge> to(Question question, Progress progress) {
        if (question.operation() == Operation.MULTIPLY) {
            return to(question.family(), progress);
        }
        Question product = Question.product(question.right(), question.expected());
        return isKnown(progress, product)
                ? Optional.of(new Bridge(Way.BACK, List.of(product), question.right()))
                : Optional.empty();
    }

    private static boolean isKnown(Progress progress, Question question) {
        return progress.standing(question.traceIndex()).level().atLeast(Mastery.ACCURATE);
    }

    private static List<Bridge> tenLessOne(int low, int high) {
        return high == 9 ? List.of(new Bridge(Way.TEN_LESS_ONE, List.of(Question.product(10, low)), low)) : List.of();
    }

    private static List<Bridge> doubled(int low, int high) {
        return Stream.of(half(high, low), half(low, high)).flatMap(List::stream).toList();
    }

    private static List<Bridge> half(int even, int other) {
        return even % 2 == 0 && even > 2
                ? List.of(new Bridge(Way.DOUBLE, List.of(Question.product(even / 2, other)), other))
                : List.of();
    }

    private static List<Bridge> oneMore(int low, int high) {
        return Stream.of(more(high, low), more(low, high)).flatMap(List::stream).toList();
    }

    private static List<Bridge> more(int groups, int each) {
        return groups > 2
                ? List.of(new Bridge(Way.ONE_MORE, List.of(Question.product(groups - 1, each)), each))
                : List.of();
    }

    private static List<Bridge> parts(int low, int high) {
        return high > 6 && high < 10
                ? List.of(
                        new Bridge(Way.PARTS, List.of(Question.product(5, low), Question.product(high - 5, low)), low))
                : List.of();
    }
}
