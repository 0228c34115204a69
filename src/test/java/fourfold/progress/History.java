package fourfold.progress;

import fourfold.facts.Act;
import fourfold.facts.Answer;
import fourfold.facts.Deed;
import fourfold.facts.Family;
import fourfold.facts.Purpose;
import fourfold.facts.Question;
import fourfold.facts.Surface;
import fourfold.facts.Trace;
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
                CHILD,
                new UUID(2, day),
                position,
                START.plus(Duration.ofDays(day)).plusSeconds(position),
                0,
                kind == 'v' ? Purpose.INTRODUCE : Purpose.PRACTISE,
                question,
                typed,
                typed.isEmpty() ? Optional.empty() : Optional.of(Duration.ofMillis(millis)),
                Optional.of(Duration.ofMillis(typed.isEmpty() ? 20_000 : millis + 500)),
                0,
                Surface.TERMINAL);
    }

    /** All answers, oldest first. */
    public List<Answer> answers() {
        return answers.stream().sorted(Comparator.comparing(Answer::askedAt)).toList();
    }

    /** Where the child stands under these deeds of the parent's, all done before the first answer. */
    public Progress progress(Deed... deeds) {
        List<Act> acts = new ArrayList<>();
        for (Deed deed : deeds) {
            acts.add(new Act(new UUID(3, acts.size()), CHILD, START.minusSeconds(60 - acts.size()), 0, deed));
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
