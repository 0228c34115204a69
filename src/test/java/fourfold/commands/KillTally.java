// SPDX-License-Identifier: Apache-2.0
package fourfold.commands;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;

/** Counts what was found after kills, by the way it was looked for. */
final class KillTally {
    private int kills;
    private int counted;
    private final Map<String, Integer> byCompany = new TreeMap<>();
    private final Map<Way, int[]> byWay = new EnumMap<>(Way.class);
    private final List<String> troubles = new ArrayList<>();

    /** A look at what one kill left. */
    final class Look {
        private final String which;

        private Look(String which) {
            this.which = which;
        }

        /** What was found holds each answer once that was counted, and nothing that was not typed. */
        void check(Way way, List<String> counted, List<String> typed, List<String> found) {
            HashSet<String> missing = new HashSet<>(counted);
            found.forEach(missing::remove);
            List<String> more = new ArrayList<>(found);
            typed.forEach(more::remove);
            synchronized (KillTally.this) {
                numbers(way)[0] += missing.size();
                missing.forEach(m -> troubles.add(which + ", " + way + ": missing " + m));
                more.forEach(m -> trouble(way, "too much " + m));
            }
        }

        /** Another program was at the file, and the command said that it has to wait. */
        void barred(Way way, String said) {
            synchronized (KillTally.this) {
                numbers(way)[1]++;
                if (Stream.of("another program", "other programs", "a program still has it open")
                        .noneMatch(said::contains)) {
                    trouble(way, said);
                }
            }
        }

        /** The way led nowhere. */
        void trouble(Way way, String said) {
            synchronized (KillTally.this) {
                numbers(way)[2]++;
                troubles.add(which + ", " + way + ": " + said);
            }
        }
    }

    private int[] numbers(Way way) {
        return byWay.computeIfAbsent(way, w -> new int[3]);
    }

    /** One more kill. */
    synchronized Look kill(String company, int answers) {
        kills++;
        counted += answers;
        byCompany.merge(company, 1, Integer::sum);
        return new Look("kill " + kills + ", " + company);
    }

    /** All that was not as it must be. */
    synchronized List<String> troubles() {
        return List.copyOf(troubles);
    }

    @Override
    public synchronized String toString() {
        StringBuilder text = new StringBuilder();
        line(text, "%d kills; %d answers shown as counted", kills, counted);
        line(text, "another program: %s", byCompany);
        line(text, "%-10s%10s%10s%10s", "way", "missing", "waited", "trouble");
        byWay.forEach(
                (way, n) -> line(text, "%-10s%10d%10d%10d", way.name().toLowerCase(Locale.ROOT), n[0], n[1], n[2]));
        return text.toString();
    }

    private static void line(StringBuilder text, String format, Object... values) {
        text.append(String.format(Locale.ROOT, format, values)).append('\n');
    }
}
