// SPDX-License-Identifier: Apache-2.0
package fourfold.insight;

import fourfold.facts.Families;
import fourfold.facts.Family;
import fourfold.facts.Operation;
import fourfold.facts.Prompt;
import fourfold.progress.Mastery;
import java.time.Duration;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.List;
import java.util.Optional;

/**
 * What a child did and came to in a period: one source for the printed report and for its JSON.
 *
 * @param name the child's nickname
 * @param period its first and last day
 * @param families each of the 55, in the order of the stairs
 * @param tables all ten, in the order in which they open
 * @param practice how much was practised in the period
 * @param rates by month of the period, oldest first; months without a rate are left out
 * @param sample answers of the period, the newest of each question
 */
public record Portfolio(
        String name,
        Period period,
        List<OfFamily> families,
        List<OfTable> tables,
        Practice practice,
        List<MonthRates> rates,
        List<Sampled> sample) {
    public Portfolio {
        families = List.copyOf(families);
        tables = List.copyOf(tables);
        rates = List.copyOf(rates);
        sample = List.copyOf(sample);
    }

    /**
     * Days, both counted in.
     *
     * @param last not before the first
     */
    public record Period(LocalDate first, LocalDate last) {
        public Period {
            if (last.isBefore(first)) {
                throw new IllegalArgumentException("a period ends on " + last + " and begins on " + first);
            }
        }

        /** So many weeks up to a day. */
        public static Period weeks(int weeks, LocalDate last) {
            return new Period(last.minusWeeks(weeks).plusDays(1), last);
        }
    }

    /**
     * A level and the day on which it was first reached.
     *
     * @param level above new
     */
    public record Reached(Mastery level, LocalDate day) {}

    /**
     * One family.
     *
     * @param then the highest level before the period
     * @param now the highest level at its end
     * @param reached the levels with their days, the lowest first
     */
    public record OfFamily(Family family, Mastery then, Mastery now, List<Reached> reached) {
        public OfFamily {
            reached = List.copyOf(reached);
        }
    }

    /**
     * One table of ten families.
     *
     * @param table 1 to 10
     * @param levels how many of its families have reached each level, beginning with acquiring, at the end of the period
     * @param reached the levels that all ten have reached, with the day of the last of them
     */
    public record OfTable(int table, List<Integer> levels, List<Reached> reached) {
        public OfTable {
            levels = List.copyOf(levels);
            reached = List.copyOf(reached);
        }
    }

    /**
     * How much was practised.
     *
     * @param days on how many days there was a drill, a page or questions said aloud
     * @param spent time at questions: from each question to the next of its drill, a minute at most, and the times of pages
     * @param screen at the screen
     * @param paper on pages
     * @param aloud said aloud
     * @param ticked other practice away from the screen that was ticked off
     */
    public record Practice(int days, Duration spent, Count screen, Count paper, Count aloud, List<LocalDate> ticked) {
        public Practice {
            ticked = List.copyOf(ticked);
        }
    }

    /**
     * Questions asked from memory.
     *
     * @param drills in how many drills, pages or piles
     * @param asked how many questions
     * @param right how many of them were right
     */
    public record Count(int drills, int asked, int right) {}

    /**
     * Digits correct a minute in a month: the median of its drills.
     *
     * @param products empty if no drill of the month had enough timed answers
     * @param quotients empty if no drill of the month had enough timed answers
     */
    public record MonthRates(YearMonth month, Optional<Double> products, Optional<Double> quotients) {
        /** That of one operation. */
        public Optional<Double> of(Operation operation) {
            return operation == Operation.MULTIPLY ? products : quotients;
        }
    }

    /**
     * One answer.
     *
     * @param prompt what was asked
     * @param typed the digits; empty for no answer
     * @param whole how long it took; empty if it was not timed
     * @param day where the child was
     */
    public record Sampled(Prompt prompt, String typed, Optional<Duration> whole, LocalDate day) {
        /** Whether it was right. */
        public boolean isRight() {
            return typed.equals(Integer.toString(prompt.expected()));
        }
    }

    /** How many families have reached a level, or a higher one. */
    public int families(Mastery least, boolean atTheEnd) {
        return (int) families.stream()
                .filter(f -> (atTheEnd ? f.now() : f.then()).atLeast(least))
                .count();
    }

    /** The families that reached a level in the period and had not before. */
    public List<Family> gained(Mastery level) {
        return families.stream()
                .filter(f -> f.now().atLeast(level) && !f.then().atLeast(level))
                .map(OfFamily::family)
                .toList();
    }

    /** How many families there are. */
    public static int all() {
        return Families.COUNT;
    }
}
