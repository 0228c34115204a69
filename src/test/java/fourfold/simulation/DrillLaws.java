// SPDX-License-Identifier: Apache-2.0
package fourfold.simulation;

import fourfold.facts.Family;
import fourfold.facts.Operation;
import fourfold.facts.Question;
import fourfold.facts.Trace;
import fourfold.log.Answer;
import fourfold.log.DrillSession;
import fourfold.log.Purpose;
import fourfold.outlook.Learner;
import fourfold.outlook.PlayedDrill;
import fourfold.progress.Mastery;
import fourfold.progress.Progress;
import fourfold.progress.Setting;
import fourfold.scheduling.LastingGain;
import fourfold.scheduling.Scheduler;
import fourfold.scheduling.Turn;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.UUID;

/**
 * Plays whole drills and holds each against the laws of a drill as a sequence, reckoned from the answers alone, apart from
 * the policy's own books.
 */
final class DrillLaws {
    static final double SURE = 0.95;
    private static final double HARD = 0.8;
    private static final int WELL_APART = 5;
    private static final int FEW = 8;

    /** With so many families a fact missed twice rests until the next drill. */
    private static final int ENOUGH_TO_REST = 12;

    private static final Duration SHORTEST = Duration.ofMinutes(5);
    private static final Duration LATE = Duration.ofMinutes(2);
    private static final int PROMISED_WITHIN = 20;

    private final Map<String, List<String>> breaches = new TreeMap<>();
    private final Map<String, Integer> counts = new TreeMap<>();

    /** What was broken: the law, and where. */
    Map<String, List<String>> breaches() {
        return breaches;
    }

    /** Adds what others found. */
    void add(DrillLaws others) {
        others.breaches.forEach((law, where) ->
                breaches.computeIfAbsent(law, l -> new ArrayList<>()).addAll(where));
        others.counts.forEach((what, count) -> counts.merge(what, count, Integer::sum));
    }

    /** What is told and no law. */
    Map<String, Integer> counts() {
        return counts;
    }

    /** Writes down what the policy thought of each question when it chose it. */
    private static final class Noting implements Scheduler {
        private final Scheduler policy = new LastingGain();
        private final List<Double> chances = new ArrayList<>();

        @Override
        public Optional<Turn> next(Progress progress, Instant at, long seed) {
            Optional<Turn> turn = policy.next(progress, at, seed);
            turn.filter(t -> t.purpose() != Purpose.INTRODUCE)
                    .ifPresent(t -> chances.add(progress.memory()
                            .forecast(t.question().traceIndex(), at.toEpochMilli())
                            .chanceRight()));
            return turn;
        }
    }

    /** A child's drills, one after the other, each held against the laws. */
    Progress play(Learner child, String name, Progress blank, List<Instant> starts, long seed) {
        Progress progress = blank;
        Set<Family> promised = Set.of();
        for (int i = 0; i < starts.size(); i++) {
            Noting noting = new Noting();
            List<Answer> answers = new ArrayList<>();
            PlayedDrill play = new PlayedDrill(child, noting, answers::add);
            Duration planned = Duration.ofMinutes(progress.steering().settings().minutes());
            DrillSession session = new DrillSession(
                    new UUID(seed, i + 1), new UUID(seed, -1), starts.get(i), 0, planned, seed * 1000 + i);
            Progress after = play.play(progress, session);
            String where = name + " " + seed + ", drill " + (i + 1);
            look(where, progress, after, answers, noting.chances, play.now(), promised);
            promised = new HashSet<>(after.recent().missed());
            promised.removeIf(f -> !after.isMet(f));
            progress = after;
        }
        return progress;
    }

    /** The whole drill, if it is asked for: each question, with a mark where it was missed. */
    private static String detail(List<Answer> answers) {
        return System.getProperty("laws.show") == null
                ? ""
                : " in "
                        + answers.stream()
                                .map(a -> a.prompt() + (a.isCorrect() ? "" : "!"))
                                .toList();
    }

    private void breach(String law, String where) {
        breaches.computeIfAbsent(law, l -> new ArrayList<>()).add(where);
    }

    private void count(String what) {
        counts.merge(what, 1, Integer::sum);
    }

    private void look(
            String where,
            Progress before,
            Progress after,
            List<Answer> answers,
            List<Double> chances,
            Instant end,
            Set<Family> promised) {
        count("drills");
        List<Answer> asked =
                answers.stream().filter(a -> a.purpose().isFromMemory()).toList();
        if (asked.isEmpty()) {
            count("empty drills");
            return;
        }
        // A division in its other form, 7 × ? = 56, counts as a division in every law; its sign has a law of its own.
        asked.stream()
                .filter(a -> a.prompt() instanceof Question q && q.operation() == Operation.DIVIDE)
                .filter(a -> !after.hasSign(a.question().orElseThrow().trace()))
                .forEach(a -> breach("a sign before its date", where + ": " + a.prompt()));
        for (int i = 1; i < asked.size(); i++) {
            int product = asked.get(i).question().orElseThrow().family().product();
            if (asked.get(i - 1).question().orElseThrow().family().product() == product) {
                breach("a product twice in a row", where + ": " + asked.get(i).prompt());
            }
        }
        boolean few = askedBefore(before) < FEW;
        Map<Trace, Integer> times = new HashMap<>();
        Map<Trace, Integer> last = new HashMap<>();
        Map<Family, Integer> owed = new HashMap<>();
        Set<Trace> missed = new HashSet<>();
        Set<Family> early = new HashSet<>();
        int inARow = 0;
        for (int i = 0; i < asked.size(); i++) {
            Question question = asked.get(i).question().orElseThrow();
            Trace trace = question.trace();
            Family family = question.family();
            if (i < PROMISED_WITHIN) {
                early.add(family);
            }
            if (inARow >= 2) {
                count("after two errors");
                count(chances.get(i) >= SURE ? "after two errors: sure" : "after two errors: less than sure");
            }
            // Told and no law: what is owed may be hard twice over, and little material brings a fact back sooner.
            count("questions");
            if (chances.get(i) < HARD) {
                count("hard");
                String many = before.families(Mastery.ACQUIRING) >= ENOUGH_TO_REST ? ", twelve families and more" : "";
                count((i > 0 && chances.get(i - 1) < HARD ? "hard after hard" : "hard after easy") + many);
            }
            if (before.families(Mastery.ACQUIRING) >= ENOUGH_TO_REST && last.containsKey(trace)) {
                count("again, twelve families and more");
                if (i - last.get(trace) < WELL_APART) {
                    count("again within five, twelve families and more");
                }
            }
            if (before.families(Mastery.ACQUIRING) >= ENOUGH_TO_REST) {
                List<Answer> shortlyBefore = asked.subList(Math.max(0, i - 3), i);
                count(
                        shortlyBefore.stream().anyMatch(a -> isMixedUp(before, a, family))
                                ? "a family easily mixed up within three, twelve families and more"
                                : "none easily mixed up within three, twelve families and more");
            }
            int time = times.merge(trace, 1, Integer::sum);
            // Rather once more than a product without its inverse, or an error as the last of all.
            boolean owing = owed.keySet().stream().anyMatch(after::isMet);
            int most = most(few, missed.contains(trace)) + (owing || inARow > 0 ? 1 : 0);
            if (time > most) {
                breach(
                        "more than its times",
                        where + ": " + question + ", " + time + " times of " + most + " at " + (i + 1) + " of "
                                + asked.size()
                                + detail(asked));
            }
            if (last.containsKey(trace) && i - last.get(trace) < 3) {
                breach("the same too soon", where + ": " + question);
            }
            last.put(trace, i);
            if (question.operation() == Operation.MULTIPLY) {
                owed.putIfAbsent(family, i);
            } else if (owed.containsKey(family)) {
                if (i - owed.remove(family) < 3) {
                    breach("inverse too soon", where + ": " + question);
                }
            }
            inARow = asked.get(i).isCorrect() ? 0 : inARow + 1;
            if (!asked.get(i).isCorrect()) {
                missed.add(trace);
            }
        }
        // With fewer than three families left nothing could stand between a product and its inverse.
        boolean room = isAnythingLeft(after, asked);
        owed.keySet().stream()
                .filter(f -> room && after.isMet(f))
                .forEach(f -> breach("no inverse", where + ": " + f + detail(asked)));
        if (DrillSequence.longestCycle(asked.stream()
                        .map(a -> a.question().orElseThrow().trace())
                        .toList())
                > 0) {
            breach("a block said twice", where);
        }
        promised.stream()
                .filter(f -> !early.contains(f))
                .forEach(f -> breach("promised and not kept", where + ": " + f));
        lessons(where, before, after, answers, asked, end);
        ending(where, before, after, asked, chances, end);
    }

    /** Whether they share a factor, their products lie within twice that factor, and one of them is not accurate yet. */
    private static boolean isMixedUp(Progress before, Answer earlier, Family family) {
        Family other = earlier.question().orElseThrow().family();
        int distance = Math.abs(other.product() - family.product());
        boolean near = !other.equals(family)
                && ((family.contains(other.low()) && distance <= 2 * other.low())
                        || (family.contains(other.high()) && distance <= 2 * other.high()));
        return near
                && !(before.level(other).atLeast(Mastery.ACCURATE)
                        && before.level(family).atLeast(Mastery.ACCURATE));
    }

    private static int most(boolean few, boolean missed) {
        return few ? 5 : missed ? 4 : 3;
    }

    /** Of how many families met a division was asked: what was only shown or tried gives nothing to ask between yet. */
    private static long askedBefore(Progress before) {
        return fourfold.facts.Families.all().stream()
                .filter(f -> before.isMet(f)
                        && f.traces().stream()
                                .anyMatch(t -> t.operation() == Operation.DIVIDE
                                        && before.mastery(t).asked() > 0))
                .count();
    }

    private void lessons(
            String where, Progress before, Progress after, List<Answer> answers, List<Answer> asked, Instant end) {
        Set<Family> taught = new HashSet<>();
        int inARow = 0;
        Optional<Answer> wrong = Optional.empty();
        for (Answer answer : answers) {
            boolean again =
                    wrong.filter(m -> m.question().equals(answer.question())).isPresent();
            Optional<Family> family = answer.question().map(Question::family);
            if (answer.purpose() == Purpose.INTRODUCE && !again && taught.add(family.orElseThrow())) {
                if (Duration.between(answer.askedAt(), end).compareTo(LATE) < 0 && isAnythingLeft(after, asked)) {
                    breach("a lesson late", where + ": " + family.get());
                }
                if (inARow >= 2) {
                    breach("a lesson after errors", where + ": " + family.get());
                }
            }
            if (answer.purpose().isFromMemory()) {
                inARow = answer.isCorrect() ? 0 : inARow + 1;
            }
            wrong = answer.isCorrect() ? Optional.empty() : Optional.of(answer);
        }
        // Two families leave nothing to ask between: who has met none may meet four, unless the parent chose a number.
        boolean first = askedBefore(before) == 0;
        boolean chosen = after.steering().settings().chosen().containsKey(Setting.NEW);
        int most = after.steering().settings().newInDrill();
        if (taught.size() > (first && !chosen ? Math.max(4, most) : most)) {
            breach("more lessons than set", where + ": " + taught + detail(answers));
        }
    }

    private void ending(
            String where, Progress before, Progress after, List<Answer> asked, List<Double> chances, Instant end) {
        Answer last = asked.get(asked.size() - 1);
        count(last.isCorrect() ? "ended right" : "ended wrong");
        count(chances.get(chances.size() - 1) >= SURE ? "ended sure" : "ended less than sure");
        Duration practised = after.drill().orElseThrow().practised(end);
        Duration planned = after.drill().orElseThrow().session().planned();
        if (practised.compareTo(planned) < 0) {
            count("ended early");
            boolean open = fourfold.facts.Families.all().stream()
                    .anyMatch(f -> after.isMet(f) && !after.level(f).atLeast(Mastery.FLUENT));
            if (practised.compareTo(SHORTEST) < 0 && open && mayAnyFollow(before, after, asked)) {
                breach(
                        "ended before five minutes",
                        where + ": " + practised.toSeconds() + " s, " + after.families(Mastery.ACQUIRING) + " families"
                                + detail(asked));
            }
        }
    }

    /** Whether a division could still have come by the other laws: then the drill was not to end. */
    private static boolean mayAnyFollow(Progress before, Progress after, List<Answer> asked) {
        boolean few = askedBefore(before) < FEW;
        List<Trace> traces =
                asked.stream().map(a -> a.question().orElseThrow().trace()).toList();
        return fourfold.facts.Families.traces().stream()
                .filter(t ->
                        t.operation() == Operation.DIVIDE && after.mastery(t).isMet())
                .filter(t -> after.isMet(t.family()) && !after.isHeld(t.family()) && !after.isBeforeItsDate(t.family()))
                .anyMatch(t -> {
                    long times = traces.stream().filter(t::equals).count();
                    long errors = asked.stream()
                            .filter(a -> !a.isCorrect()
                                    && a.question().orElseThrow().trace().equals(t))
                            .count();
                    // Its other facts within three questions would give it away.
                    boolean apart = traces.subList(Math.max(0, traces.size() - 2), traces.size()).stream()
                            .noneMatch(other -> other.family().equals(t.family()));
                    Trace last = traces.get(traces.size() - 1);
                    List<Trace> longer = new ArrayList<>(traces);
                    longer.add(t);
                    return times < most(few, errors > 0)
                            && apart
                            && (errors < 2 || after.families(Mastery.ACQUIRING) < ENOUGH_TO_REST)
                            && last.family().product() != t.family().product()
                            && DrillSequence.longestCycle(longer) == 0;
                });
    }

    /** Whether divisions of three families could still be asked: with fewer the same would come again too soon. */
    private static boolean isAnythingLeft(Progress after, List<Answer> asked) {
        Map<Trace, Integer> times = new HashMap<>();
        Set<Trace> missed = new HashSet<>();
        for (Answer answer : asked) {
            Trace trace = answer.question().orElseThrow().trace();
            times.merge(trace, 1, Integer::sum);
            if (!answer.isCorrect()) {
                missed.add(trace);
            }
        }
        return fourfold.facts.Families.traces().stream()
                        .filter(t -> t.operation() == Operation.DIVIDE
                                && after.mastery(t).isMet())
                        .filter(t -> after.isMet(t.family())
                                && !after.isHeld(t.family())
                                && !after.isBeforeItsDate(t.family()))
                        .filter(t -> times.getOrDefault(t, 0) < 3 && !missed.contains(t))
                        .map(Trace::family)
                        .distinct()
                        .count()
                >= 3;
    }

    @Override
    public String toString() {
        StringBuilder text = new StringBuilder(counts.toString());
        breaches.forEach((law, list) -> text.append('\n')
                .append(law)
                .append(": ")
                .append(list.size())
                .append(", such as ")
                .append(list.subList(0, Math.min(3, list.size()))));
        return text.toString();
    }
}
