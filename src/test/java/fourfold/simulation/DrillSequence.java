// SPDX-License-Identifier: Apache-2.0
package fourfold.simulation;

import fourfold.facts.Family;
import fourfold.facts.Prompt;
import fourfold.log.Answer;
import fourfold.log.Purpose;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * What one drill was like as a sequence.
 *
 * @param asked questions from memory
 * @param right how many of them were answered right
 * @param mostAsked how often the question asked most came; a product and the same turned around are two questions
 * @param cycle questions in the longest stretch that is one block of at least two, said at least twice; 0 if there is none
 * @param lessons families taught: met with their facts in view, not by way of putting an error right
 * @param lateLessons families of them whose lesson began in the last two minutes
 * @param lastRight whether the last question from memory was answered right
 */
record DrillSequence(int asked, int right, int mostAsked, int cycle, int lessons, int lateLessons, boolean lastRight) {
    private static final int LONGEST_BLOCK = 20;
    private static final Duration LATE = Duration.ofMinutes(2);

    /**
     * Of a drill's answers.
     *
     * @param end when the drill ended
     */
    static DrillSequence of(List<Answer> answers, Instant end) {
        List<Prompt> asked = new ArrayList<>();
        Map<Prompt, Integer> times = new HashMap<>();
        int right = 0;
        int most = 0;
        boolean lastRight = false;
        Set<Family> taught = new HashSet<>();
        int late = 0;
        Optional<Answer> missed = Optional.empty();
        for (Answer answer : answers) {
            boolean correct = answer.isCorrect();
            if (answer.purpose().isFromMemory()) {
                asked.add(answer.prompt());
                most = Math.max(most, times.merge(answer.prompt(), 1, Integer::sum));
                right += correct ? 1 : 0;
                lastRight = correct;
            } else if (answer.purpose() == Purpose.INTRODUCE
                    && missed.filter(m -> m.question().equals(answer.question()))
                            .isEmpty()
                    && taught.add(answer.question().orElseThrow().family())) {
                late += Duration.between(answer.askedAt(), end).compareTo(LATE) < 0 ? 1 : 0;
            }
            missed = correct ? Optional.empty() : Optional.of(answer);
        }
        return new DrillSequence(asked.size(), right, most, longestCycle(asked), taught.size(), late, lastRight);
    }

    /** How many questions the longest stretch has that is one block, of 2 to 20 questions, said at least twice. */
    static int longestCycle(List<?> asked) {
        int longest = 0;
        for (int block = 2; block <= Math.min(LONGEST_BLOCK, asked.size() / 2); block++) {
            int run = 0;
            for (int i = block; i < asked.size(); i++) {
                run = asked.get(i).equals(asked.get(i - block)) ? run + 1 : 0;
                longest = run >= block ? Math.max(longest, run + block) : longest;
            }
        }
        return longest;
    }
}
