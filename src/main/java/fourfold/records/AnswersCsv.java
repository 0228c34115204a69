// SPDX-License-Identifier: Apache-2.0
package fourfold.records;

import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import de.siegmar.fastcsv.reader.FieldMismatchStrategy;
import de.siegmar.fastcsv.writer.CsvWriter;
import de.siegmar.fastcsv.writer.LineDelimiter;
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
import fourfold.log.Reason;
import fourfold.log.Surface;
import java.io.IOException;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * The answer log as CSV (RFC 4180: CRLF line ends, quotes only where they are needed). One line an answer; fields are
 * empty where there is nothing. A name that begins with = + - or @ has an apostrophe before it, so that no spreadsheet
 * takes it for a formula; reading takes it away again.
 */
public final class AnswersCsv {
    /** The columns, in order. */
    public static final List<String> COLUMNS = List.of(
            "id",
            "child",
            "drill",
            "position",
            "asked_at",
            "zone_offset_min",
            "purpose",
            "operation",
            "left",
            "right",
            "typed",
            "correct",
            "first_key_ms",
            "whole_ms",
            "erasures",
            "surface",
            "pace");

    /** The columns that earlier programs wrote. */
    private static final List<String> EARLIER_COLUMNS = COLUMNS.subList(0, COLUMNS.size() - 1);

    /** The longest time the store keeps. */
    private static final int LONGEST_MILLIS = 1_000_000_000;

    private static final DateTimeFormatter INSTANT =
            DateTimeFormatter.ofPattern("yyyy-MM-dd'T'HH:mm:ss.SSS'Z'").withZone(ZoneOffset.UTC);

    /** In the place of an operation: the division left ÷ right was asked as right × ? = left. */
    private static final String FACTOR = "factor";

    private static final Instant LATEST = Instant.parse("5000-01-01T00:00:00Z");

    /** What a spreadsheet would take for a formula (OWASP, CSV Injection, from memory). */
    private static final Pattern FORMULA = Pattern.compile("'*[=+@\\-].*", Pattern.DOTALL);

    private AnswersCsv() {}

    /** A name that a spreadsheet would take for a formula, with an apostrophe before it. */
    private static String quoted(String name) {
        return FORMULA.matcher(name).matches() ? "'" + name : name;
    }

    private static String unquoted(String name) {
        return name.startsWith("'") && FORMULA.matcher(name).matches() ? name.substring(1) : name;
    }

    /** Writes answers one by one; begins with the header line. */
    public static final class Sheet {
        private final CsvWriter csv;

        /** A sheet on a writer that stays the caller's to close. */
        public Sheet(Writer writer) {
            csv = CsvWriter.builder().lineDelimiter(LineDelimiter.CRLF).build(writer);
            csv.writeRecord(COLUMNS);
        }

        /** One answer of a child with that nickname. */
        public void write(Answer answer, String child) {
            Optional<Question> question = answer.question();
            csv.writeRecord(
                    answer.id().toString(),
                    quoted(child),
                    answer.drill().toString(),
                    Integer.toString(answer.position()),
                    INSTANT.format(answer.askedAt()),
                    Integer.toString(answer.zoneOffsetMinutes()),
                    answer.purpose().word(),
                    answer.prompt() instanceof MissingFactor
                            ? FACTOR
                            : question.map(q -> q.operation().word()).orElse(""),
                    Integer.toString(
                            question.map(Question::left).orElse(answer.prompt().expected())),
                    question.map(q -> Integer.toString(q.right())).orElse(""),
                    answer.typed(),
                    answer.isCorrect() ? "1" : "0",
                    answer.firstKey().map(d -> Long.toString(d.toMillis())).orElse(""),
                    answer.whole().map(d -> Long.toString(d.toMillis())).orElse(""),
                    Integer.toString(answer.erasures()),
                    answer.surface().word(),
                    answer.pace().map(Answer.Pace::word).orElse(""));
        }

        /** Hands on what is still held back. */
        public void flush() throws IOException {
            csv.flush();
        }
    }

    /**
     * Reads a log back, whole or not at all.
     *
     * @param reader the CSV text
     * @param children gives the child for a nickname
     * @throws InvalidValue with the line number and what is wrong in it
     */
    public static List<Answer> read(Reader reader, Function<String, UUID> children) {
        return read(reader, children, answer -> {});
    }

    /**
     * The same with a further check.
     *
     * @param check throws {@link InvalidValue} if an answer does not fit what else is known
     */
    public static List<Answer> read(Reader reader, Function<String, UUID> children, Consumer<Answer> check) {
        List<Answer> answers = new ArrayList<>();
        long line = 1;
        try (CsvReader<CsvRecord> csv = CsvReader.builder()
                .extraFieldStrategy(FieldMismatchStrategy.IGNORE)
                .missingFieldStrategy(FieldMismatchStrategy.IGNORE)
                .ofCsvRecord(reader)) {
            boolean header = true;
            int width = COLUMNS.size();
            for (CsvRecord row : csv) {
                line = row.getStartingLineNumber();
                if (header) {
                    boolean ours = Set.of(COLUMNS, EARLIER_COLUMNS).contains(row.getFields());
                    require(ours, Reason.CSV_COLUMNS, String.join(",", COLUMNS));
                    width = row.getFieldCount();
                    header = false;
                } else {
                    require(row.getFieldCount() == width, Reason.CSV_FIELDS, width, row.getFieldCount());
                    Answer answer = answer(row, children);
                    check.accept(answer);
                    answers.add(answer);
                }
            }
            require(!header, Reason.CSV_EMPTY);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (CsvParseException e) {
            throw new InvalidValue(Reason.CSV_QUOTES, line + 1);
        } catch (InvalidValue e) {
            throw new InvalidValue(Reason.CSV_LINE, line, e.problem());
        }
        return answers;
    }

    private static Answer answer(CsvRecord row, Function<String, UUID> children) {
        Purpose purpose = Purpose.ofWord(row.getField(6));
        Answer answer = new Answer(
                new Answer.Place(
                        children.apply(unquoted(row.getField(1))),
                        uuid("drill", row.getField(2)),
                        whole("position", row.getField(3))),
                new Moment(instant(row.getField(4)), whole("zone_offset_min", row.getField(5))),
                purpose,
                prompt(purpose, row),
                new Answer.Typing(
                        row.getField(10),
                        new Answer.Times(
                                millis("first_key_ms", row.getField(12)),
                                millis("whole_ms", row.getField(13)),
                                pace(row)),
                        whole("erasures", row.getField(14))),
                Surface.ofWord(row.getField(15)));
        require(row.getField(0).equals(answer.id().toString()), Reason.CSV_ID);
        require(row.getField(11).equals(answer.isCorrect() ? "1" : "0"), Reason.CSV_CORRECT);
        return answer;
    }

    private static Optional<Answer.Pace> pace(CsvRecord row) {
        String word = row.getFieldCount() == COLUMNS.size() ? row.getField(16) : "";
        return word.isEmpty() ? Optional.empty() : Optional.of(Answer.Pace.ofWord(word));
    }

    private static Prompt prompt(Purpose purpose, CsvRecord row) {
        int left = whole("left", row.getField(8));
        if (purpose == Purpose.COPY) {
            require(row.getField(7).isEmpty() && row.getField(9).isEmpty(), Reason.COPY_FIELDS);
            require(
                    left >= 1 && left <= Families.LARGEST_PRODUCT,
                    Reason.NO_NUMBER_TO_COPY,
                    Families.LARGEST_PRODUCT,
                    left);
            return new NumberToCopy(left);
        }
        boolean factor = row.getField(7).equals(FACTOR);
        Question question =
                question(factor ? Operation.DIVIDE : operation(row.getField(7)), left, whole("right", row.getField(9)));
        return factor ? new MissingFactor(question) : question;
    }

    private static Operation operation(String word) {
        try {
            return Operation.ofWord(word);
        } catch (IllegalArgumentException e) {
            throw new InvalidValue(
                    Reason.OPERATION,
                    Stream.of(Operation.values()).map(Operation::word).collect(Collectors.joining(", ")) + ", "
                            + FACTOR,
                    word);
        }
    }

    private static Question question(Operation operation, int left, int right) {
        try {
            return new Question(operation, left, right);
        } catch (IllegalArgumentException e) {
            throw new InvalidValue(Reason.NO_QUESTION, left + " " + operation.sign() + " " + right);
        }
    }

    private static Optional<Duration> millis(String column, String text) {
        if (text.isEmpty()) {
            return Optional.empty();
        }
        int millis = whole(column, text);
        require(millis >= 0 && millis <= LONGEST_MILLIS, Reason.MILLIS, column, LONGEST_MILLIS, millis);
        return Optional.of(Duration.ofMillis(millis));
    }

    private static Instant instant(String text) {
        try {
            Instant instant = Instant.from(INSTANT.parse(text));
            require(!instant.isBefore(Instant.EPOCH), Reason.DATE_EARLY);
            require(instant.isBefore(LATEST), Reason.DATE_LATE);
            return instant;
        } catch (java.time.DateTimeException e) {
            throw new InvalidValue(Reason.DATE, text);
        }
    }

    private static UUID uuid(String column, String text) {
        try {
            UUID id = UUID.fromString(text);
            if (id.toString().equals(text)) {
                return id;
            }
        } catch (IllegalArgumentException e) {
            // Refused below, like an id in another form.
        }
        throw new InvalidValue(Reason.ID, column, text);
    }

    private static int whole(String column, String text) {
        try {
            return Integer.parseInt(text);
        } catch (NumberFormatException e) {
            throw new InvalidValue(Reason.WHOLE_NUMBER, column, text);
        }
    }

    private static void require(boolean holds, Reason otherwise, Object... details) {
        if (!holds) {
            throw new InvalidValue(otherwise, details);
        }
    }
}
