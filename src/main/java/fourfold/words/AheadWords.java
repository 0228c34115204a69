// SPDX-License-Identifier: Apache-2.0
package fourfold.words;

import fourfold.facts.Families;
import fourfold.outlook.Change;
import fourfold.outlook.EarlierForecast;
import fourfold.outlook.Outlook;
import fourfold.outlook.Projection;
import fourfold.outlook.Within;
import fourfold.outlook.YearAhead;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** The look ahead in sentences: the same on the screen, in plain lines and on paper. */
public final class AheadWords {
    private AheadWords() {}

    /** What is known of it so far, a sentence each: when all may be fluent, what would help, how earlier forecasts came. */
    public static List<String> told(Words words, YearAhead ahead) {
        if (!ahead.isPossible()) {
            return List.of(words.say("plan.few", Families.COUNT, Outlook.FEWEST_ANSWERS, ahead.answers()));
        }
        if (ahead.isThere()) {
            return List.of(words.say("plan.there", Families.COUNT));
        }
        Optional<Projection> projection = ahead.projection();
        if (projection.isEmpty()) {
            return List.of(words.say("plan.working", Families.COUNT));
        }
        List<String> told = new ArrayList<>();
        told.add(all(words, projection.get(), ahead.minutes()));
        ahead.within().forEach(within -> told.add(within(words, within)));
        if (ahead.isDone() && !projection.get().isClosed() && ahead.within().isEmpty()) {
            told.add(words.say("plan.within.none"));
        }
        ahead.earlier().forEach(earlier -> told.add(earlier(words, earlier)));
        told.add(words.say(ahead.isDone() ? "plan.caution" : "plan.goeson"));
        return told;
    }

    private static String all(Words words, Projection projection, int minutes) {
        return projection.isClosed()
                ? words.say("plan.projected", Families.COUNT, range(words, projection))
                : words.say(
                        projection.outcome() == Projection.Outcome.NOT_SURE ? "plan.unsure" : "plan.open",
                        Families.COUNT,
                        words.date(projection.until()),
                        days(words, projection.daysAWeek()),
                        minutes);
    }

    /** When a goal may be reached. A range whose ends are equal is one day. */
    static String range(Words words, Projection closed) {
        LocalDate early = closed.early().orElseThrow();
        LocalDate late = closed.late().orElseThrow();
        String middle = words.date(closed.middle().orElseThrow());
        return early.equals(late)
                ? words.say("plan.range.one", middle)
                : words.say("plan.range", middle, words.date(early), words.date(late));
    }

    private static String within(Words words, Within within) {
        return words.say("plan.within", change(words, within.change()), range(words, within.projection()));
    }

    private static String change(Words words, Change change) {
        if (change instanceof Change.MoreDays more) {
            return words.say("plan.within.days", more.aWeek());
        }
        if (change instanceof Change.FocusOn focus) {
            return words.say("plan.within.focus", focus.table());
        }
        Change.FewerTables fewer = (Change.FewerTables) change;
        return words.say(
                "plan.within.fewer",
                fewer.families().stream().map(words::name).collect(Collectors.joining(", ")),
                Families.COUNT - fewer.families().size());
    }

    /** Days a week: no decimals where there are none to tell. */
    private static String days(Words words, double aWeek) {
        return aWeek == Math.rint(aWeek) ? Long.toString(Math.round(aWeek)) : words.number(aWeek);
    }

    /** How an earlier forecast came true. A range whose ends are equal is one number. */
    static String earlier(Words words, EarlierForecast earlier) {
        String key = earlier.holds() ? "held" : earlier.came() < earlier.low() ? "fewer" : "more";
        return words.say(
                "plan.earlier." + key,
                words.date(earlier.made()),
                earlier.low() == earlier.high()
                        ? Integer.toString(earlier.low())
                        : words.say("plan.earlier.range", earlier.low(), earlier.high()),
                earlier.came());
    }
}
