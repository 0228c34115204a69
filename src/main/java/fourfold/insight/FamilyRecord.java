// SPDX-License-Identifier: Apache-2.0
package fourfold.insight;

import fourfold.facts.Family;
import fourfold.facts.Question;
import fourfold.facts.Trace;
import fourfold.log.Answer;
import fourfold.memory.MotorTime;
import fourfold.progress.WrongAnswer;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Consumer;

/**
 * What the log holds of one family: give it every answer of the child, oldest first, then ask for its traces. What was
 * answered before the family was begun again is left out by {@link #since}.
 */
public final class FamilyRecord implements Consumer<Answer> {
    /** 1 January 1970 was a Thursday: weeks are counted from the Monday before. */
    private static final int DAYS_FROM_MONDAY = 3;

    private final Family family;
    private final Map<Trace, Sum> sums = new LinkedHashMap<>();
    private final List<Timed> answers = new ArrayList<>();
    private MotorTime motor = MotorTime.unknown();

    /** An answer of the family, and how long the child thought. */
    private record Timed(Answer answer, Optional<Duration> thinking) {}

    /** An empty record. */
    public FamilyRecord(Family family) {
        this.family = family;
        family.traces().forEach(trace -> sums.put(trace, new Sum()));
    }

    /**
     * The week of a local day, counted from Monday, 29 December 1969.
     *
     * @param localDay days since 1 January 1970
     */
    public static long week(long localDay) {
        return Math.floorDiv(localDay + DAYS_FROM_MONDAY, 7);
    }

    @Override
    public void accept(Answer answer) {
        motor = motor.after(answer);
        Optional<Question> question = answer.question();
        if (question.isPresent()
                && answer.purpose().isFromMemory()
                && question.get().family().equals(family)) {
            take(new Timed(answer, motor.thinking(answer)));
        }
    }

    private void take(Timed timed) {
        answers.add(timed);
        Trace trace = timed.answer.question().orElseThrow().trace();
        Objects.requireNonNull(sums.get(trace)).take(timed.answer, timed.thinking);
    }

    /** The record of what was answered since then, as levels count it; all of it if that is empty. */
    public FamilyRecord since(Optional<Instant> begunAgain) {
        FamilyRecord later = new FamilyRecord(family);
        answers.stream()
                .filter(t -> begunAgain
                        .filter(since -> t.answer.askedAt().isBefore(since))
                        .isEmpty())
                .forEach(later::take);
        return later;
    }

    /** What the log holds of one of the family's traces. */
    public TraceRecord trace(Trace trace) {
        return Objects.requireNonNull(sums.get(trace)).record();
    }

    /** The wrong numbers of the whole family, the newest first, at most {@code most}. */
    public List<TraceRecord.Wrong> wrong(int most) {
        return sums.values().stream()
                .flatMap(s -> s.record().wrong().stream())
                .sorted(Comparator.comparingLong(TraceRecord.Wrong::lastDay)
                        .thenComparingInt(TraceRecord.Wrong::times)
                        .reversed())
                .limit(most)
                .toList();
    }

    /** Median thinking times of the whole family by week, oldest first. */
    public List<TraceRecord.Week> weeks() {
        Map<Long, List<Double>> all = new TreeMap<>();
        for (Sum sum : sums.values()) {
            sum.weeks.forEach((week, times) ->
                    all.computeIfAbsent(week, w -> new ArrayList<>()).addAll(times));
        }
        return medians(all);
    }

    private static List<TraceRecord.Week> medians(Map<Long, List<Double>> weeks) {
        List<TraceRecord.Week> medians = new ArrayList<>();
        weeks.forEach((week, times) ->
                Spread.of(numbers(times)).ifPresent(s -> medians.add(new TraceRecord.Week(week, s.median()))));
        return medians;
    }

    private static double[] numbers(List<Double> list) {
        return list.stream().mapToDouble(Double::doubleValue).toArray();
    }

    /** The sum of one trace's answers. */
    private static final class Sum {
        private final List<Double> times = new ArrayList<>();
        private final Map<Long, List<Double>> weeks = new TreeMap<>();
        private final Map<WrongAnswer, long[]> wrong = new HashMap<>();
        private final Map<TraceRecord.Outcome, Integer> answers = new EnumMap<>(TraceRecord.Outcome.class);

        void take(Answer answer, Optional<Duration> thinking) {
            answers.merge(TraceRecord.Outcome.of(answer), 1, Integer::sum);
            if (answer.isCorrect()) {
                thinking.map(t -> t.toMillis() / 1000.0).ifPresent(seconds -> {
                    times.add(seconds);
                    weeks.computeIfAbsent(week(answer.localDay()), w -> new ArrayList<>())
                            .add(seconds);
                });
            }
            WrongAnswer.of(answer).ifPresent(w -> {
                long[] count = wrong.computeIfAbsent(w, k -> new long[2]);
                count[0]++;
                count[1] = answer.localDay();
            });
        }

        TraceRecord record() {
            List<Double> newest = times.subList(Math.max(0, times.size() - TraceRecord.TIMES), times.size());
            List<TraceRecord.Wrong> counted = wrong.entrySet().stream()
                    .map(e -> new TraceRecord.Wrong(e.getKey(), (int) e.getValue()[0], e.getValue()[1]))
                    .sorted(Comparator.comparingInt(TraceRecord.Wrong::times)
                            .thenComparingLong(TraceRecord.Wrong::lastDay)
                            .reversed())
                    .toList();
            return new TraceRecord(answers, Spread.of(numbers(newest)), medians(weeks), counted);
        }
    }
}
