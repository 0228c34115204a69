// SPDX-License-Identifier: Apache-2.0
package fourfold.drill;

import fourfold.facts.Families;
import fourfold.facts.Family;
import fourfold.facts.Question;
import fourfold.log.Answer;
import fourfold.progress.FactMastery;
import fourfold.progress.Progress;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What became quicker in a drill, against the child's own last weeks: the median thinking time of a trace's last ten
 * answers before the drill. Clearly quicker is three quarters of it or less, and half a second at least (our own choice).
 */
final class Gains {
    private static final double SHARE = 0.75;
    private static final long LEAST_MILLIS = 500;
    private static final int FEWEST_BEFORE = 3;

    private Gains() {}

    /** The families of which at least half of the right answers, and one at least, were clearly quicker. */
    static List<Family> quicker(Progress before, List<Answer> drill) {
        int[] compared = new int[Families.COUNT];
        int[] quick = new int[Families.COUNT];
        for (Answer answer : drill) {
            if (!answer.purpose().isFromMemory() || !answer.isCorrect()) {
                continue;
            }
            Question question = answer.question().orElseThrow();
            FactMastery mastery = before.mastery(question.traceIndex());
            Optional<Duration> usual = mastery.recent() >= FEWEST_BEFORE ? mastery.medianThinking() : Optional.empty();
            Optional<Duration> now = before.motor().thinking(answer);
            if (usual.isPresent() && now.isPresent()) {
                int family = question.family().index();
                compared[family]++;
                quick[family] += isQuicker(now.get().toMillis(), usual.get().toMillis()) ? 1 : 0;
            }
        }
        List<Family> families = new ArrayList<>();
        for (Family family : Families.all()) {
            int i = family.index();
            if (quick[i] > 0 && 2 * quick[i] >= compared[i]) {
                families.add(family);
            }
        }
        return families;
    }

    static boolean isQuicker(long now, long usual) {
        return now <= SHARE * usual && usual - now >= LEAST_MILLIS;
    }
}
