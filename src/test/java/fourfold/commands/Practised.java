// SPDX-License-Identifier: Apache-2.0
package fourfold.commands;

import fourfold.facts.Family;
import fourfold.facts.NumberToCopy;
import fourfold.facts.Question;
import fourfold.log.Answer;
import fourfold.log.Child;
import fourfold.log.DrillSession;
import fourfold.log.Moment;
import fourfold.log.Purpose;
import fourfold.log.Surface;
import fourfold.store.MadeOnce;
import fourfold.store.Store;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/** A file with one child, Mina, who has practised one family on one day. */
public final class Practised {
    static final Instant BEGAN = Instant.parse("2026-03-01T08:00:00Z");

    private Practised() {}

    /** A file with children and no answers. */
    public static Path children(Path folder, String... names) {
        Path file = MadeOnce.EMPTY.at(folder.resolve("family.db"));
        try (Store store = Store.open(file)) {
            for (int i = 0; i < names.length; i++) {
                store.add(new Child(new UUID(7, i), names[i], BEGAN.minusSeconds(100 - i)));
            }
        }
        return file;
    }

    /** Copies, then 6 × 7, 7 × 6 and 42 ÷ 6 right, 42 ÷ 7 wrong and then not answered. */
    public static Path once(Path folder) {
        Path file = children(folder, "Mina");
        try (Store store = Store.open(file)) {
            store.keepAll(List.of(session()), answers());
        }
        return file;
    }

    static DrillSession session() {
        return new DrillSession(new UUID(8, 1), new UUID(7, 0), BEGAN, 60, Duration.ofMinutes(5), 1);
    }

    static List<Answer> answers() {
        List<Answer> answers = new ArrayList<>();
        for (int i = 0; i < 10; i++) {
            int number = i % 2 == 0 ? 3 + i / 2 : 33 + i;
            answers.add(new Answer(
                    new Answer.Place(new UUID(7, 0), new UUID(8, 1), i + 1),
                    new Moment(BEGAN.plusSeconds(2L * i), 60),
                    Purpose.COPY,
                    new NumberToCopy(number),
                    new Answer.Typing(
                            Integer.toString(number),
                            new Answer.Times(Optional.of(Duration.ofMillis(600)), Optional.of(Duration.ofMillis(900))),
                            0),
                    Surface.TERMINAL));
        }
        answers.add(answer(11, Question.product(6, 7), "42", 1900));
        answers.add(answer(12, Question.product(7, 6), "42", 2100));
        answers.add(answer(13, Question.quotient(new Family(6, 7), 6), "7", 2300));
        answers.add(answer(14, Question.quotient(new Family(6, 7), 7), "8", 2500));
        answers.add(answer(15, Question.quotient(new Family(6, 7), 7), "", 20_000));
        return answers;
    }

    private static Answer answer(int position, Question question, String typed, int millis) {
        return new Answer(
                new Answer.Place(new UUID(7, 0), new UUID(8, 1), position),
                new Moment(BEGAN.plusSeconds(10L * position), 60),
                Purpose.PRACTISE,
                question,
                new Answer.Typing(
                        typed,
                        new Answer.Times(
                                typed.isEmpty() ? Optional.empty() : Optional.of(Duration.ofMillis(millis - 400)),
                                Optional.of(Duration.ofMillis(millis))),
                        position % 2),
                Surface.TERMINAL);
    }
}
