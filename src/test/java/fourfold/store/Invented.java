// SPDX-License-Identifier: Apache-2.0
package fourfold.store;

import fourfold.facts.Families;
import fourfold.facts.MissingFactor;
import fourfold.facts.NumberToCopy;
import fourfold.facts.Operation;
import fourfold.facts.Prompt;
import fourfold.log.ActionRecord;
import fourfold.log.Answer;
import fourfold.log.Child;
import fourfold.log.DrillSession;
import fourfold.log.Moment;
import fourfold.log.ParentAction;
import fourfold.log.Purpose;
import fourfold.log.Surface;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.UUID;

/** Invented children, drills, answers and actions for the tests, all from given seeds. */
public final class Invented {
    static final Instant MORNING = Instant.parse("2026-03-02T07:15:30.123Z");

    private Invented() {}

    public static UUID id(long number) {
        return new UUID(0x4000L, 0x8000000000000000L | number);
    }

    public static Child child(long number, String name) {
        return new Child(id(number), name, MORNING.plusMillis(number));
    }

    public static DrillSession session(Child child, long number) {
        return new DrillSession(
                id(1_000_000 + number),
                child.id(),
                MORNING.plus(Duration.ofDays(number)),
                60,
                Duration.ofMinutes(8),
                number * 0x9E3779B97F4A7C15L);
    }

    public static ActionRecord action(Child child, long number, ParentAction action) {
        return new ActionRecord(id(2_000_000 + number), child.id(), MORNING.plusSeconds(number), -210, action);
    }

    /** Any answer the program could give rise to: every purpose, prompt, surface, and every missing value. */
    public static Answer answer(DrillSession session, int position) {
        return hidden(answer(session, position, Purpose.values()[position % Purpose.values().length]), position);
    }

    /** The same of a program with the second or third schema. */
    static Answer answerOfVersion3(DrillSession session, int position) {
        return hidden(answer(session, position, Purpose.values()[position % (Purpose.TIMED.ordinal() + 1)]), position);
    }

    private static Answer hidden(Answer old, int position) {
        return old.question()
                .filter(q -> q.operation() == Operation.DIVIDE && position % 3 == 0)
                .map(q -> asking(old, new MissingFactor(q)))
                .orElse(old);
    }

    /** An answer that a program with the first schema could give rise to. */
    static Answer answerOfVersion1(DrillSession session, int position) {
        return answer(session, position, Purpose.values()[position % (Purpose.PROBE.ordinal() + 1)]);
    }

    private static Answer answer(DrillSession session, int position, Purpose purpose) {
        SplittableRandom random = new SplittableRandom(session.seed() + position);
        Prompt prompt = purpose == Purpose.COPY
                ? new NumberToCopy(1 + random.nextInt(100))
                : Families.questions().get(random.nextInt(Families.questions().size()));
        String typed = switch (random.nextInt(4)) {
            case 0 -> "";
            case 1 -> "00" + random.nextInt(100);
            case 2 -> Integer.toString(random.nextInt(10_000));
            default -> Integer.toString(prompt.expected());
        };
        boolean timed = purpose.isTyped();
        Optional<Duration> first = !timed || random.nextInt(5) == 0
                ? Optional.empty()
                : Optional.of(Duration.ofMillis(random.nextInt(9_000)));
        return new Answer(
                Answer.Place.in(session, position),
                new Moment(
                        session.startedAt().plusMillis(4_000L * position + random.nextInt(999)),
                        session.zoneOffsetMinutes()),
                purpose,
                prompt,
                new Answer.Typing(
                        typed,
                        new Answer.Times(
                                first,
                                !timed || random.nextInt(5) == 0
                                        ? Optional.empty()
                                        : Optional.of(Duration.ofMillis(random.nextInt(20_000))),
                                purpose == Purpose.ALOUD
                                        ? Optional.of(Answer.Pace.values()[random.nextInt(2)])
                                        : Optional.empty()),
                        random.nextInt(3)),
                purpose == Purpose.ALOUD ? Surface.ALOUD : Surface.values()[random.nextInt(3)]);
    }

    private static Answer asking(Answer answer, Prompt prompt) {
        return new Answer(answer.place(), answer.asked(), answer.purpose(), prompt, answer.typing(), answer.surface());
    }

    /** The same answer with something else typed. */
    public static Answer typing(Answer answer, String typed) {
        return new Answer(
                answer.place(),
                answer.asked(),
                answer.purpose(),
                answer.prompt(),
                new Answer.Typing(typed, answer.typing().times(), answer.erasures()),
                answer.surface());
    }
}
