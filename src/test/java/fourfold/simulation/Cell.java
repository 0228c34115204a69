// SPDX-License-Identifier: Apache-2.0
package fourfold.simulation;

import java.util.List;

/**
 * A mean and its standard error; values that are not a number are left out.
 *
 * @param mean not a number where there was no value
 * @param error 0 where there was only one
 */
public record Cell(double mean, double error) {
    /** Of one value for each child. */
    static Cell of(List<Double> values) {
        double[] all = values.stream()
                .mapToDouble(v -> v)
                .filter(v -> !Double.isNaN(v))
                .toArray();
        double sum = 0;
        for (double v : all) {
            sum += v;
        }
        double mean = sum / all.length;
        double squares = 0;
        for (double v : all) {
            squares += (v - mean) * (v - mean);
        }
        return new Cell(mean, all.length < 2 ? 0 : Math.sqrt(squares / (all.length - 1) / all.length));
    }

    /** Over kinds, each of which counts the same; standard errors are pooled. */
    static Cell over(List<Cell> kinds) {
        List<Cell> told = kinds.stream().filter(c -> !Double.isNaN(c.mean)).toList();
        double mean = told.stream().mapToDouble(Cell::mean).average().orElse(Double.NaN);
        double squares = told.stream().mapToDouble(c -> c.error * c.error).sum();
        return new Cell(mean, told.isEmpty() ? 0 : Math.sqrt(squares) / told.size());
    }

    /** As a table shows it. */
    String shown(Measure measure) {
        return Double.isNaN(mean) ? "-" : measure.shown(mean) + "±" + measure.shown(error);
    }
}
