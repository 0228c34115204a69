// SPDX-License-Identifier: Apache-2.0
package fourfold.records;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;

import fourfold.facts.Families;
import fourfold.facts.MissingFactor;
import fourfold.facts.NumberToCopy;
import fourfold.facts.Operation;
import fourfold.facts.Prompt;
import fourfold.facts.Question;
import fourfold.log.Answer;
import fourfold.log.InvalidValue;
import fourfold.log.Moment;
import fourfold.log.Purpose;
import fourfold.log.Surface;
import fourfold.words.Words;
import java.io.IOException;
import java.io.StringReader;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.UUID;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Guards against a log that changes on its way out and back in. Read back by Apache Commons CSV as well. */
class AnswersCsvTest {
    private static final UUID CHILD = new UUID(3, 3);
    private static final List<String> NAMES =
            List.of("Mina", "Zoë, \"the quick\"", "=1+2", " 李 ", "a\"b", "semi;colon", "'", "\u0661\u0662");
    private static final List<Question> QUESTIONS =
            Families.all().stream().flatMap(f -> f.questions().stream()).toList();

    private static String written(List<Answer> answers, String name) {
        StringWriter out = new StringWriter();
        AnswersCsv.Sheet sheet = new AnswersCsv.Sheet(out);
        answers.forEach(answer -> sheet.write(answer, name));
        try {
            sheet.flush();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return out.toString();
    }

    private static List<Answer> log(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        List<Answer> log = new ArrayList<>();
        for (int i = 1; i <= 40; i++) {
            log.add(answer(random, i));
        }
        return log;
    }

    private static Answer answer(SplittableRandom random, int position) {
        Purpose purpose = Purpose.values()[random.nextInt(Purpose.values().length)];
        Prompt prompt = purpose == Purpose.COPY
                ? new NumberToCopy(random.nextInt(1, 101))
                : prompt(QUESTIONS.get(random.nextInt(QUESTIONS.size())), random);
        String digits = switch (random.nextInt(4)) {
            case 0 -> "";
            case 1 -> Integer.toString(random.nextInt(10_000));
            case 2 -> "00" + random.nextInt(10, 100);
            default -> Integer.toString(prompt.expected());
        };
        return new Answer(
                new Answer.Place(CHILD, new UUID(4, random.nextInt(3)), position),
                new Moment(Instant.ofEpochMilli(random.nextLong(0, 4_000_000_000_000L)), random.nextInt(-1080, 1081)),
                purpose,
                prompt,
                new Answer.Typing(
                        digits,
                        new Answer.Times(
                                purpose.isTyped() ? some(random) : Optional.empty(),
                                some(random),
                                purpose == Purpose.ALOUD
                                        ? Optional.of(Answer.Pace.values()[random.nextInt(2)])
                                        : Optional.empty()),
                        random.nextInt(100_001)),
                Surface.values()[random.nextInt(Surface.values().length)]);
    }

    private static Prompt prompt(Question question, SplittableRandom random) {
        return question.operation() == Operation.DIVIDE && random.nextBoolean()
                ? new MissingFactor(question)
                : question;
    }

    private static Optional<Duration> some(SplittableRandom random) {
        return switch (random.nextInt(3)) {
            case 0 -> Optional.empty();
            case 1 -> Optional.of(Duration.ofMillis(random.nextLong(1_000_000_001)));
            default -> Optional.of(Duration.ofMillis(random.nextLong(10_000)));
        };
    }

    @Property(tries = 50)
    void everyLogComesBackAsItWas(@ForAll long seed) {
        List<Answer> log = log(seed);
        String name = NAMES.get((int) Math.floorMod(seed, (long) NAMES.size()));
        String csv = written(log, name);
        List<String> seen = new ArrayList<>();
        assertEquals(log, AnswersCsv.read(new StringReader(csv), child -> {
            seen.add(child);
            return CHILD;
        }));
        assertEquals(List.of(name), seen.stream().distinct().toList());
    }

    @Property(tries = 25)
    void anotherReaderFindsTheSameFields(@ForAll long seed) throws IOException {
        List<Answer> log = log(seed);
        String name = NAMES.get((int) Math.floorMod(seed, (long) NAMES.size()));
        try (CSVParser parser = CSVParser.parse(written(log, name), CSVFormat.RFC4180)) {
            List<CSVRecord> rows = parser.getRecords();
            assertEquals(AnswersCsv.COLUMNS, rows.get(0).toList());
            assertEquals(log.size() + 1, rows.size());
            for (int i = 0; i < log.size(); i++) {
                CSVRecord row = rows.get(i + 1);
                assertEquals(17, row.size());
                // A name that a spreadsheet would take for a formula has an apostrophe before it.
                assertEquals("=+-@".indexOf(name.charAt(0)) < 0 ? name : "'" + name, row.get(1));
                assertEquals(log.get(i).typed(), row.get(10));
                assertEquals(log.get(i).askedAt(), Instant.parse(row.get(4)));
                assertEquals(24, row.get(4).length(), "milliseconds are always written");
                assertEquals(log.get(i).isCorrect() ? "1" : "0", row.get(11));
            }
        }
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "practise,multiply,6,7,42,1|practise,multiply,6,7,42,0|line 2: correct does not fit what was typed",
                "practise,multiply,6,7,42,1|practise,multiply,6,7,x2,1|line 2: an answer is at most 4 digits, not \"x2\"",
                "practise,multiply,6,7,42,1|guess,multiply,6,7,42,1|line 2: purpose must be one of copy, introduce,"
                        + " practise, again, probe, paper, timed, aloud, not \"guess\"",
                "terminal|abacus|line 2: surface must be one of terminal, window, plain, paper, aloud, not \"abacus\"",
                "id,child,|id,kid,|line 1: the columns must be id,child,drill,position,asked_at,zone_offset_min,"
                        + "purpose,operation,left,right,typed,correct,first_key_ms,whole_ms,erasures,surface,pace"
            })
    void aWrongFieldIsRefusedWithItsLine(String right, String wrong, String told) {
        Answer answer = new Answer(
                new Answer.Place(CHILD, new UUID(4, 4), 1),
                new Moment(Instant.parse("2026-03-01T08:00:00Z"), 0),
                Purpose.PRACTISE,
                Question.product(6, 7),
                new Answer.Typing("42", Answer.Times.NONE, 0),
                Surface.TERMINAL);
        String csv = written(List.of(answer), "Mina");
        assertEquals(List.of(answer), AnswersCsv.read(new StringReader(csv), name -> CHILD));
        String spoilt = csv.replace(right, wrong);
        assertEquals(
                told,
                Words.english()
                        .problem(assertThrows(
                                        InvalidValue.class,
                                        () -> AnswersCsv.read(new StringReader(spoilt), name -> CHILD))
                                .problem()));
    }

    @Test
    void aLogThatAnEarlierProgramWroteIsRead() {
        Answer answer = answer(new SplittableRandom(1), 1);
        Answer typed = new Answer(
                answer.place(),
                answer.asked(),
                Purpose.PAPER,
                Question.product(6, 7),
                new Answer.Typing("42", Answer.Times.NONE, 0),
                Surface.TERMINAL);
        String earlier =
                written(List.of(typed), "Mina").replace(",pace\r", "\r").replace("terminal,\r", "terminal\r");
        assertFalse(earlier.contains("pace"));
        assertEquals(List.of(typed), AnswersCsv.read(new StringReader(earlier), name -> CHILD));
    }

    @Test
    void anEmptyFileIsNoLog() {
        assertThrows(InvalidValue.class, () -> AnswersCsv.read(new StringReader(""), name -> CHILD));
    }
}
