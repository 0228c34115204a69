// SPDX-License-Identifier: Apache-2.0
package fourfold.commands;

import fourfold.screens.DigitReader;
import fourfold.terminal.PtyProgram;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.locks.LockSupport;
import java.util.function.Predicate;
import java.util.regex.Pattern;

/**
 * A child at a real terminal: reads the big digits, types, and notes what it typed under which prompt. It knows the pages
 * only by what every child is told: that Enter is for going on, and that Enter ends an answer once digits stand there.
 */
final class PtyChild {
    /** What was on the screen and what was typed under it, nothing for "show me". */
    record Reply(String shown, String typed) {
        /** The prompt as the file's view writes it. */
        String asked() {
            if (shown.contains("?")) {
                return shown.replace("×", " x ").replace("=", " = ");
            }
            String prompt = shown.contains("=") ? shown.substring(0, shown.indexOf('=')) : "copy " + shown;
            return prompt.replace("×", " x ").replace("÷", " / ");
        }

        boolean isFromMemory() {
            return shown.endsWith("=");
        }
    }

    private static final String TYPED = "Enter ready";
    private static final String SHOW_ME = "Enter show me";
    private static final Pattern ENTER_GOES_ON = Pattern.compile("[Pp]ress Enter|Enter: go on");
    private static final Pattern PROMPT = Pattern.compile("[0-9]+|[0-9]+[×÷][0-9]+=[0-9]*|[0-9]+×\\?=[0-9]+");
    private static final long LONGEST_NANOS = 330_000_000_000L;
    private static final long MAY_BE_SHOWN_NANOS = 1_700_000_000L;

    private final PtyProgram program;
    private final List<Reply> replies = new ArrayList<>();
    private int fromMemory;
    private final AtomicInteger typed = new AtomicInteger();
    private final AtomicInteger counted = new AtomicInteger();
    private volatile boolean stopped;

    PtyChild(PtyProgram program) {
        this.program = program;
    }

    List<Reply> replies() {
        return replies;
    }

    /** How many answers were ended with Enter. */
    int typed() {
        return typed.get();
    }

    /** How many answers the screen has shown to be taken. */
    int counted() {
        return counted.get();
    }

    /** Takes the child away from the keys, from another thread; what it is waiting for comes no more. */
    void stop() {
        stopped = true;
    }

    /** Plays until it is stopped. */
    void playOn() {
        playUntil(text -> stopped);
    }

    /** Plays until the words are on the screen: every sixth question wrong, every ninth not at all. */
    void playUntil(String words) {
        playUntil(text -> text.contains(words));
    }

    /** Plays until so many prompts are answered. */
    void answer(int prompts) {
        playUntil(text -> replies.size() >= prompts);
    }

    private void playUntil(Predicate<String> over) {
        long begun = System.nanoTime();
        for (String text = program.text(); !over.test(text); text = program.text()) {
            if (System.nanoTime() - begun > LONGEST_NANOS) {
                throw new AssertionError("the drill does not end:\n" + text);
            }
            Optional<String> shown = DigitReader.read(text).filter(PROMPT.asMatchPredicate());
            if (shown.isPresent()) {
                reply(shown.get());
            } else if (ENTER_GOES_ON.matcher(text).find()) {
                program.type("\r");
                pause(200);
            } else {
                pause(20);
            }
        }
    }

    /** Looks on while the day's stones are laid, which any key would end. */
    void watchTheStones() {
        pause(2000);
    }

    /** Waits as long as a paste may take to pass, and takes back what it left standing. */
    void letAPastePass() {
        pause(500);
        while (program.text().contains(TYPED)) {
            program.type("\u007f");
            pause(100);
        }
    }

    private void reply(String shown) {
        boolean memory = shown.endsWith("=");
        if (memory && fromMemory % 9 == 8 && program.text().contains(SHOW_ME)) {
            showMe(shown);
            return;
        }
        int answer = Journey.comesTo(shown) + (memory && fromMemory % 6 == 5 ? 1 : 0);
        program.type(Integer.toString(answer));
        if (!waitFor(TYPED, true, 400) && isAnother(shown)) {
            return; // A right answer was still standing there.
        }
        // On a slow machine the digits may stand there late; typing them twice would be another answer.
        if (!waitFor(TYPED, true, 2000)) {
            return;
        }
        if (!isStill(shown)) {
            program.type("\u007f".repeat(Integer.toString(answer).length()));
            waitFor(TYPED, false, 2000);
            return; // The next question had come in the meantime.
        }
        program.type("\r");
        note(new Reply(shown, Integer.toString(answer)));
        if (!waitFor(TYPED, false, 10_000)) {
            missed("the answer was not taken");
            return;
        }
        counted.incrementAndGet();
    }

    private boolean isAnother(String shown) {
        pause(300);
        return !program.text().contains(TYPED) && !isStill(shown);
    }

    /** Whether the same prompt stands there, with or without what is typed behind it. */
    private boolean isStill(String shown) {
        return DigitReader.read(program.text())
                .filter(now -> now.startsWith(shown) || shown.contains("?"))
                .isPresent();
    }

    private void showMe(String shown) {
        pause(MAY_BE_SHOWN_NANOS / 1_000_000);
        program.type("\r");
        note(new Reply(shown, ""));
        if (!waitFor(SHOW_ME, false, 10_000)) {
            missed("the answer was not shown");
            return;
        }
        counted.incrementAndGet();
    }

    private void missed(String what) {
        if (!stopped) {
            throw new AssertionError(what + ":\n" + program.text());
        }
    }

    private void note(Reply reply) {
        replies.add(reply);
        typed.incrementAndGet();
        fromMemory += reply.isFromMemory() ? 1 : 0;
    }

    private boolean waitFor(String words, boolean there, long millis) {
        long until = System.nanoTime() + millis * 1_000_000;
        while (program.text().contains(words) != there) {
            if (stopped || System.nanoTime() > until) {
                return false;
            }
            pause(10);
        }
        return true;
    }

    private static void pause(long millis) {
        LockSupport.parkNanos(millis * 1_000_000);
    }
}
