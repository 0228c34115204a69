// SPDX-License-Identifier: Apache-2.0
package fourfold.plain;

import fourfold.log.ActionRecord;
import fourfold.progress.Progress;
import fourfold.progress.Setting;
import fourfold.progress.Steering;
import fourfold.words.ActionWords;
import fourfold.words.CalendarWords;
import fourfold.words.Words;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;

/** The calendar, the settings and what a parent did, in whole sentences. */
public final class HomeText {
    private static final DateTimeFormatter CLOCK = DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT);

    private HomeText() {}

    /** What the calendar comes to on a day, and how to write into it. */
    public static String calendar(Words words, Progress progress, LocalDate today, boolean unicode) {
        List<String> told = new ArrayList<>(CalendarWords.sentences(words, progress, today));
        told.add(words.say("plain.calendar.more"));
        return spoken(words, told, unicode);
    }

    /**
     * A child's settings, each with how to change it, and those of the home.
     *
     * @param home the home's own settings, each a name and a value
     */
    public static String settings(Words words, Steering steering, List<String> home, boolean unicode) {
        List<String> told = new ArrayList<>();
        for (Setting setting : Setting.values()) {
            told.add(words.say(
                    "plain.setting",
                    words.say("settings." + setting.key()),
                    words.value(setting, steering.settings().value(setting)),
                    setting.key(),
                    String.join(", ", setting.offered())));
        }
        String order = steering.order().stream().map(String::valueOf).collect(Collectors.joining(", "));
        told.add(words.say("plain.setting.order", words.say("settings.order"), order));
        told.add(words.say("plain.setting.home", String.join("; ", home)));
        return spoken(words, told, unicode);
    }

    /** What a parent did, newest first, each with its time; what was taken back says so. */
    public static String history(Words words, List<ActionRecord> actions, boolean unicode) {
        Set<UUID> inForce = new HashSet<>();
        ActionRecord.inForce(actions).forEach(a -> inForce.add(a.id()));
        List<String> told = new ArrayList<>();
        for (List<ActionRecord> together : ActionRecord.together(actions)) {
            ActionRecord first = together.get(0);
            OffsetDateTime at = first.at().atOffset(ZoneOffset.ofTotalSeconds(60 * first.zoneOffsetMinutes()));
            told.add(words.say(
                    inForce.contains(first.id()) ? "plain.history" : "plain.history.undone",
                    words.date(at.toLocalDate()),
                    CLOCK.format(at),
                    ActionWords.told(
                            words, together.stream().map(ActionRecord::action).toList())));
        }
        Collections.reverse(told);
        return spoken(words, told.isEmpty() ? List.of(words.say("history.none")) : told, unicode);
    }

    private static String spoken(Words words, List<String> told, boolean unicode) {
        return Spoken.lines(told.stream().map(t -> Spoken.heard(words, t)).toList(), unicode);
    }
}
