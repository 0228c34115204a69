// SPDX-License-Identifier: Apache-2.0
package fourfold.facts;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * All facts of three numbers a, b and p = a·b: a × b, b × a, p ÷ a, p ÷ b.
 *
 * @param low the smaller factor, 1 to 10
 * @param high the larger factor, {@code low} to 10
 */
public record Family(int low, int high) implements Comparable<Family> {
    /** Made when a parent first writes a family: patterns take time at the start. */
    private static final class Written {
        static final Pattern PATTERN = Pattern.compile("\\s*(\\d{1,2})\\s*[xX×*]\\s*(\\d{1,2})\\s*");
    }

    public Family {
        if (low < 1 || high > Families.LARGEST_FACTOR || low > high) {
            throw new IllegalArgumentException("a family has two factors from 1 to " + Families.LARGEST_FACTOR
                    + ", the smaller first, not " + low + " and " + high);
        }
    }

    /** The family of two factors given in either order. */
    public static Family of(int a, int b) {
        return new Family(Math.min(a, b), Math.max(a, b));
    }

    /**
     * The family a parent writes as {@code 6x7} (either order; × and * are taken too).
     *
     * @throws IllegalArgumentException if the text is not two factors from 1 to 10
     */
    public static Family parse(String text) {
        Matcher matcher = Written.PATTERN.matcher(text);
        if (!matcher.matches()) {
            throw new IllegalArgumentException("a family is written like 6x7, not \"" + text + "\"");
        }
        return of(Integer.parseInt(matcher.group(1)), Integer.parseInt(matcher.group(2)));
    }

    /** The product p, 1 to 100. */
    public int product() {
        return low * high;
    }

    /** Whether both factors are the same; such a family has two facts instead of four. */
    public boolean isSquare() {
        return low == high;
    }

    /** Whether {@code n} is one of the factors. */
    public boolean contains(int n) {
        return low == n || high == n;
    }

    /** The factor that is not {@code factor}; the factor itself in a square. */
    public int partnerOf(int factor) {
        if (!contains(factor)) {
            throw new IllegalArgumentException(factor + " is no factor of the family " + this);
        }
        return factor == low ? high : low;
    }

    /** Place in the list of all families, 0 to 54, counting down the stairs step by step. */
    public int index() {
        return high * (high - 1) / 2 + low - 1;
    }

    /** The family's questions, products first: four of them, two for a square. */
    public List<Question> questions() {
        List<Question> all = new ArrayList<>(4);
        all.add(new Question(Operation.MULTIPLY, low, high));
        if (!isSquare()) {
            all.add(new Question(Operation.MULTIPLY, high, low));
        }
        all.add(new Question(Operation.DIVIDE, product(), low));
        if (!isSquare()) {
            all.add(new Question(Operation.DIVIDE, product(), high));
        }
        return List.copyOf(all);
    }

    /** The family's facts, in the order of its questions. */
    public List<Fact> facts() {
        return questions().stream().map(Question::fact).toList();
    }

    /** What memory holds of the family: the product, and one trace for each divisor. */
    public List<Trace> traces() {
        return isSquare()
                ? List.of(Trace.product(this), Trace.quotient(this, low))
                : List.of(Trace.product(this), Trace.quotient(this, low), Trace.quotient(this, high));
    }

    @Override
    public int compareTo(Family other) {
        return Integer.compare(index(), other.index());
    }

    // Written out here: what the language makes for a record by itself is put together at every start, which takes
    // time.

    @Override
    public boolean equals(Object other) {
        return other instanceof Family family && low == family.low && high == family.high;
    }

    @Override
    public int hashCode() {
        return 31 * low + high;
    }

    /** As a parent writes it: {@code 6x7}. */
    @Override
    public String toString() {
        return low + "x" + high;
    }
}
