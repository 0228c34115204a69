// SPDX-License-Identifier: Apache-2.0
package fourfold.simulation;

import fourfold.facts.Fact;
import fourfold.facts.Families;
import fourfold.facts.Family;
import fourfold.facts.Operation;
import fourfold.facts.Question;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.SplittableRandom;

/**
 * A family's 36 weeks: drills in the afternoon on fixed days, up to 15 % of them missed, and a lesson on Mondays, two
 * hours before the drill. All of it hangs on the child's seed alone, never on the policy.
 *
 * <p>The lessons follow the usual order of teaching: a table's products for two weeks, its divisions four weeks after it
 * was begun, the hard tables last; what was taught before is asked again. A pause has neither drills nor lessons, and the
 * order of teaching waits.
 */
public final class HomeCalendar implements Calendar {
    private static final int WEEKS = 36;
    private static final int[] FOUR_DAYS = {0, 1, 3, 4};
    private static final int[] TWO_DAYS = {0, 3};
    private static final int[] TABLES = {2, 5, 10, 3, 4, 8, 6, 9, 7};
    private static final int WEEKS_PER_TABLE = 2;
    private static final int WEEKS_TO_DIVISION = 4;
    private static final int ASKED_OF_THE_NEW = 6;
    private static final int ASKED_OF_THE_OLD = 8;
    private static final double MOST_MISSED = 0.15;

    private final List<Instant> drills;
    private final List<Lesson> lessons;

    private HomeCalendar(long seed, int[] days, List<Pause> pauses) {
        SplittableRandom dice = new SplittableRandom(seed * 77 + 5);
        double share = dice.nextDouble(0, MOST_MISSED);
        Duration late = Duration.ofHours(15).plusSeconds(dice.nextInt(0, 7200));
        SplittableRandom teaching = dice.split();
        List<Instant> held = new ArrayList<>();
        List<Lesson> given = new ArrayList<>();
        int taught = 0;
        for (int week = 0; week < WEEKS; week++) {
            int here = week;
            if (pauses.stream().anyMatch(p -> here >= p.first && here < p.first + p.weeks)) {
                continue;
            }
            Instant monday = SchoolYear.START.plus(Duration.ofDays(7L * week)).plus(late);
            for (int day : days) {
                Instant at = monday.plus(Duration.ofDays(day)).plusSeconds(dice.nextInt(0, 600));
                if (dice.nextDouble() >= share || held.isEmpty()) {
                    held.add(at);
                }
            }
            given.add(lesson(monday.minus(Duration.ofHours(2)), taught, teaching));
            taught++;
        }
        drills = List.copyOf(held);
        lessons = List.copyOf(given);
    }

    /** Weeks without drills and lessons: the first one, counted from 0, and how many. */
    private record Pause(int first, int weeks) {}

    /** Monday, Tuesday, Thursday and Friday. */
    public static HomeCalendar fourDays(long seed) {
        return new HomeCalendar(seed, FOUR_DAYS, List.of());
    }

    /** Monday and Thursday. */
    public static HomeCalendar twoDays(long seed) {
        return new HomeCalendar(seed, TWO_DAYS, List.of());
    }

    /** Four days a week with three weeks off after 13 weeks and again after 25. */
    public static HomeCalendar twoBreaks(long seed) {
        return new HomeCalendar(seed, FOUR_DAYS, List.of(new Pause(13, 3), new Pause(25, 3)));
    }

    /** Four days a week with a summer of ten weeks after 13 weeks. */
    public static HomeCalendar summer(long seed) {
        return new HomeCalendar(seed, FOUR_DAYS, List.of(new Pause(13, 10)));
    }

    private static Lesson lesson(Instant at, int week, SplittableRandom dice) {
        List<Fact> shown = new ArrayList<>();
        List<Question> asked = new ArrayList<>();
        int now = week / WEEKS_PER_TABLE;
        teach(now, Operation.MULTIPLY, shown, asked, dice);
        teach(now - WEEKS_TO_DIVISION / WEEKS_PER_TABLE, Operation.DIVIDE, shown, asked, dice);
        List<Question> old = new ArrayList<>();
        for (int i = 0; i < Math.min(now, TABLES.length); i++) {
            old.addAll(questions(TABLES[i], Operation.MULTIPLY));
            if (i < now - WEEKS_TO_DIVISION / WEEKS_PER_TABLE) {
                old.addAll(questions(TABLES[i], Operation.DIVIDE));
            }
        }
        draw(old, ASKED_OF_THE_OLD, asked, dice);
        return new Lesson(at, shown, asked);
    }

    private static void teach(
            int place, Operation operation, List<Fact> shown, List<Question> asked, SplittableRandom dice) {
        if (place < 0 || place >= TABLES.length) {
            return;
        }
        List<Question> table = questions(TABLES[place], operation);
        for (Question question : table) {
            shown.add(question.fact());
        }
        draw(table, ASKED_OF_THE_NEW, asked, dice);
    }

    /** A table's questions as it is taught: one product, or the division by the table's number, for each family. */
    private static List<Question> questions(int table, Operation operation) {
        List<Question> questions = new ArrayList<>();
        for (Family family : Families.inTable(table)) {
            int other = family.partnerOf(table);
            questions.add(
                    operation == Operation.MULTIPLY
                            ? Question.product(other, table)
                            : Question.quotient(family, table));
        }
        return questions;
    }

    private static void draw(List<Question> from, int count, List<Question> into, SplittableRandom dice) {
        List<Question> mixed = new ArrayList<>(from);
        Collections.shuffle(mixed, new Random(dice.nextLong()));
        into.addAll(mixed.subList(0, Math.min(count, mixed.size())));
    }

    @Override
    public int weeks() {
        return WEEKS;
    }

    @Override
    public List<Instant> drills() {
        return drills;
    }

    @Override
    public List<Lesson> lessons() {
        return lessons;
    }
}
