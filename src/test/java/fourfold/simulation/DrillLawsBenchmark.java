// SPDX-License-Identifier: Apache-2.0
package fourfold.simulation;

import static org.junit.jupiter.api.Assertions.assertEquals;

import fourfold.progress.Progress;
import fourfold.progress.Steering;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/**
 * Ten thousand drills of children of all kinds, first drills among them, held against the laws of a drill as a sequence:
 *
 * <pre>mvn clean verify -Dbenchmark=DrillLaws -Dlaws.seed=71001 -Dlaws.file=src/test/resources/simulation/laws.txt</pre>
 *
 * {@code laws.children} of each kind (63 by default) and the first {@code laws.drills} (20) of each, from seed {@code
 * laws.seed} (70001; {@code laws.txt} is from 71001; nothing was tuned on either).
 */
class DrillLawsBenchmark {
    @Test
    void tellsWhatWasBroken() throws IOException {
        int children = Integer.getInteger("laws.children", 63);
        int drills = Integer.getInteger("laws.drills", 20);
        long first = Long.getLong("laws.seed", 70_001L);
        StringBuilder text = new StringBuilder("%d children of each kind from seed %d, the first %d drills of each.%n"
                .formatted(children, first, drills));
        DrillLaws all = new DrillLaws();
        for (SimulatedLearnerKind kind : SimulatedLearnerKind.all()) {
            DrillLaws laws = new DrillLaws();
            for (long seed = first; seed < first + children; seed++) {
                List<Instant> starts = kind.calendar(seed).drills();
                List<Instant> these = starts.subList(0, Math.min(drills, starts.size()));
                laws.play(kind.create(seed), kind.name(), Progress.blank(Steering.NONE), these, seed);
            }
            text.append(kind.name()).append(": ").append(laws).append('\n');
            all.add(laws);
        }
        text.append("all: ").append(all).append('\n');
        System.out.println(text);
        String file = System.getProperty("laws.file");
        if (file != null) {
            Files.writeString(Path.of(file), text);
        }
        assertEquals(Map.of(), all.breaches());
    }
}
