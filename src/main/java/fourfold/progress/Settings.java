// SPDX-License-Identifier: Apache-2.0
package fourfold.progress;

import fourfold.facts.Families;
import java.time.Duration;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * A child's settings: what the parent chose, and the usual where nothing was chosen.
 *
 * @param chosen what is not as usual
 */
public record Settings(Map<Setting, String> chosen) {
    /** What holds when the parent has chosen nothing. */
    public static final Settings USUAL = new Settings(Map.of());

    /** The teaching order when the parent has chosen none. */
    public static final List<Integer> USUAL_ORDER = Families.USUAL_ORDER;

    public Settings {
        for (Map.Entry<Setting, String> choice : chosen.entrySet()) {
            Setting setting = choice.getKey();
            if (!setting.offered().contains(choice.getValue())) {
                throw new IllegalArgumentException(setting.key() + " is one of " + String.join(", ", setting.offered())
                        + ", not " + choice.getValue());
            }
        }
        Map<Setting, String> copy = new EnumMap<>(Setting.class);
        copy.putAll(chosen);
        chosen = Collections.unmodifiableMap(copy);
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
                // The default is kept.
            }
        }
        return settings;
    }

    /**
     * These settings with one of them changed.
     *
     * @throws IllegalArgumentException if the value is not one of the setting's
     */
    public Settings with(String name, String text) {
        Optional<Setting> setting =
                Stream.of(Setting.values()).filter(s -> s.key().equals(name)).findFirst();
        if (setting.isEmpty()) {
            return this;
        }
        Map<Setting, String> all = new EnumMap<>(Setting.class);
        all.putAll(chosen);
        all.put(setting.get(), text.strip());
        return new Settings(all);
    }

    /** The value of one of them. */
    public String value(Setting setting) {
        return Objects.requireNonNull(chosen.getOrDefault(setting, setting.usual()));
    }

    /** Planned length of a drill, 5 to 10 minutes. */
    public int minutes() {
        return number(Setting.MINUTES);
    }

    /** The limit for a quick answer, in thinking time. */
    public Duration quick() {
        return Duration.ofSeconds(number(Setting.QUICK));
    }

    /** After how long without a key the answer is shown. */
    public Duration calm() {
        return Duration.ofSeconds(number(Setting.CALM));
    }

    /** The most new families in a drill. */
    public int newInDrill() {
        return number(Setting.NEW);
    }

    /** Days of practice planned in a week, 1 to 7. */
    public int days() {
        return number(Setting.DAYS);
    }

    /** Whether one-minute timings may be taken. */
    public boolean timings() {
        return value(Setting.TIMING).equals("minute");
    }

    /** Whether new families and errors come with a picture. */
    public boolean pictures() {
        return value(Setting.PICTURES).equals("yes");
    }

    /** Whether a division waits until its product is accurate. */
    public boolean divisionsLater() {
        return value(Setting.DIVISIONS).equals("later");
    }

    /** Whether a drill ends before its time when nothing useful is left to ask. */
    public boolean endsEarly() {
        return value(Setting.END).equals("early");
    }

    /** Whether a division may be asked as a missing factor. */
    public boolean missingFactors() {
        return value(Setting.MISSING).equals("yes");
    }

    private int number(Setting setting) {
        return Integer.parseInt(value(setting));
    }
}
