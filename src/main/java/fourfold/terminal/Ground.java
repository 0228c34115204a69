// SPDX-License-Identifier: Apache-2.0
package fourfold.terminal;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Whether the terminal's ground is dark or light. The terminal is asked for its foreground and background (xterm's control
 * sequences OSC 10 and OSC 11) and for its kind (ECMA-48, DA): replies keep their order, so that the kind alone means that
 * the colours are not told. A terminal that says nothing is not waited for.
 */
final class Ground {
    /** All three questions in one batch; ended by BEL, since some old terminals answer the other ending wrongly. */
    static final String QUESTION = "\u001b]10;?\u0007\u001b]11;?\u0007\u001b[c";

    /** How long an answer is waited for (our own choice). */
    static final long PATIENCE_NANOS = TimeUnit.MILLISECONDS.toNanos(100);

    /** Backgrounds darker than this are dark if the foreground is not known (our own choice). */
    private static final double DARK_BELOW = 0.18;

    private static final Pattern COLOUR =
            Pattern.compile("(1[01]);rgba?:([0-9a-fA-F]{1,4})/([0-9a-fA-F]{1,4})/([0-9a-fA-F]{1,4})(?:/.*)?");

    /** Terminals that answer wrongly, or would show the question. */
    private static final List<String> NEVER_ASKED = List.of("dumb", "linux", "eterm");

    private final CountDownLatch answered = new CountDownLatch(1);
    private volatile OptionalDouble foreground = OptionalDouble.empty();
    private volatile OptionalDouble background = OptionalDouble.empty();

    /** Whether a terminal with these variables may be asked. */
    static boolean mayBeAsked(Map<String, String> environment) {
        String term = environment.getOrDefault("TERM", "").toLowerCase(Locale.ROOT);
        boolean screen = term.startsWith("screen")
                && !environment.getOrDefault("TERM_PROGRAM", "").equalsIgnoreCase("tmux");
        return !term.isEmpty()
                && !NEVER_ASKED.contains(term)
                && !term.startsWith("vt")
                && !screen
                && ColourDepth.of(environment).hasPalette();
    }

    /** Takes a reply: what stood between the sequence's beginning and its end. */
    void take(String reply) {
        Matcher colour = COLOUR.matcher(reply);
        if (colour.matches()) {
            OptionalDouble its = OptionalDouble.of(luminance(colour.group(2), colour.group(3), colour.group(4)));
            if (colour.group(1).equals("10")) {
                foreground = its;
            } else {
                background = its;
            }
        } else if (reply.startsWith("?") && reply.endsWith("c")) {
            answered.countDown();
        }
    }

    /** Whether the last of the replies has come. */
    boolean isAnswered() {
        return answered.getCount() == 0;
    }

    /** Waits for the replies, at most so long; then says what is known. */
    Optional<Theme> theme(long nanos) {
        try {
            answered.await(nanos, TimeUnit.NANOSECONDS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        return theme(foreground, background);
    }

    static Optional<Theme> theme(OptionalDouble foreground, OptionalDouble background) {
        if (background.isEmpty()) {
            return Optional.empty();
        }
        double limit = foreground.orElse(DARK_BELOW);
        return Optional.of(background.getAsDouble() < limit ? Theme.DARK : Theme.LIGHT);
    }

    /** What the variable COLORFGBG says, as some terminals set it: its last field is the background (from memory). */
    static Optional<Theme> told(Map<String, String> environment) {
        String[] fields = environment.getOrDefault("COLORFGBG", "").split(";", -1);
        String last = fields[fields.length - 1];
        if (!last.matches("[0-9]|1[0-5]")) {
            return Optional.empty();
        }
        int entry = Integer.parseInt(last);
        return Optional.of(entry <= 6 || entry == 8 ? Theme.DARK : Theme.LIGHT);
    }

    /** Relative luminance, 0 to 1, as in the Web Content Accessibility Guidelines 2.2. */
    private static double luminance(String red, String green, String blue) {
        return 0.2126 * part(red) + 0.7152 * part(green) + 0.0722 * part(blue);
    }

    private static double part(String hex) {
        double s = Integer.parseInt(hex, 16) / (Math.pow(16, hex.length()) - 1);
        return s <= 0.03928 ? s / 12.92 : Math.pow((s + 0.055) / 1.055, 2.4);
    }
}
