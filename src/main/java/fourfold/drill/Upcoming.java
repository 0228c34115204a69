// SPDX-License-Identifier: Apache-2.0
package fourfold.drill;

import fourfold.facts.Family;
import fourfold.facts.NumberToCopy;
import fourfold.facts.Question;
import fourfold.progress.Progress;
import java.util.List;
import java.util.Optional;

/**
 * What is already settled to come before the scheduler is asked again.
 *
 * @param toCopy numbers to copy
 * @param toMeet facts of a new family, to be typed with the answer in view
 * @param picture the picture of the family they belong to
 * @param toTime questions of a one-minute timing
 * @param timed whether the drill's timing was begun or declined
 */
record Upcoming(
        List<NumberToCopy> toCopy,
        List<Question> toMeet,
        Optional<Depiction> picture,
        List<Question> toTime,
        boolean timed) {
    static Upcoming beginning(List<NumberToCopy> toCopy) {
        return new Upcoming(toCopy, List.of(), Optional.empty(), List.of(), false);
    }

    Upcoming afterCopy() {
        return new Upcoming(toCopy.subList(1, toCopy.size()), toMeet, picture, toTime, timed);
    }

    /** With the facts of a family to be met, in the order in which they are typed: result, turned around, divisions. */
    Upcoming meeting(Family family, Progress progress) {
        List<Question> facts = family.questions();
        Optional<Depiction> its = Help.depiction(progress, facts.get(0));
        return new Upcoming(toCopy, facts, its, toTime, timed);
    }

    Upcoming afterMeeting() {
        return new Upcoming(toCopy, toMeet.subList(1, toMeet.size()), picture, toTime, timed);
    }

    Upcoming timing(List<Question> questions) {
        return new Upcoming(toCopy, toMeet, picture, questions, true);
    }

    Upcoming afterTimed() {
        return new Upcoming(toCopy, toMeet, picture, toTime.subList(1, toTime.size()), timed);
    }
}
