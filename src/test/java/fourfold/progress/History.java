// SPDX-License-Identifier: Apache-2.0
package fourfold.progress;

import fourfold.facts.Family;
import fourfold.facts.Question;
import fourfold.facts.Trace;
import fourfold.insight.FamilyRecord;
import fourfold.log.ActionRecord;
import fourfold.log.Answer;
import fourfold.log.Moment;
import fourfold.log.ParentAction;
import fourfold.log.Purpose;
import fourfold.log.Surface;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/**
 * A child's answers for tests, written as days and letters, as in {@code 0r 0s 3w}: r right and quick, s right and slow,
 * w wrong, m nothing typed, v typed in view; {@code 3=54} is the number 54 typed on day 3.
 */
public final class History {
    public static final Instant START = Instant.parse("2026-03-02T08:00:00Z");

    /** The local day that is written as 0. */
    public static final long FIRST_DAY = START.getEpochSecond() / 86_400;

    /** The evening of a day as it is written, 0 for the first. */
    public static Instant at(int day) {
        return START.plus(Duration.ofDays(day)).plus(Duration.ofHours(10));
    }

    private static final UUID CHILD = new UUID(1, 1);

    private final List<Answer> answers = new ArrayList<>();

    /** These answers to one question. */
    public History asked(Question question, String written) {
        for (String one : written.isBlank() ? new String[0] : written.strip().split("\\s+")) {
            answers.add(answer(question, one));
        }
        return this;
    }

    /** The same answers to each trace of a family. */
    public History asked(Family family, String written) {
        family.traces().forEach(trace -> asked(trace, written));
        return this;
    }

    /** These answers to the first question of a trace. */
    public History asked(Trace trace, String written) {
        return asked(trace.questions().get(0), written);
    }

    private Answer answer(Question question, String one) {
        String[] typing = one.split("=");
        char kind = typing.length == 2 ? '=' : one.charAt(one.length() - 1);
        int day = Integer.parseInt(typing.length == 2 ? typing[0] : one.substring(0, one.length() - 1));
        String typed = switch (kind) {
            case '=' -> typing[1];
            case 'w' -> Integer.toString(question.expected() + 100);
            case 'm' -> "";
            default -> Integer.toString(question.expected());
        };
        long millis = kind == 's' ? 9_000 : 1_000;
        int position = answers.size() + 1;
        return new Answer(
                new Answer.Place(CHILD, new UUID(2, day), position),
                new Moment(START.plus(Duration.ofDays(day)).plusSeconds(position), 0),
                kind == 'v' ? Purpose.INTRODUCE : Purpose.PRACTISE,
                question,
                new Answer.Typing(
                        typed,
                        new Answer.Times(
                                typed.isEmpty() ? Optional.empty() : Optional.of(Duration.ofMillis(millis)),
                                Optional.of(Duration.ofMillis(typed.isEmpty() ? 20_000 : millis + 500))),
                        0),
                Surface.TERMINAL);
    }

    /** All answers, oldest first. */
    public List<Answer> answers() {
        return answers.stream().sorted(Comparator.comparing(Answer::askedAt)).toList();
    }

    /** Where the child stands under these actions of the parent's, all done before the first answer. */
    public Progress progress(ParentAction... actions) {
        List<ActionRecord> acts = new ArrayList<>();
        for (ParentAction action : actions) {
            acts.add(
                    new ActionRecord(new UUID(3, acts.size()), CHILD, START.minusSeconds(60 - acts.size()), 0, action));
        }
        return Progress.of(acts, answers());
    }

    /** What the log holds of a family. */
    public FamilyRecord record(Family family) {
        FamilyRecord record = new FamilyRecord(family);
        answers().forEach(record);
        return record;
    }
}
