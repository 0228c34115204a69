// SPDX-License-Identifier: Apache-2.0
package fourfold.commands;

import fourfold.home.Environment;
import java.io.BufferedReader;
import java.io.StringReader;
import java.io.StringWriter;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.function.BiFunction;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** A child at plain lines: hears what was said last, thinks for a while on a clock set by hand, and types a line. */
final class PlainChild extends BufferedReader {
    private static final Pattern QUESTION = Pattern.compile("What is (\\d+) (times|divided by) (\\d+)\\?");
    private static final Pattern IN_VIEW = Pattern.compile("Type (?:the number )?(\\d+)\\.");

    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();
    private final List<String> typed = new ArrayList<>();
    private final BiFunction<String, Integer, @Nullable String> habit;
    private long thinkingMillis = 1500;
    private int sleepsAt = -1;
    private long sleepMillis;
    private long sleptMillis;
    private long nanos;
    private String language = "en";

    /** A child with a habit: what to type after a line, by how many lines were typed before; null ends the input. */
    PlainChild(BiFunction<String, Integer, @Nullable String> habit) {
        super(new StringReader(""));
        this.habit = habit;
    }

    /** A child who is always right. */
    static PlainChild whoIsRight() {
        return new PlainChild((line, count) -> right(line));
    }

    /** What is right after a line; nothing but Enter where no number is wanted. */
    static String right(String line) {
        Matcher inView = IN_VIEW.matcher(line);
        if (inView.find()) {
            return inView.group(1);
        }
        Matcher question = QUESTION.matcher(line);
        if (!question.find()) {
            return "";
        }
        int left = Integer.parseInt(question.group(1));
        int right = Integer.parseInt(question.group(3));
        return Integer.toString(question.group(2).equals("times") ? left * right : left / right);
    }

    PlainChild inLanguage(String wanted) {
        language = wanted;
        return this;
    }

    /** The computer sleeps while the child thinks about that line, counted from 0: only the wall clock goes on. */
    PlainChild sleepingAt(int line, long millis) {
        sleepsAt = line;
        sleepMillis = millis;
        return this;
    }

    PlainChild thinking(long millis) {
        thinkingMillis = millis;
        return this;
    }

    List<String> typed() {
        return typed;
    }

    /** The last line that was said. */
    String last() {
        List<String> lines = out.toString().lines().toList();
        return lines.isEmpty() ? "" : lines.get(lines.size() - 1);
    }

    @Override
    public @Nullable String readLine() {
        nanos += thinkingMillis * 1_000_000;
        sleptMillis += typed.size() == sleepsAt ? sleepMillis : 0;
        String line = habit.apply(last(), typed.size());
        if (line != null) {
            typed.add(line);
        }
        return line;
    }

    CommandRun drill(java.nio.file.Path file, String... more) {
        List<String> arguments = new ArrayList<>(List.of("drill", "--plain"));
        arguments.addAll(List.of(more));
        Environment world = CommandRun.world(
                file,
                true,
                this,
                out,
                err,
                () -> new fourfold.terminal.SessionClock(
                        () -> Instant.parse("2026-03-02T16:00:00Z")
                                .plusNanos(nanos)
                                .plusMillis(sleptMillis),
                        ZoneId.of("Europe/Berlin"),
                        () -> nanos));
        int code = Fourfold.run(CommandRun.speaking(world, language), arguments.toArray(String[]::new));
        return new CommandRun(code, out.toString(), err.toString());
    }
}
