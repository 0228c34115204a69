// SPDX-License-Identifier: Apache-2.0
package fourfold.words;

import fourfold.insight.Today;
import fourfold.log.AwayPractice;
import java.util.stream.Collectors;

/** What today holds, in one line. */
public final class TodayWords {
    private TodayWords() {}

    /** For the parent: what is planned, and whether it is done. */
    public static String forParent(Words words, Today today) {
        String planned = planned(words, today, "today.plan.");
        if (today.drilled()) {
            return planned + " " + words.say("today.done.drill");
        }
        if (!today.ticked().isEmpty()) {
            String done = today.ticked().stream()
                    .sorted()
                    .map(kind -> kind(words, kind))
                    .collect(Collectors.joining(", "));
            return planned + " " + words.say("today.done.away", done);
        }
        return today.plan() == Today.Plan.DRILL || today.plan() == Today.Plan.AWAY
                ? planned + " " + words.say("today.notyet")
                : planned;
    }

    /** For the child. */
    public static String forChild(Words words, Today today) {
        return today.isDone() ? words.say("today.child.done") : planned(words, today, "today.child.");
    }

    private static String planned(Words words, Today today, String stem) {
        return switch (today.plan()) {
            case DRILL -> words.say(stem + "drill");
            case AWAY -> words.say(stem + "away", kind(words, today.away().orElseThrow()));
            case OFF -> words.say(stem + "off");
            case FREE -> words.say(stem + "free");
        };
    }

    private static String kind(Words words, AwayPractice kind) {
        return words.say("away.kind." + kind.key());
    }
}
