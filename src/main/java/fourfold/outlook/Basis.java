// SPDX-License-Identifier: Apache-2.0
package fourfold.outlook;

import fourfold.log.ActionRecord;
import fourfold.log.Answer;
import fourfold.log.Moment;
import fourfold.log.ParentAction;
import fourfold.progress.Progress;
import fourfold.progress.Steering;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.UUID;
import java.util.stream.Stream;

/**
 * What a look ahead rests on. Answers of the day itself count from the next day on, so that the look ahead is the same all
 * day; what the parent changes counts at once.
 *
 * @param child whose it is
 * @param actions everything the parent did for the child
 * @param answers all answers, oldest first
 * @param today the local day, days since 1 January 1970
 * @param yearEnd the last local day of the school year
 * @param practised on which days there was practice lately, by the local day on which that is asked: for today and for each
 *     day whose forecast is to be held against what came
 * @param runs how often each way is played through, 1 or more
 */
public record Basis(
        UUID child,
        List<ActionRecord> actions,
        List<Answer> answers,
        long today,
        long yearEnd,
        Map<Long, PracticeDays> practised,
        int runs) {
    public Basis {
        actions = List.copyOf(actions);
        answers = List.copyOf(answers);
        practised = Map.copyOf(practised);
    }

    /** What the child had reached on the morning of a day, if the parent does some more things today. */
    Progress onTheMorningOf(long day, List<ParentAction> more) {
        Stream<ActionRecord> done = actions.stream()
                .filter(a -> day == today || new Moment(a.at(), a.zoneOffsetMinutes()).localDay() < day);
        Progress.Fold fold = new Progress.Fold(
                Steering.of(Stream.concat(done, more.stream().map(this::now)).toList()));
        answers.stream().takeWhile(a -> a.localDay() < day).forEach(fold);
        return fold.progress();
    }

    private ActionRecord now(ParentAction action) {
        return new ActionRecord(new UUID(0, 0), child, Instant.MAX, 0, action);
    }

    /** The seed of all that is played from a day on. */
    long seed(long day) {
        long mixed = child.getMostSignificantBits() ^ Long.rotateLeft(child.getLeastSignificantBits(), 32);
        return new SplittableRandom(mixed + day).nextLong();
    }
}
