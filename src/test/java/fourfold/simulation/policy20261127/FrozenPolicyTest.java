// SPDX-License-Identifier: Apache-2.0
package fourfold.simulation.policy20261127;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import fourfold.log.Answer;
import fourfold.progress.Steering;
import fourfold.scheduling.LastingGain;
import fourfold.scheduling.Scheduler;
import fourfold.simulation.SchoolYear;
import fourfold.simulation.SimulatedLearnerKind;
import fourfold.simulation.TinyKind;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** Guards against a yardstick that moves: the frozen policy is the one it is named after, and stays it. */
class FrozenPolicyTest {
    private static List<Answer> answers(SimulatedLearnerKind kind, long seed, Scheduler scheduler, int weeks) {
        List<Answer> answers = new ArrayList<>();
        fourfold.progress.Progress blank = fourfold.progress.Progress.blank(Steering.NONE);
        new SchoolYear(kind.create(seed), scheduler, blank, kind.calendar(seed), seed, answers::add).run(weeks);
        return answers;
    }

    /**
     * Values of 2026-11-27. The frozen package, the tiny child and the drill's own pace decide them: since a right answer
     * stands 300 ms and no longer 600, and hands that are known copy nothing, more questions fit into its minutes.
     */
    @Test
    void itChoosesToTinyChildrenWhatItChoseAtFirst() {
        List<Answer> answers = answers(new TinyKind(), 1, FrozenScheduler.lastingGain(), 3).stream()
                .filter(a -> a.purpose().isFromMemory())
                .toList();
        String first = answers.stream()
                .limit(24)
                .map(a -> a.question().orElseThrow().toString())
                .collect(Collectors.joining(" "));
        assertEquals(
                "1 × 2 2 × 2 2 × 3 2 ÷ 1 2 × 2 2 ÷ 2 6 ÷ 2 2 × 1 4 ÷ 2 2 × 3 2 ÷ 1 2 × 2 "
                        + "2 ÷ 2 6 ÷ 3 1 × 2 4 ÷ 2 6 ÷ 2 2 × 4 2 ÷ 2 3 × 2 8 ÷ 2 2 ÷ 1 8 ÷ 4 6 ÷ 3",
                first);
        int sum = answers.stream()
                .map(a -> a.prompt() + " " + a.purpose() + " " + a.typed())
                .collect(Collectors.joining(";"))
                .hashCode();
        assertEquals(List.of(856, 742347797), List.of(answers.size(), sum));
    }

    @Test
    void itRefusesAChildWhoseFirstDrillsItDidNotSee() {
        SchoolYear year = new SchoolYear(new TinyKind().create(1), new LastingGain(), 1, a -> {});
        year.run(1);
        Scheduler late = FrozenScheduler.lastingGain();
        var drill = year.progress().drill().orElseThrow().session();
        assertThrows(
                IllegalStateException.class, () -> late.next(year.progress().beginning(drill), year.now(), 1));
    }
}
