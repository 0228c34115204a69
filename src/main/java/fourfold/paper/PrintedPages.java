package fourfold.paper;

import fourfold.facts.Families;
import fourfold.facts.Family;
import fourfold.facts.Operation;
import fourfold.facts.Question;
import fourfold.insight.DrillRates;
import fourfold.insight.Grid;
import fourfold.insight.TableCount;
import fourfold.insight.Weeks;
import fourfold.progress.Mastery;
import fourfold.progress.Rates;
import fourfold.words.SafeText;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * Pages for practice away from the screen, each one HTML file that needs nothing else: its styles are inside, it has no
 * script and points nowhere. Black on white, readable on a printer without colour.
 */
public final class PrintedPages {
    private static final int CARDS_ACROSS = 4;
    private static final int CARDS_DOWN = 8;
    /** The most cards on a sheet. */
    public static final int CARDS = CARDS_ACROSS * CARDS_DOWN;

    private static final int QUESTIONS_ACROSS = 2;
    private static final String[] GREYS = {"#ffffff", "#e4e4e4", "#c2c2c2", "#989898", "#6a6a6a"};

    private final StringBuilder html = new StringBuilder();

    private PrintedPages(Paper paper, String title) {
        html.append("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n<title>")
                .append(escaped(title))
                .append("</title>\n<style>\n")
                .append(style(paper))
                .append("</style>\n</head>\n<body>\n");
    }

    private static String style(Paper paper) {
        return """
                @page { size: %s portrait; margin: 12mm; }
                * { box-sizing: border-box; }
                body { margin: 0; font-family: sans-serif; color: #000; background: #fff; }
                section { break-after: page; }
                section:last-child { break-after: auto; }
                h1 { font-size: 14pt; margin: 0 0 4mm; }
                p { font-size: 10pt; margin: 0 0 3mm; }
                table { border-collapse: collapse; }
                td, th { border: 0.3mm solid #000; text-align: center; }
                .cards { width: 100%%; height: %s; table-layout: fixed; }
                .cards tr, .cards td { break-inside: avoid; }
                .cards td { height: 12.5%%; border-style: dashed; border-color: #777; font-size: 24pt; }
                .questions { width: 100%%; border: 0; }
                .questions td { border: 0; text-align: left; font-size: 17pt; height: 11mm; width: 50%%; }
                .questions tr { break-inside: avoid; }
                .line { display: inline-block; width: 22mm; border-bottom: 0.3mm solid #000; }
                .square { width: 100%%; table-layout: fixed; margin-bottom: 6mm; }
                .square td, .square th { height: 10mm; font-size: 12pt; }
                .square th { background: #eee; }
                .small td, .small th { font-size: 9pt; padding: 0.8mm 2mm; }
                svg { display: block; width: 100%%; margin-bottom: 4mm; }
                .foot { font-size: 8pt; color: #444; }
                """.formatted(paper.word(), paper == Paper.A4 ? "255mm" : "238mm");
    }

    /**
     * Cards to cut: questions on the first side; on the second their answers, with the columns the other way round, so
     * that each falls behind its question when the sheet is turned over its long edge.
     *
     * @param questions at most {@link #CARDS}
     */
    public static String cards(String name, List<Question> questions, Paper paper) {
        PrintedPages pages = new PrintedPages(paper, "Cards for " + name);
        pages.cardSide(questions, false);
        pages.cardSide(questions, true);
        return pages.closed();
    }

    private void cardSide(List<Question> questions, boolean answers) {
        html.append("<section>\n<table class=\"cards\">\n");
        int rows = (questions.size() + CARDS_ACROSS - 1) / CARDS_ACROSS;
        for (int row = 0; row < rows; row++) {
            html.append("<tr>");
            for (int column = 0; column < CARDS_ACROSS; column++) {
                int place = row * CARDS_ACROSS + (answers ? CARDS_ACROSS - 1 - column : column);
                String text = place >= questions.size()
                        ? ""
                        : answers
                                ? Integer.toString(questions.get(place).expected())
                                : questions.get(place).toString();
                html.append("<td>").append(text).append("</td>");
            }
            html.append("</tr>\n");
        }
        html.append("</table>\n</section>\n");
    }

    /** A page of questions to answer by hand, and the answers on a page of their own. */
    public static String practice(String name, LocalDate day, List<Question> questions, Paper paper) {
        PrintedPages pages = new PrintedPages(paper, "Practice for " + name);
        pages.questions(name + ", " + day, questions, false);
        pages.questions("Answers for " + name + ", " + day, questions, true);
        return pages.closed();
    }

    private void questions(String title, List<Question> questions, boolean answers) {
        html.append("<section>\n<h1>").append(escaped(title)).append("</h1>\n<table class=\"questions\">\n");
        int rows = (questions.size() + QUESTIONS_ACROSS - 1) / QUESTIONS_ACROSS;
        for (int row = 0; row < rows; row++) {
            html.append("<tr>");
            for (int column = 0; column < QUESTIONS_ACROSS; column++) {
                int place = column * rows + row;
                html.append("<td>");
                if (place < questions.size()) {
                    Question question = questions.get(place);
                    html.append(question).append(" = ");
                    html.append(answers ? "<b>" + question.expected() + "</b>" : "<span class=\"line\">&nbsp;</span>");
                }
                html.append("</td>");
            }
            html.append("</tr>\n");
        }
        html.append("</table>\n</section>\n");
    }

    /** The table of all products, blank on the first page and filled on the second. */
    public static String table(Paper paper) {
        PrintedPages pages =
                new PrintedPages(paper, "The table to " + Families.LARGEST_FACTOR + " × " + Families.LARGEST_FACTOR);
        pages.square(false);
        pages.square(true);
        return pages.closed();
    }

    private void square(boolean filled) {
        html.append("<section>\n<h1>")
                .append(filled ? "The table" : "Fill in the table")
                .append("</h1>\n");
        html.append("<table class=\"square\">\n<tr><th>×</th>");
        for (int n = 1; n <= Families.LARGEST_FACTOR; n++) {
            html.append("<th>").append(n).append("</th>");
        }
        html.append("</tr>\n");
        for (int row = 1; row <= Families.LARGEST_FACTOR; row++) {
            html.append("<tr><th>").append(row).append("</th>");
            for (int n = 1; n <= Families.LARGEST_FACTOR; n++) {
                html.append("<td>")
                        .append(filled ? Integer.toString(row * n) : "")
                        .append("</td>");
            }
            html.append("</tr>\n");
        }
        html.append("</table>\n</section>\n");
    }

    /**
     * Where the child stands, on one page: the stairs, the rates and the plan.
     *
     * @param foreseen what the last look ahead came to, in one sentence
     */
    public static String progress(
            String name,
            LocalDate day,
            Grid grid,
            List<DrillRates.OfDrill> drills,
            List<TableCount> tables,
            Weeks weeks,
            Optional<String> foreseen,
            Paper paper) {
        PrintedPages pages = new PrintedPages(paper, "Progress of " + name);
        pages.html
                .append("<section>\n<h1>")
                .append(escaped(name))
                .append(", ")
                .append(day)
                .append("</h1>\n");
        pages.stairs(grid);
        pages.rates(drills);
        pages.tables(tables, weeks);
        foreseen.ifPresent(
                line -> pages.html.append("<p>").append(escaped(line)).append("</p>\n"));
        pages.html.append(
                "<p class=\"foot\">Levels say what was right and quick lately. They are no grade and no "
                        + "diagnosis; if difficulties persist, speak with the child's teacher or a qualified specialist.</p>\n");
        pages.html.append("</section>\n");
        return pages.closed();
    }

    private void stairs(Grid grid) {
        html.append("<svg viewBox=\"0 0 520 265\" role=\"img\" aria-label=\"The stairs\">\n");
        for (Family family : Families.all()) {
            Grid.Cell cell = grid.cell(family);
            int x = 24 + (family.low() - 1) * 34;
            int y = (family.high() - 1) * 26;
            String ink = cell.level().atLeast(Mastery.LASTING) ? "#fff" : "#000";
            html.append(String.format(
                    Locale.ROOT,
                    "<rect x=\"%d\" y=\"%d\" width=\"32\" height=\"24\" fill=\"%s\" stroke=\"#000\"/>"
                            + "<text x=\"%d\" y=\"%d\" font-size=\"12\" text-anchor=\"middle\" fill=\"%s\">%d</text>\n",
                    x,
                    y,
                    GREYS[cell.level().ordinal()],
                    x + 16,
                    y + 16,
                    ink,
                    family.product()));
        }
        for (int n = 1; n <= Families.LARGEST_FACTOR; n++) {
            html.append(String.format(
                    Locale.ROOT, "<text x=\"4\" y=\"%d\" font-size=\"11\">%d</text>\n", (n - 1) * 26 + 16, n));
        }
        for (Mastery level : Mastery.values()) {
            int y = 4 + level.ordinal() * 24;
            html.append(String.format(
                    Locale.ROOT,
                    "<rect x=\"390\" y=\"%d\" width=\"18\" height=\"18\" fill=\"%s\" stroke=\"#000\"/>"
                            + "<text x=\"414\" y=\"%d\" font-size=\"12\">%s: %d</text>\n",
                    y,
                    GREYS[level.ordinal()],
                    y + 14,
                    level.word(),
                    grid.count(level)));
        }
        html.append("</svg>\n");
    }

    /** Digits correct a minute by drill: products as full dots, quotients as rings. */
    private void rates(List<DrillRates.OfDrill> drills) {
        double most = drills.stream()
                .flatMap(d -> java.util.stream.Stream.of(d.products(), d.quotients()))
                .flatMap(Optional::stream)
                .mapToDouble(Rates::digitsPerMinute)
                .max()
                .orElse(0);
        if (most == 0) {
            return;
        }
        html.append("<p>Digits correct a minute, drill by drill: ● products, ○ quotients</p>\n");
        html.append("<svg viewBox=\"0 0 520 110\" role=\"img\" aria-label=\"Rates\">\n");
        html.append("<line x1=\"30\" y1=\"100\" x2=\"515\" y2=\"100\" stroke=\"#000\"/>\n");
        html.append(String.format(
                Locale.ROOT,
                "<text x=\"0\" y=\"14\" font-size=\"10\">%.0f</text><text x=\"0\" y=\"104\" font-size=\"10\">0</text>\n",
                most));
        long first = drills.get(0).localDay();
        double days = Math.max(1, drills.get(drills.size() - 1).localDay() - first);
        for (DrillRates.OfDrill drill : drills) {
            double x = 36 + 474 * (drill.localDay() - first) / days;
            for (Operation operation : Operation.values()) {
                drill.of(operation)
                        .ifPresent(r -> html.append(String.format(
                                Locale.ROOT,
                                "<circle cx=\"%.1f\" cy=\"%.1f\" r=\"2.4\" stroke=\"#000\" fill=\"%s\"/>\n",
                                x,
                                100 - 90 * r.digitsPerMinute() / most,
                                operation == Operation.MULTIPLY ? "#000" : "#fff")));
            }
        }
        html.append("</svg>\n");
    }

    private void tables(List<TableCount> tables, Weeks weeks) {
        html.append("<table class=\"small\">\n<tr><th>table</th><th>families</th><th>met</th><th>accurate</th>"
                + "<th>fluent</th></tr>\n");
        for (TableCount table : tables) {
            html.append("<tr>");
            for (int number :
                    new int[] {table.table(), table.families(), table.met(), table.accurate(), table.fluent()}) {
                html.append("<td>").append(number).append("</td>");
            }
            html.append("</tr>\n");
        }
        html.append("</table>\n<p></p>\n<p>Days with a drill, by week: ");
        List<Weeks.Week> last = weeks.weeks();
        List<String> told = new ArrayList<>();
        for (Weeks.Week week : last.subList(Math.max(0, last.size() - 12), last.size())) {
            told.add(LocalDate.ofEpochDay(week.monday()) + ": " + week.done());
        }
        html.append(String.join("; ", told)).append("</p>\n");
    }

    private String closed() {
        return html.append("</body>\n</html>\n").toString();
    }

    private static String escaped(String text) {
        return SafeText.safe(text)
                .replace("&", "&amp;")
                .replace("<", "&lt;")
                .replace(">", "&gt;")
                .replace("\"", "&quot;");
    }
}
