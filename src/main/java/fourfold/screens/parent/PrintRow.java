// SPDX-License-Identifier: Apache-2.0
package fourfold.screens.parent;

import fourfold.facts.Families;
import fourfold.home.PageOrder;
import fourfold.insight.PageChoice;
import fourfold.insight.PageKind;
import fourfold.insight.Portfolio;
import fourfold.paper.Layout;
import fourfold.paper.Paper;
import fourfold.words.Words;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** One thing that is chosen before a page is made, with the values it can have. */
enum PrintRow {
    TABLES,
    ASKED,
    PICK,
    COUNT,
    COPIES,
    PERIOD,
    LETTERS,
    PAPER;

    private static final int MOST_COPIES = 5;

    private static final List<Integer> WEEKS = List.of(4, 13, 26, 52);

    /** Its name in texts. */
    String key() {
        return "print.row." + name().toLowerCase(Locale.ROOT);
    }

    /** The rows that a page has. */
    static List<PrintRow> of(PageKind kind) {
        List<PrintRow> rows = new ArrayList<>();
        if (kind.isChosen()) {
            rows.addAll(List.of(TABLES, PICK));
        }
        if (kind.hasQuestions()) {
            rows.add(1, ASKED);
        }
        if (kind.isNumbered() || kind == PageKind.SQUARES) {
            rows.add(COUNT);
        }
        if (kind.isChosen()) {
            rows.add(COPIES);
        }
        if (kind == PageKind.REPORT || kind == PageKind.CANDO) {
            rows.add(PERIOD);
        }
        boolean sized = kind == PageKind.PRACTICE
                || kind == PageKind.LIFE
                || kind == PageKind.MINUTE
                || kind == PageKind.CARDS
                || kind == PageKind.SQUARES;
        if (sized) {
            rows.add(LETTERS);
        }
        rows.add(PAPER);
        return rows;
    }

    /** The values it can have, the usual first or at {@link #usual}. */
    List<String> offered(PageKind kind) {
        return switch (this) {
            case TABLES ->
                Stream.concat(
                                Stream.of("met"),
                                IntStream.rangeClosed(1, Families.LARGEST_FACTOR)
                                        .mapToObj(Integer::toString))
                        .toList();
            case ASKED ->
                Stream.of(PageChoice.Asked.values())
                        .filter(a -> kind != PageKind.MINUTE || a != PageChoice.Asked.BOTH)
                        .map(PageChoice.Asked::key)
                        .toList();
            case PICK ->
                Stream.of(PageChoice.Pick.values()).map(PageChoice.Pick::key).toList();
            case COUNT ->
                IntStream.rangeClosed(1, 4)
                        .map(quarter -> Math.max(2, kind.most() * quarter / 4))
                        .distinct()
                        .mapToObj(Integer::toString)
                        .toList();
            case COPIES ->
                IntStream.rangeClosed(1, MOST_COPIES)
                        .mapToObj(Integer::toString)
                        .toList();
            case PERIOD ->
                Stream.concat(Stream.of("all"), WEEKS.stream().map(w -> Integer.toString(w)))
                        .toList();
            case LETTERS -> List.of("usual", "large");
            case PAPER -> Stream.of(Paper.values()).map(Paper::word).toList();
        };
    }

    /** The place of the value that holds at first. */
    int usual(PageKind kind) {
        return this == COUNT ? offered(kind).size() - 1 : 0;
    }

    /** A value in words. */
    String said(Words words, String value) {
        return switch (this) {
            case TABLES -> value.equals("met") ? words.say("print.tables.met") : words.say("print.tables.of", value);
            case ASKED -> words.say("print.asked." + value);
            case PICK -> words.say("print.pick." + value);
            case PERIOD -> value.equals("all") ? words.say("print.period.all") : words.say("print.period.weeks", value);
            case LETTERS -> words.say("print.letters." + value);
            case PAPER -> words.say("print.paper." + value);
            case COUNT, COPIES -> value;
        };
    }

    /** What was chosen in all rows of a page. */
    record Chosen(PageKind kind, Map<PrintRow, Integer> places) {
        Chosen {
            Map<PrintRow, Integer> copy = new EnumMap<>(PrintRow.class);
            copy.putAll(places);
            places = copy;
        }

        static Chosen usual(PageKind kind) {
            Map<PrintRow, Integer> places = new EnumMap<>(PrintRow.class);
            PrintRow.of(kind).forEach(row -> places.put(row, row.usual(kind)));
            return new Chosen(kind, places);
        }

        String value(PrintRow row) {
            return row.offered(kind).get(Objects.requireNonNull(places.getOrDefault(row, row.usual(kind))));
        }

        /** The next value, not past the first or the last. */
        Chosen changed(PrintRow row, int by) {
            int last = row.offered(kind).size() - 1;
            Map<PrintRow, Integer> next = new EnumMap<>(places);
            next.merge(row, by, (place, step) -> Math.max(0, Math.min(last, place + step)));
            return new Chosen(kind, next);
        }

        Layout layout() {
            return new Layout(
                    Paper.valueOf(value(PAPER).toUpperCase(Locale.ROOT)),
                    value(LETTERS).equals("large"));
        }

        PageOrder order(LocalDate today) {
            PageChoice usual = PageChoice.usual(kind);
            String table = value(TABLES);
            Optional<Portfolio.Period> period = value(PERIOD).equals("all")
                    ? Optional.empty()
                    : Optional.of(Portfolio.Period.weeks(Integer.parseInt(value(PERIOD)), today));
            PageChoice choice = new PageChoice(
                    table.equals("met") ? List.of() : List.of(Integer.parseInt(table)),
                    kind.hasQuestions()
                            ? PageChoice.Asked.valueOf(value(ASKED).toUpperCase(Locale.ROOT))
                            : usual.asked(),
                    PageChoice.Pick.valueOf(value(PICK).toUpperCase(Locale.ROOT)),
                    places.containsKey(COUNT) ? Integer.parseInt(value(COUNT)) : usual.count());
            return new PageOrder(kind, choice, Integer.parseInt(value(COPIES)), period);
        }
    }
}
