// SPDX-License-Identifier: Apache-2.0
package fourfold.progress;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;

/**
 * Days from one to another, both included.
 *
 * @param first the first day
 * @param last the last day, not before the first
 */
public record DateSpan(LocalDate first, LocalDate last) {
    private static final String BETWEEN = "..";

    public DateSpan {
        if (last.isBefore(first)) {
            throw new IllegalArgumentException("a span of days ends before it begins: " + first + BETWEEN + last);
        }
    }

    /**
     * The span that is written {@code 2026-12-21..2027-01-03}, or as one day (ISO 8601).
     *
     * @throws IllegalArgumentException if the text is neither, or the last day is before the first
     */
    public static DateSpan parse(String text) {
        int between = text.indexOf(BETWEEN);
        return between < 0
                ? new DateSpan(day(text), day(text))
                : new DateSpan(day(text.substring(0, between)), day(text.substring(between + BETWEEN.length())));
    }

    /**
     * A day as ISO 8601 writes it, {@code 2026-12-21}.
     *
     * @throws IllegalArgumentException if it is none, or not of the years 1970 to 2999
     */
    static LocalDate day(String text) {
        try {
            LocalDate day = LocalDate.parse(text.strip());
            if (day.getYear() < 1970 || day.getYear() > 2999) {
                throw new IllegalArgumentException("a day is from 1970 to 2999, not " + text);
            }
            return day;
        } catch (java.time.DateTimeException e) {
            throw new IllegalArgumentException("a day is written 2026-12-21, not \"" + text + "\"", e);
        }
    }

    /** Whether the day is one of these. */
    public boolean contains(LocalDate day) {
        return !day.isBefore(first) && !day.isAfter(last);
    }

    /** The days of some spans with this one's added, as spans that neither meet nor touch, earliest first. */
    List<DateSpan> addedTo(List<DateSpan> spans) {
        LocalDate from = first;
        LocalDate to = last;
        List<DateSpan> all = new ArrayList<>();
        for (DateSpan span : spans) {
            if (span.last.plusDays(1).isBefore(from) || span.first.minusDays(1).isAfter(to)) {
                all.add(span);
            } else {
                from = span.first.isBefore(from) ? span.first : from;
                to = span.last.isAfter(to) ? span.last : to;
            }
        }
        all.add(new DateSpan(from, to));
        all.sort(java.util.Comparator.comparing(DateSpan::first));
        return List.copyOf(all);
    }

    /** The days of some spans without this one's. */
    List<DateSpan> takenFrom(List<DateSpan> spans) {
        List<DateSpan> left = new ArrayList<>();
        for (DateSpan span : spans) {
            if (span.first.isBefore(first)) {
                left.add(new DateSpan(span.first, earlier(span.last, first.minusDays(1))));
            }
            if (span.last.isAfter(last)) {
                left.add(new DateSpan(later(span.first, last.plusDays(1)), span.last));
            }
        }
        return List.copyOf(left);
    }

    private static LocalDate earlier(LocalDate a, LocalDate b) {
        return a.isBefore(b) ? a : b;
    }

    private static LocalDate later(LocalDate a, LocalDate b) {
        return a.isAfter(b) ? a : b;
    }

    /** As it is parsed. */
    @Override
    public String toString() {
        return first.equals(last) ? first.toString() : first + BETWEEN + last;
    }
}
