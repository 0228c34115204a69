// SPDX-License-Identifier: Apache-2.0
package fourfold.simulation;

import fourfold.facts.Families;
import fourfold.facts.Family;
import fourfold.facts.Question;
import fourfold.log.Answer;
import fourfold.scheduling.Scheduler;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;

/** Measures one child's year under one policy. "Fluent" is the truth of the child, never the program's own level. */
final class Year implements SchoolYear.Watcher {
    /** Right within this, hands counted, is quick. */
    static final Duration LIMIT = Duration.ofSeconds(3);

    private static final double SURE = 0.9;
    private static final Map<Integer, Measure> WEEKS =
            Map.of(6, Measure.WEEK_6, 12, Measure.WEEK_12, 24, Measure.WEEK_24, 36, Measure.WEEK_36);
    private static final List<List<Question>> QUESTIONS =
            Families.all().stream().map(Family::questions).toList();

    private final Watched child;
    private final SchoolYear year;
    private final Calendar calendar;
    private final Policy policy;
    private final Probes probes;
    private final List<Answer> answers = new ArrayList<>();
    private final List<DrillSequence> drills = new ArrayList<>();
    private final Waits waits = new Waits();
    private final Map<Measure, Double> values = new EnumMap<>(Measure.class);
    private final boolean[] fluent = new boolean[Families.COUNT];

    private Year(SimulatedLearnerKind kind, Policy policy, long seed) {
        SimulatedLearner learner = kind.create(seed);
        this.policy = policy;
        calendar = kind.calendar(seed);
        child = new Watched(learner, calendar.drills());
        Scheduler scheduler = policy.schedulerFor(learner);
        year = new SchoolYear(child, scheduler, policy.blank(), calendar, seed, answers::add);
        probes = new Probes(policy, scheduler, learner, seed);
    }

    /** The outcome for the child of that kind and seed. */
    static Outcome of(SimulatedLearnerKind kind, Policy policy, long seed) {
        Year year = new Year(kind, policy, seed);
        year.year.run(year.calendar.weeks(), policy.practises(), year);
        return year.outcome();
    }

    /** Whether the child answers the question rightly within three seconds with a chance of .9 or more at that moment. */
    static boolean isFluent(SimulatedLearner child, Question question, Instant at) {
        return child.chanceRightWithin(question, at, LIMIT) >= SURE;
    }

    @Override
    public void drilled(int drill, Instant next) {
        DrillSequence sequence = DrillSequence.of(answers, year.now());
        drills.add(sequence);
        answers.forEach(probes::note);
        long day = Duration.between(SchoolYear.START, year.now()).toDays();
        // What was fluent is still what was found before this drill.
        waits.take(day, answers, sequence, f -> fluent[f]);
        answers.clear();
        int count = look(next);
        reach(28, Measure.TO_28, count);
        reach(50, Measure.TO_50, count);
        probes.draw(year.progress(), year.now(), next);
    }

    private void reach(int families, Measure measure, int count) {
        if (count >= families) {
            values.putIfAbsent(measure, year.minutes());
        }
    }

    @Override
    public void weekEnded(int week, Instant end) {
        if (WEEKS.containsKey(week)) {
            values.put(WEEKS.get(week), (double) look(end));
        }
    }

    /** Which families are fluent at a moment, and how many. */
    private int look(Instant at) {
        int count = 0;
        for (int f = 0; f < fluent.length; f++) {
            fluent[f] = true;
            for (Question question : QUESTIONS.get(f)) {
                fluent[f] = fluent[f] && isFluent(child, question, at);
            }
            count += fluent[f] ? 1 : 0;
        }
        return count;
    }

    private Outcome outcome() {
        keep();
        if (policy.practises()) {
            values.putIfAbsent(Measure.TO_28, Outcome.NEVER);
            values.putIfAbsent(Measure.TO_50, Outcome.NEVER);
            values.put(Measure.MET, (double) waits.met());
            values.put(Measure.WAIT, (double) waits.longest());
            values.put(Measure.WAIT_READY, (double) waits.longestReady());
            need();
            tell();
        }
        return new Outcome(values, probes.all());
    }

    private void keep() {
        Instant end = policy.practises() ? year.now() : SchoolYear.START.plus(Duration.ofDays(7L * calendar.weeks()));
        Instant soon = end.plus(Duration.ofDays(14));
        Instant late = end.plus(Duration.ofDays(60));
        values.put(Measure.KEPT_14, shareRight(soon, f -> true));
        values.put(Measure.KEPT_60, shareRight(late, f -> true));
        values.put(Measure.MET_KEPT_14, shareRight(soon, waits::isMet));
        values.put(Measure.MET_KEPT_60, shareRight(late, waits::isMet));
    }

    private double shareRight(Instant at, Predicate<Family> which) {
        return Families.all().stream()
                .filter(which)
                .flatMap(f -> QUESTIONS.get(f.index()).stream())
                .mapToDouble(question -> child.chanceRightWithin(question, at, LIMIT))
                .average()
                .orElse(Double.NaN);
    }

    private void need() {
        double asked = child.asked();
        values.put(Measure.OWED, child.owed() / asked);
        values.put(Measure.FIRM, child.firm() / asked);
        values.put(Measure.FIRM_OWED, child.firmOwed() / asked);
        values.put(Measure.LASTING, child.lasting() / asked);
        values.put(Measure.LASTING_OWED, child.lastingOwed() / asked);
    }

    private void tell() {
        double asked = sum(DrillSequence::asked);
        values.put(Measure.RIGHT, sum(DrillSequence::right) / asked);
        values.put(Measure.UNDER_85, mean(d -> d.right() < 0.85 * d.asked() ? 1 : 0));
        values.put(Measure.UNDER_80, mean(d -> d.right() < 0.8 * d.asked() ? 1 : 0));
        values.put(Measure.MOST_ASKED, mean(DrillSequence::mostAsked));
        values.put(Measure.MOST_ASKED_EVER, most(DrillSequence::mostAsked));
        values.put(Measure.CYCLE, mean(DrillSequence::cycle));
        values.put(Measure.CYCLE_EVER, most(DrillSequence::cycle));
        values.put(Measure.LESSONS, mean(DrillSequence::lessons));
        values.put(Measure.LATE_LESSONS, mean(DrillSequence::lateLessons));
        values.put(Measure.LAST_RIGHT, mean(d -> d.lastRight() ? 1 : 0));
        values.put(Measure.PER_DRILL, asked / drills.size());
        values.put(Measure.PER_MINUTE, asked / year.minutes());
    }

    private double sum(java.util.function.ToIntFunction<DrillSequence> of) {
        return drills.stream().mapToInt(of).sum();
    }

    private double mean(java.util.function.ToIntFunction<DrillSequence> of) {
        return sum(of) / drills.size();
    }

    private double most(java.util.function.ToIntFunction<DrillSequence> of) {
        return Arrays.stream(drills.stream().mapToInt(of).toArray()).max().orElse(0);
    }
}
