// SPDX-License-Identifier: Apache-2.0
package fourfold.benchmark;

import fourfold.facts.Families;
import fourfold.facts.NumberToCopy;
import fourfold.facts.Prompt;
import fourfold.log.Answer;
import fourfold.log.Child;
import fourfold.log.DrillSession;
import fourfold.log.Moment;
import fourfold.log.Purpose;
import fourfold.log.Surface;
import fourfold.store.Store;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.UUID;

/** Writes a store of children who have practised for ten years, through the program's own store. */
final class LongPractice {
    static final Instant END = Instant.parse("2026-10-01T07:00:00Z");
    private static final Duration YEARS = Duration.ofDays(3650);
    private static final int IN_A_DRILL = 40;
    private static final int COPIES = 5;
    private static final int DRILLS_AT_ONCE = 250;

    private LongPractice() {}

    /** A child with so many answers, the drills spread evenly over ten years; the child is called {@code Child-answers}. */
    static Child write(Store store, int number, int answers) {
        int drills = Math.max(1, answers / IN_A_DRILL);
        Instant begun = END.minus(YEARS);
        Child child = new Child(new UUID(90, number), name(answers), begun);
        store.add(child);
        List<DrillSession> sessions = new ArrayList<>();
        List<Answer> given = new ArrayList<>();
        for (int drill = 0; drill < drills; drill++) {
            Instant at = begun.plus(YEARS.dividedBy(drills).multipliedBy(drill));
            UUID id = new UUID(91L << 32 | number, drill);
            DrillSession session = new DrillSession(id, child.id(), at, 60, Duration.ofMinutes(8), drill);
            sessions.add(session);
            drill(session, given);
            if (sessions.size() == DRILLS_AT_ONCE || drill == drills - 1) {
                store.takeIn(List.of(), sessions, given);
                sessions.clear();
                given.clear();
            }
        }
        return child;
    }

    static String name(int answers) {
        return "Child-" + answers;
    }

    /** A file with such children in the folder. */
    static Path file(Path folder, String name, int... answers) {
        Path file = folder.resolve(name);
        try (Store store = Store.open(file)) {
            for (int i = 0; i < answers.length; i++) {
                write(store, i, answers[i]);
            }
        }
        return file;
    }

    private static void drill(DrillSession session, List<Answer> into) {
        SplittableRandom dice = new SplittableRandom(session.id().hashCode());
        for (int position = 1; position <= IN_A_DRILL; position++) {
            boolean copy = position <= COPIES;
            Prompt prompt = copy
                    ? new NumberToCopy(1 + dice.nextInt(99))
                    : Families.questions().get(dice.nextInt(Families.questions().size()));
            int slip = !copy && dice.nextInt(10) == 0 ? 1 : 0;
            int first = (copy ? 500 : 900) + dice.nextInt(copy ? 300 : 2500);
            into.add(new Answer(
                    Answer.Place.in(session, position),
                    new Moment(session.startedAt().plusMillis(position * 5_000L), session.zoneOffsetMinutes()),
                    copy ? Purpose.COPY : Purpose.PRACTISE,
                    prompt,
                    new Answer.Typing(
                            Integer.toString(prompt.expected() + slip),
                            new Answer.Times(
                                    Optional.of(Duration.ofMillis(first)),
                                    Optional.of(Duration.ofMillis(first + 300 + dice.nextInt(300)))),
                            0),
                    Surface.TERMINAL));
        }
    }
}
