package fourfold.plain;

import fourfold.facts.Families;
import fourfold.insight.DrillRates;
import fourfold.insight.TableCount;
import fourfold.insight.Weeks;
import fourfold.outlook.Projection;
import fourfold.progress.Rates;
import fourfold.words.SafeText;
import java.io.IOException;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** The plan and the rates as plain text. */
public final class PlanText {
    private PlanText() {}

    /**
     * Writes the plan.
     *
     * @param out where to
     * @param name the child's nickname
     * @param projection when all may be fluent; empty if there are too few answers to guess from
     * @param unicode false to use ASCII only
     */
    public static void plan(
            Appendable out,
            String name,
            Weeks weeks,
            List<TableCount> tables,
            Optional<Projection> projection,
            boolean unicode)
            throws IOException {
        out.append(SafeText.safe(name)).append(": the plan\n\n");
        out.append(String.format(
                Locale.ROOT, "planned %d days a week; lately %.1f\n", weeks.planned(), weeks.usualDays()));
        out.append(projection
                .map(p -> "all " + Families.COUNT + " families fluent: perhaps " + day(p.middle()) + ", between "
                        + day(p.early()) + " and " + day(p.late())
                        + " in eight of ten cases (a guess, not a promise)\n")
                .orElse("too few answers to guess when all " + Families.COUNT + " families may be fluent\n"));
        out.append("\ntable  families  met  accurate  fluent\n");
        for (TableCount t : tables) {
            out.append(String.format(
                    Locale.ROOT, "%5d %9d %4d %9d %7d\n", t.table(), t.families(), t.met(), t.accurate(), t.fluent()));
        }
        out.append("\nweek of     days with a drill\n");
        for (Weeks.Week week : weeks.weeks()) {
            StringBuilder days = new StringBuilder();
            week.days().forEach(done -> days.append(done ? unicode ? "■ " : "# " : unicode ? "· " : ". "));
            out.append(LocalDate.ofEpochDay(week.monday()).toString())
                    .append("  ")
                    .append(days.toString().strip())
                    .append('\n');
        }
    }

    private static String day(Optional<LocalDate> day) {
        return day.map(LocalDate::toString).orElse("later than is looked ahead");
    }

    /** Writes the rates, a line for each drill, oldest first, with the trends and published ranges. */
    public static void rates(Appendable out, String name, List<DrillRates.OfDrill> drills, boolean unicode)
            throws IOException {
        out.append(SafeText.safe(name)).append(": digits and facts correct a minute\n\n");
        out.append(String.format(Locale.ROOT, "%-12s%-18s%s\n", "day", "products", "quotients"));
        for (DrillRates.OfDrill drill : drills) {
            out.append(String.format(
                    Locale.ROOT,
                    "%-12s%-18s%s\n",
                    LocalDate.ofEpochDay(drill.localDay()),
                    told(drill.products(), unicode),
                    told(drill.quotients(), unicode)));
        }
        out.append('\n');
        for (fourfold.facts.Operation operation : fourfold.facts.Operation.values()) {
            String which = operation == fourfold.facts.Operation.MULTIPLY ? "products" : "quotients";
            out.append(DrillRates.digitsTrend(drills, operation)
                    .map(t -> String.format(
                            Locale.ROOT,
                            "%s: %+.1f digits a minute each week (95 %%: %+.1f to %+.1f)\n",
                            which,
                            t.slope(),
                            t.low(),
                            t.high()))
                    .orElse(which + ": a trend needs three drills\n"));
        }
        for (DrillRates.Range range : DrillRates.WRITTEN) {
            out.append(String.format(
                    Locale.ROOT,
                    "for orientation, school years %d to %d, written by hand: %d to %d digits a minute\n",
                    range.fromGrade(),
                    range.toGrade(),
                    range.low(),
                    range.high()));
        }
        out.append("(Burns, VanDerHeyden and Jiban 2006; no grade: typing is not writing)\n");
    }

    private static String told(Optional<Rates> rates, boolean unicode) {
        return rates.map(r -> String.format(Locale.ROOT, "%5.1f / %4.1f", r.digitsPerMinute(), r.factsPerMinute()))
                .orElse(unicode ? "    –" : "    -");
    }
}
