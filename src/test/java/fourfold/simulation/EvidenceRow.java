// SPDX-License-Identifier: Apache-2.0
package fourfold.simulation;

import java.util.Locale;
import java.util.function.ToDoubleFunction;

/**
 * What people show, in one figure each, with the bounds a simulated kind of children has to keep. Figures of people: size
 * effect and spreads from Suárez-Pellicioni and others 2019 (the files beside this table in the resources); spacing from
 * Cepeda and others 2008, forgetting from Cepeda and others 2009, Experiment 2a; the tables check from the Department for
 * Education; errors from Campbell and Graham 1985, from memory.
 */
enum EvidenceRow {
    SIZE("size effect, ln time 6-9 less 2-5", ".206", 0.10, 0.40, KindFigures::sizeEffect),
    BETWEEN("spread between children, SD of ln time", ".34-.36", 0.25, 0.45, KindFigures::spreadBetween),
    WITHIN_SMALL("spread within a child, 2-5", ".34", 0.26, 0.45, k -> k.spreadWithin(2, 5)),
    WITHIN_LARGE("spread within a child, 6-9", ".39", 0.26, 0.45, k -> k.spreadWithin(6, 9)),
    TEN_MORE("ln time for ten more in the product", ".038", 0.019, 0.076, k -> k.slopes()[0]),
    FIVE("ln time for a factor 5", "-.075", -0.15, -0.0375, k -> k.slopes()[1]),
    TIES("ln time of squares less neighbours", "< 0", -1, 0, KindFigures::ties),
    DIVISIONS("ln time of divisions less products", "> 0", 0, 0.4, KindFigures::divisions),
    BEST_GAP("fall of the best gap as retention grows, days", "0", 0, 0, KindFigures::fallOfBestGap),
    GAIN("gain of the best gap, 35 days, log odds", "1.44", 0.7, 9, KindFigures::gainOfSpacing),
    KEPT("recall on day 28 over day 1", ".52", 0, 0.75, KindFigures::keptToDay28),
    CHECK("lessons only: right of 25 within 6 s", "19.8-21.0", 14, 21, KindFigures::check),
    RELATED("operand-related share of wrong products", ".79", 0.65, 0.85, k -> k.errors()[0]),
    OTHER("wrong products from another table", ".14", -1, 2, k -> k.errors()[1]),
    NONE("wrong products in no table", ".07", -1, 2, k -> k.errors()[2]),
    DIGITS("digits right in a minute of answering", "14-49", 14, 60, KindFigures::digitsPerMinute),
    FOURTH_SMALL("4th right after 3 of 3, 2-5", ".934", -1, 2, k -> k.fourthAfterThree(2, 5)),
    FOURTH_LARGE("4th right after 3 of 3, 6-9", ".854", -1, 2, k -> k.fourthAfterThree(6, 9));

    private final String title;
    private final String people;
    private final double least;
    private final double most;

    // A function without state; the interface is only not marked so.
    @SuppressWarnings("ImmutableEnumChecker")
    private final ToDoubleFunction<KindFigures> figure;

    EvidenceRow(String title, String people, double least, double most, ToDoubleFunction<KindFigures> figure) {
        this.title = title;
        this.people = people;
        this.least = least;
        this.most = most;
        this.figure = figure;
    }

    String title() {
        return title;
    }

    String people() {
        return people;
    }

    double of(KindFigures kind) {
        return figure.applyAsDouble(kind);
    }

    /** Whether the figure is only shown beside that of people. */
    boolean isShownOnly() {
        return least == -1 && most == 2;
    }

    boolean holds(double value) {
        return value >= least && value <= most;
    }

    String bound() {
        if (isShownOnly()) {
            return "shown";
        }
        if (this == BEST_GAP) {
            return "0";
        }
        return this == GAIN
                ? ">= .7"
                : this == KEPT ? "<= .75" : this == TIES ? "< 0" : number(least) + " to " + number(most);
    }

    static String number(double x) {
        return x >= 10 ? String.format(Locale.ROOT, "%.1f", x) : String.format(Locale.ROOT, "%.3f", x);
    }
}
