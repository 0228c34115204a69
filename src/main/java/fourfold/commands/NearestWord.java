// SPDX-License-Identifier: Apache-2.0
package fourfold.commands;

import java.util.Collection;
import java.util.Comparator;
import java.util.Optional;

/** Which known word somebody meant who typed another: the one that the fewest slips of the fingers lead to. */
final class NearestWord {
    private NearestWord() {}

    /** The nearest of them; empty if none comes nearer than one slip in three letters. */
    static Optional<String> of(String typed, Collection<String> known) {
        return known.stream()
                .filter(word -> slips(typed, word) <= Math.max(1, typed.length() / 3))
                .min(Comparator.comparingInt((String word) -> slips(typed, word))
                        .thenComparing(Comparator.naturalOrder()));
    }

    /**
     * How many letters were left out, added, taken for another or typed in the wrong order (Damerau 1964, "A technique for
     * computer detection and correction of spelling errors").
     */
    static int slips(String typed, String meant) {
        int[][] least = new int[typed.length() + 1][meant.length() + 1];
        for (int i = 0; i <= typed.length(); i++) {
            for (int j = 0; j <= meant.length(); j++) {
                least[i][j] = i == 0 || j == 0 ? i + j : slips(typed, meant, i, j, least);
            }
        }
        return least[typed.length()][meant.length()];
    }

    private static int slips(String typed, String meant, int i, int j, int[][] least) {
        int other = typed.charAt(i - 1) == meant.charAt(j - 1) ? 0 : 1;
        int fewest = Math.min(least[i - 1][j - 1] + other, 1 + Math.min(least[i - 1][j], least[i][j - 1]));
        boolean turned = i > 1
                && j > 1
                && typed.charAt(i - 1) == meant.charAt(j - 2)
                && typed.charAt(i - 2) == meant.charAt(j - 1);
        return turned ? Math.min(fewest, 1 + least[i - 2][j - 2]) : fewest;
    }
}
