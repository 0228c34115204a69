package fourfold.progress;

import fourfold.facts.Families;
import java.time.Duration;
import java.util.List;
import java.util.Map;

/**
 * A child's settings, with their defaults and limits.
 *
 * @param minutes planned length of a drill, 5 to 10 minutes, 8 by default
 * @param quick the limit for a quick answer, in thinking time: 2, 3 or 5 s, 3 by default (3 s a fact is the usual
 *     classroom criterion: Howell and Nolet 2000; Mercer and Miller 1992)
 * @param calm after how long without a key the answer is shown, 10 to 60 s, 20 by default (our own choice)
 * @param newInDrill the most new families in a drill, 0 to 4, 2 by default (an acquisition rate of about four facts a
 *     session, Burns, Zaslofsky, Maki and Kwong 2016, divided by the three traces of a family)
 */
public record Settings(int minutes, Duration quick, Duration calm, int newInDrill) {
    /** What holds when the parent has chosen nothing. */
    public static final Settings USUAL = new Settings(8, Duration.ofSeconds(3), Duration.ofSeconds(20), 2);

    /** The teaching order when the parent has chosen none. */
    public static final List<Integer> USUAL_ORDER = Families.USUAL_ORDER;

    public Settings {
        within("minutes", minutes, 5, 10);
        long seconds = quick.toSeconds();
        if (seconds != 2 && seconds != 3 && seconds != 5) {
            throw new IllegalArgumentException("quick is 2, 3 or 5 seconds, not " + seconds);
        }
        within("calm", (int) calm.toSeconds(), 10, 60);
        within("newInDrill", newInDrill, 0, 4);
    }

    /**
     * The settings a parent's choices come to. A name not known here is left alone, so that a newer program's choices
     * do not trouble an older one; a value outside its limits counts as not chosen.
     */
    public static Settings of(Map<String, String> chosen) {
        Settings settings = USUAL;
        for (Map.Entry<String, String> choice : chosen.entrySet()) {
            try {
                settings = settings.with(choice.getKey(), choice.getValue());
            } catch (IllegalArgumentException outside) {
                // The default stands.
            }
        }
        return settings;
    }

    /**
     * These settings with one of them changed.
     *
     * @throws IllegalArgumentException if the value is not a number within its limits
     */
    public Settings with(String name, String text) {
        return switch (name) {
            case "minutes" -> new Settings(number(text), quick, calm, newInDrill);
            case "quick" -> new Settings(minutes, Duration.ofSeconds(number(text)), calm, newInDrill);
            case "calm" -> new Settings(minutes, quick, Duration.ofSeconds(number(text)), newInDrill);
            case "new" -> new Settings(minutes, quick, calm, number(text));
            default -> this;
        };
    }

    private static int number(String text) {
        try {
            return Integer.parseInt(text.strip());
        } catch (NumberFormatException e) {
            throw new IllegalArgumentException("a whole number is needed, not \"" + text + "\"", e);
        }
    }

    private static void within(String name, int value, int low, int high) {
        if (value < low || value > high) {
            throw new IllegalArgumentException(name + " is from " + low + " to " + high + ", not " + value);
        }
    }
}
