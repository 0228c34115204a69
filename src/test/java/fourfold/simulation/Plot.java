// SPDX-License-Identifier: Apache-2.0
package fourfold.simulation;

import java.util.List;
import java.util.Locale;

/**
 * One measure as a picture (SVG): a line for each policy, a ring for each kind of children, and a dot for the mean over
 * kinds with a bar of two standard errors to either side. Black on white, readable in grey and in print.
 */
final class Plot {
    private static final int WIDTH = 760;
    private static final int LEFT = 150;
    private static final int RIGHT = 730;
    private static final int TOP = 64;
    private static final int ROW = 24;
    private static final int STEPS = 5;

    private final BenchmarkTable table;
    private final Measure measure;
    private final StringBuilder svg = new StringBuilder();
    private double low = Double.POSITIVE_INFINITY;
    private double high = Double.NEGATIVE_INFINITY;

    private Plot(BenchmarkTable table, Measure measure) {
        this.table = table;
        this.measure = measure;
    }

    /** The picture of one measure. */
    static String of(BenchmarkTable table, Measure measure) {
        return new Plot(table, measure).drawn();
    }

    private String drawn() {
        for (String policy : table.policies()) {
            table.kinds()
                    .forEach(kind -> reach(table.cell(kind, policy, measure).mean()));
            Cell all = table.overKinds(policy, measure);
            reach(all.mean() - 2 * all.error());
            reach(all.mean() + 2 * all.error());
        }
        if (!(low <= high)) {
            low = 0;
            high = 1;
        }
        double step = step((high - low) / STEPS);
        low = step * Math.floor(low / step);
        high = Math.max(low + step, step * Math.ceil(high / step));
        int bottom = TOP + ROW * table.policies().size();
        add(String.format(
                Locale.ROOT,
                "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 %d %d\" font-family=\"sans-serif\" font-size=\"12\">",
                WIDTH,
                bottom + 48));
        add(String.format(Locale.ROOT, "<title>%s</title>", escaped(measure.heading() + ": " + measure.meaning())));
        add(String.format(Locale.ROOT, "<rect width=\"100%%\" height=\"100%%\" fill=\"#fff\"/>"));
        add(String.format(
                Locale.ROOT,
                "<text x=\"12\" y=\"22\" font-size=\"15\">%s: %s</text>",
                measure.heading(),
                escaped(measure.meaning())));
        add(
                String.format(
                        Locale.ROOT,
                        "<text x=\"12\" y=\"42\" fill=\"#555\">dot: mean over kinds of children, bar: two standard errors; rings: each kind</text>"));
        axis(step, bottom);
        List<String> policies = table.policies();
        for (int i = 0; i < policies.size(); i++) {
            row(policies.get(i), TOP + ROW * i + ROW / 2);
        }
        return svg.append("</svg>\n").toString();
    }

    private void axis(double step, int bottom) {
        for (int i = 0; low + i * step <= high + step / 2; i++) {
            double value = low + i * step;
            add(String.format(
                    Locale.ROOT,
                    "<line x1=\"%2$.1f\" x2=\"%2$.1f\" y1=\"%1$d\" y2=\"%3$d\" stroke=\"#ddd\"/>",
                    TOP,
                    x(value),
                    bottom));
            add(String.format(
                    Locale.ROOT,
                    "<text x=\"%.1f\" y=\"%d\" text-anchor=\"middle\" fill=\"#555\">%s</text>",
                    x(value),
                    bottom + 18,
                    plain(value, step)));
        }
    }

    private void row(String policy, int y) {
        add(String.format(
                Locale.ROOT,
                "<text x=\"%d\" y=\"%d\" text-anchor=\"end\">%s</text>",
                LEFT - 12,
                y + 4,
                escaped(policy)));
        Cell all = table.overKinds(policy, measure);
        if (Double.isNaN(all.mean())) {
            return;
        }
        for (String kind : table.kinds()) {
            Cell cell = table.cell(kind, policy, measure);
            if (!Double.isNaN(cell.mean())) {
                add(String.format(
                        Locale.ROOT,
                        "<circle cx=\"%.1f\" cy=\"%d\" r=\"4\" fill=\"none\" stroke=\"#888\"><title>%s</title></circle>",
                        x(cell.mean()),
                        y,
                        escaped(kind + " " + cell.shown(measure))));
            }
        }
        add(String.format(
                Locale.ROOT,
                "<line x1=\"%.1f\" x2=\"%.1f\" y1=\"%d\" y2=\"%d\" stroke=\"#000\" stroke-width=\"2\"/>",
                x(all.mean() - 2 * all.error()),
                x(all.mean() + 2 * all.error()),
                y,
                y));
        add(String.format(
                Locale.ROOT,
                "<circle cx=\"%.1f\" cy=\"%d\" r=\"5\"><title>%s</title></circle>",
                x(all.mean()),
                y,
                escaped(all.shown(measure))));
    }

    private void reach(double value) {
        if (!Double.isNaN(value)) {
            low = Math.min(low, value);
            high = Math.max(high, value);
        }
    }

    private double x(double value) {
        return LEFT + (value - low) / (high - low) * (RIGHT - LEFT);
    }

    /** The next larger of 1, 2 and 5 times a power of ten. */
    static double step(double least) {
        double power = Math.pow(10, Math.floor(Math.log10(Math.max(1e-6, least))));
        for (double times : new double[] {1, 2, 5}) {
            if (times * power >= least * (1 - 1e-9)) {
                return times * power;
            }
        }
        return 10 * power;
    }

    private static String plain(double value, double step) {
        int places = Math.max(0, (int) Math.ceil(-Math.log10(step) - 1e-9));
        return String.format(Locale.ROOT, "%." + places + "f", value);
    }

    private void add(String line) {
        svg.append(line).append('\n');
    }

    private static String escaped(String text) {
        return text.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;");
    }
}
