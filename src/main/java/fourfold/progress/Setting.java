// SPDX-License-Identifier: Apache-2.0
package fourfold.progress;

import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/** One thing a parent can choose for a child: its name in the log of actions, the values it can have, and the usual one. */
public enum Setting {
    /** Planned length of a drill, in minutes. */
    MINUTES("minutes", "8", numbers(5, 10, 1)),
    /**
     * The limit for a quick answer, in seconds of thinking time (3 s a fact is the usual classroom criterion: Howell and
     * Nolet 2000; Mercer and Miller 1992).
     */
    QUICK("quick", "3", "2 3 5"),
    /** After how many seconds without a key the answer is shown (our own choice). */
    CALM("calm", "20", numbers(10, 60, 5)),
    /**
     * The most new families in a drill (an acquisition rate of about four facts a session, Burns, Zaslofsky, Maki and
     * Kwong 2016, divided by the three traces of a family).
     */
    NEW("new", "2", numbers(0, 4, 1)),
    /** Days of practice planned in a week (four is the plan of the homes this is for). */
    DAYS("days", "4", numbers(1, 7, 1)),
    /** Whether time is only measured silently, or a one-minute timing may be taken on accurate facts too. */
    TIMING("timing", "silent", "silent minute"),
    /** Whether new families and errors come with a picture. */
    PICTURES("pictures", "yes", "yes no"),
    /** Whether divisions come with their product, or once the product is accurate. */
    DIVISIONS("divisions", "together", "together later"),
    /** Whether a drill ends before its time when nothing useful is left to ask. */
    END("end", "early", "early full"),
    /** Whether a division is now and then asked as a missing factor, 7 × ? = 56. */
    MISSING("missing", "no", "no yes"),
    /** Whether the week's last planned day is for practice away from the screen. */
    VARIETY("variety", "no", "no weekly"),
    /** Which keys the child is asked to use. */
    KEYS("keys", "any", "any keypad left right"),
    /** Size of the letters in the desktop window, in points. */
    LETTERS("letters", "20", numbers(12, 40, 4));

    private final String key;
    private final String usual;
    /** The values with a blank between them: an enum holds nothing that could change. */
    private final String offered;

    Setting(String key, String usual, String offered) {
        this.key = key;
        this.usual = usual;
        this.offered = offered;
    }

    private static String numbers(int low, int high, int step) {
        return IntStream.iterate(low, n -> n <= high, n -> n + step)
                .mapToObj(Integer::toString)
                .collect(Collectors.joining(" "));
    }

    /** Its name in the log of actions, which never changes. */
    public String key() {
        return key;
    }

    /** What holds when nothing was chosen. */
    public String usual() {
        return usual;
    }

    /** All values it can have, in the order in which they are offered. */
    public List<String> offered() {
        return List.of(offered.split(" "));
    }
}
