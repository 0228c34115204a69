// SPDX-License-Identifier: Apache-2.0
package fourfold.memory;

import fourfold.facts.Families;
import fourfold.facts.Family;
import fourfold.facts.Operation;
import fourfold.facts.Trace;

/**
 * What the traces of one child suggest about each other's rate of forgetting: a mean for each operation, and how far the
 * traces of a family, a table and a size of product lie from it. This is the shrinkage of the model: a trace starts from
 * here and moves away as its own evidence comes. Mutable; copied before it is shared.
 */
final class RelatedFactPrior {
    private static final int FAMILIES = 0;
    private static final int TABLES = Families.COUNT;
    private static final int SIZES = TABLES + Families.LARGEST_FACTOR + 1;
    private static final int GROUPS = SIZES + 3;
    private static final int[] LOW = new int[Trace.COUNT];
    private static final int[] HIGH = new int[Trace.COUNT];
    private static final int[] FAMILY = new int[Trace.COUNT];
    private static final int[] OPERATION = new int[Trace.COUNT];
    private static final int[] SIZE = new int[Trace.COUNT];

    static {
        for (Trace trace : Families.traces()) {
            Family family = trace.family();
            int i = trace.index();
            LOW[i] = TABLES + family.low();
            HIGH[i] = TABLES + family.high();
            FAMILY[i] = FAMILIES + family.index();
            OPERATION[i] = trace.operation() == Operation.MULTIPLY ? 0 : 1;
            SIZE[i] = SIZES + (family.product() <= 25 ? 0 : family.product() <= 50 ? 1 : 2);
        }
    }

    private final Parameters parameters;
    private final double[] operationSum;
    private final double[] operationCount;
    private final double[] sums;
    private final double[] counts;
    /** What each trace has put in: how far its rate lies from the usual one; not a number for nothing yet. */
    private final double[] put;

    RelatedFactPrior(Parameters parameters) {
        this.parameters = parameters;
        this.operationSum = new double[2];
        this.operationCount = new double[2];
        this.sums = new double[GROUPS];
        this.counts = new double[GROUPS];
        this.put = new double[Trace.COUNT];
        java.util.Arrays.fill(put, Double.NaN);
    }

    RelatedFactPrior(RelatedFactPrior other) {
        this.parameters = other.parameters;
        this.operationSum = other.operationSum.clone();
        this.operationCount = other.operationCount.clone();
        this.sums = other.sums.clone();
        this.counts = other.counts.clone();
        this.put = other.put.clone();
    }

    /** The rate a trace is expected to have, its own evidence left aside. */
    double expected(int trace) {
        boolean has = !Double.isNaN(put[trace]);
        double ownCount = has ? 1 : 0;
        double ownSum = has ? put[trace] : 0;
        double mean = meanDeviation(OPERATION[trace]);
        int family = FAMILY[trace];
        int low = LOW[trace];
        int high = HIGH[trace];
        int size = SIZE[trace];
        double inFamily = counts[family] - ownCount;
        double inTables = counts[low] + counts[high] - 2 * ownCount;
        double inSize = counts[size] - ownCount;
        double deviation = parameters.family * (sums[family] - ownSum - inFamily * mean)
                + parameters.table * (sums[low] + sums[high] - 2 * ownSum - inTables * mean)
                + parameters.size * (sums[size] - ownSum - inSize * mean);
        double weight = 1 + parameters.family * inFamily + parameters.table * inTables + parameters.size * inSize;
        return parameters.usualRate + mean + base(trace) + deviation / weight;
    }

    /** Puts in what a trace's own evidence now says, in place of what it said before. */
    void put(int trace, double rate) {
        remove(trace);
        int operation = OPERATION[trace];
        double deviation = rate - base(trace) - parameters.usualRate;
        put[trace] = deviation;
        shift(trace, deviation, 1);
        operationSum[operation] += deviation;
        operationCount[operation]++;
    }

    /** Takes a trace's part out again. */
    void remove(int trace) {
        if (!Double.isNaN(put[trace])) {
            shift(trace, -put[trace], -1);
            operationSum[OPERATION[trace]] -= put[trace];
            operationCount[OPERATION[trace]]--;
            put[trace] = Double.NaN;
        }
    }

    private void shift(int trace, double by, double count) {
        add(FAMILY[trace], by, count);
        add(LOW[trace], by, count);
        add(HIGH[trace], by, count);
        add(SIZE[trace], by, count);
    }

    private void add(int group, double by, double count) {
        sums[group] += by;
        counts[group] += count;
    }

    private double meanDeviation(int operation) {
        return operationSum[operation] / (operationCount[operation] + parameters.priorStrength);
    }

    /** Facts by rule and squares have a prior of their own. */
    private double base(int trace) {
        boolean rule = LOW[trace] == TABLES + 1 || HIGH[trace] == TABLES + 10;
        return rule ? parameters.ruleRate : LOW[trace] == HIGH[trace] ? parameters.squareRate : 0;
    }
}
