// SPDX-License-Identifier: Apache-2.0
package fourfold.benchmark;

import fourfold.screens.DigitReader;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.concurrent.locks.LockSupport;
import java.util.regex.Pattern;

/**
 * Sits at a drill in a pseudo-terminal and answers everything rightly, each key at a planned moment after the last byte of
 * the picture has arrived.
 */
final class Sitter {
    private static final Pattern ENTER_GOES_ON = Pattern.compile("[Pp]ress Enter|Enter: go on");
    private static final Pattern PROMPT = Pattern.compile("[0-9]+|[0-9]+[×÷][0-9]+=[0-9]*");
    private static final String TYPED = "Enter ready";
    private static final long QUIET_MILLIS = 15;

    /** When the keys of one answer were sent, in nanoseconds after its picture had arrived. */
    record Sent(long first, long whole) {}

    private final TimedPty program;
    private final SplittableRandom dice;
    private final List<Sent> sent = new ArrayList<>();
    private final Times digitPaints = new Times();
    private final Times enterPaints = new Times();

    Sitter(TimedPty program, long seed) {
        this.program = program;
        this.dice = new SplittableRandom(seed);
    }

    List<Sent> sent() {
        return sent;
    }

    /** From a digit to the last byte of what it changed on the screen. */
    Times digitPaints() {
        return digitPaints;
    }

    /** From Enter to the last byte of the next picture, with the answer kept on the disk in between. */
    Times enterPaints() {
        return enterPaints;
    }

    /** Sits until the drill is over or so many answers are given. */
    void sit(int answers) {
        int seen = 0;
        int overlooked = -1;
        while (sent.size() < answers) {
            long shown = settled(seen, 5_000);
            String text = program.text();
            if (shown == 0) {
                // A prompt that came together with the picture before it has been overlooked; it waits since then.
                shown = program.lastArrival();
                if (seen == overlooked || prompt(text).isEmpty()) {
                    throw new IllegalStateException("nothing comes any more:\n" + text);
                }
                overlooked = seen;
            }
            seen = program.length();
            if (text.contains("Everything is kept")) {
                return;
            }
            Optional<String> prompt = prompt(text);
            if (prompt.isPresent()) {
                answer(comesTo(prompt.get()), shown);
                // What stands now is the answer; the next picture is the next prompt.
                seen = program.length();
            } else if (ENTER_GOES_ON.matcher(text).find()) {
                program.type("\r");
            } else {
                seen = program.length();
            }
        }
    }

    private static Optional<String> prompt(String text) {
        return DigitReader.read(text).filter(PROMPT.asMatchPredicate());
    }

    private void answer(int number, long shown) {
        long at = shown + planned();
        long first = 0;
        int before = program.length();
        for (char digit : Integer.toString(number).toCharArray()) {
            long key = typeAt(at, String.valueOf(digit));
            first = first == 0 ? key : first;
            digitPaints.add(settled(before, 1_000) - key);
            before = program.length();
            at = Math.max(at, System.nanoTime()) + 60_000_000L + dice.nextInt(100_000_000);
        }
        long enter = typeAt(at, "\r");
        sent.add(new Sent(first - shown, enter - shown));
        // While the answer is being kept the digits stand there, and a sign may come; the next picture is without them.
        long taken = program.when(text -> !text.contains(TYPED));
        enterPaints.add(Math.max(taken, settled(program.length(), QUIET_MILLIS)) - enter);
    }

    /** Mostly 300 to 700 ms, so that many answers fit in; one in twenty up to nine seconds. */
    private long planned() {
        int millis = 300 + (dice.nextInt(20) == 0 ? dice.nextInt(8_700) : dice.nextInt(400));
        return millis * 1_000_000L;
    }

    private long typeAt(long at, String key) {
        for (long left = at - System.nanoTime(); left > 0; left = at - System.nanoTime()) {
            LockSupport.parkNanos(left);
        }
        return program.type(key)[0];
    }

    /** Waits for output beyond {@code length} and then for quiet; gives when the last of it arrived, 0 if none came. */
    private long settled(int length, long millis) {
        if (!program.moreThan(length, millis)) {
            return 0;
        }
        int now = program.length();
        while (program.moreThan(now, QUIET_MILLIS)) {
            now = program.length();
        }
        return program.lastArrival();
    }

    private static int comesTo(String prompt) {
        String[] numbers = prompt.replaceFirst("=.*", "").split("[×÷]", -1);
        int left = Integer.parseInt(numbers[0]);
        if (numbers.length == 1) {
            return left;
        }
        int right = Integer.parseInt(numbers[1]);
        return prompt.contains("×") ? left * right : left / right;
    }
}
