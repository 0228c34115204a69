// SPDX-License-Identifier: Apache-2.0
package fourfold.simulation;

import java.util.Locale;

/** What is measured of one child's year under one policy; one number each, not a number where it has no meaning. */
public enum Measure {
    WEEK_6("f6", 1, "families fluent after 6 weeks"),
    WEEK_12("f12", 1, "families fluent after 12 weeks"),
    WEEK_24("f24", 1, "families fluent after 24 weeks"),
    WEEK_36("f36", 1, "families fluent after 36 weeks"),
    TO_28("min28", 0, "minutes of drills until 28 families were fluent at once"),
    TO_50("min50", 0, "minutes of drills until 50 families were fluent at once"),
    KEPT_14("kept14", 3, "share of all 200 questions right within 3 s, 14 days after the last drill"),
    KEPT_60("kept60", 3, "share of all 200 questions right within 3 s, 60 days after the last drill"),
    MET_KEPT_14("metKept14", 3, "the same after 14 days, of the families met"),
    MET_KEPT_60("metKept60", 3, "the same after 60 days, of the families met"),
    MET("met", 1, "families met in the year"),
    RIGHT("right", 3, "share of questions from memory answered right"),
    UNDER_85("under85", 3, "share of drills with less than 85 % right"),
    UNDER_80("under80", 3, "share of drills with less than 80 % right"),
    WAIT("wait", 1, "most drills without a new family, of those begun 90 % right in the last three"),
    WAIT_READY("waitReady", 1, "the same, of those when 80 % of the families met two weeks ago were fluent too"),
    FIRM("firm", 3, "share of questions to what would be fluent at the next drill anyway"),
    FIRM_OWED("firmOwed", 3, "the part of it that were inverses owed to a product"),
    LASTING("lasting", 3, "share of questions to what would be fluent at the next drill and after 14 days anyway"),
    LASTING_OWED("lastingOwed", 3, "the part of it that were inverses owed to a product"),
    OWED("owed", 3, "share of questions that were inverses owed to a product"),
    MOST_ASKED("mostAsked", 2, "most often a question came in a drill, mean over drills"),
    MOST_ASKED_EVER("mostEver", 1, "most often a question came in any drill"),
    CYCLE("cycle", 1, "longest stretch of questions in a drill that repeats itself, mean over drills"),
    CYCLE_EVER("cycleEver", 1, "longest such stretch in any drill"),
    LESSONS("lessons", 2, "families taught in a drill"),
    LATE_LESSONS("late", 3, "families taught in a drill's last two minutes"),
    LAST_RIGHT("lastRight", 3, "share of drills whose last question was answered right"),
    PER_DRILL("perDrill", 0, "questions from memory in a drill"),
    PER_MINUTE("perMin", 1, "questions from memory in a minute of drills");

    private final String heading;
    private final int places;
    private final String meaning;

    Measure(String heading, int places, String meaning) {
        this.heading = heading;
        this.places = places;
        this.meaning = meaning;
    }

    /** The column's name. */
    public String heading() {
        return heading;
    }

    /** What it is. */
    public String meaning() {
        return meaning;
    }

    /** A value as the table shows it. */
    String shown(double x) {
        return String.format(Locale.ROOT, "%." + places + "f", x);
    }
}
