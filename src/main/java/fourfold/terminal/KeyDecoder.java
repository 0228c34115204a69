// SPDX-License-Identifier: Apache-2.0
package fourfold.terminal;

import com.googlecode.lanterna.input.KeyStroke;
import com.googlecode.lanterna.input.KeyType;
import java.time.Duration;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Optional;

/**
 * Turns the characters a terminal sends into keys.
 *
 * <p>An escape sequence (ECMA-48, sections 5.4 and 5.6) is taken whole, however it is cut into pieces: one that is not
 * known becomes a single {@link KeyType#Unknown} and never types its digits. Which key a known sequence means is the
 * library's table. A bracketed paste becomes one key as well, {@link Pasted}.
 */
final class KeyDecoder {
    private static final char ESC = 0x1b;
    private static final char BELL = 0x07;
    private static final String PASTE_BEGINS = "200~";
    private static final String PASTE_ENDS = ESC + "[201~";
    /** A lone Escape and the beginning of a cursor key look alike until this much silence has passed. */
    private static final Duration LONE_ESCAPE = Duration.ofMillis(25);
    /** No hand types two characters of a sequence this close to one another, but a slow line may cut it. */
    private static final Duration CUT_SEQUENCE = Duration.ofMillis(500);

    private static final KeyTable TABLE = new KeyTable();

    private enum Part {
        TEXT,
        ESCAPE,
        CONTROL,
        SINGLE,
        STRING,
        STRING_ESCAPE,
        PASTE,
        MOUSE
    }

    /** While replies are waited for, a lone Escape may be the beginning of one that was cut. */
    private static final Duration CUT_REPLY = Duration.ofMillis(100);
    /** No reply is longer. */
    private static final int LONGEST_REPLY = 64;

    private final Deque<KeyStroke> keys = new ArrayDeque<>();
    private final Deque<String> replies = new ArrayDeque<>();
    private final StringBuilder held = new StringBuilder();
    private Part part = Part.TEXT;
    private boolean awaiting;
    private boolean escapedBefore;

    /** Whether replies of the terminal are to be expected, which may come late and in pieces. */
    void awaiting(boolean replies) {
        awaiting = replies;
        escapedBefore &= replies;
    }

    /** The next reply of the terminal, without its beginning and end; a reply is never a key. */
    Optional<String> reply() {
        return Optional.ofNullable(replies.poll());
    }

    /** The next whole key, if there is one. */
    Optional<KeyStroke> next() {
        return Optional.ofNullable(keys.poll());
    }

    /** How long to wait for the rest of what has begun; zero if nothing has. */
    Duration patience() {
        return switch (part) {
            case TEXT -> Duration.ZERO;
            case ESCAPE -> awaiting ? CUT_REPLY : LONE_ESCAPE;
            default -> CUT_SEQUENCE;
        };
    }

    /** Nothing came while {@link #patience()} lasted: what has begun will not be completed. */
    void silence() {
        if (awaiting && mayBeReply()) {
            return;
        }
        escapedBefore = awaiting && part == Part.ESCAPE;
        if (part == Part.ESCAPE) {
            keys.add(new KeyStroke(KeyType.Escape));
        } else if (part != Part.TEXT) {
            unknown();
        }
        become(Part.TEXT);
    }

    /** Whether what has begun can be a reply that was cut: the rest of it is swallowed whenever it comes. */
    private boolean mayBeReply() {
        return part == Part.STRING
                || part == Part.STRING_ESCAPE
                || (part == Part.CONTROL && (held.isEmpty() || held.charAt(0) == '?'));
    }

    /** Takes one more character. */
    void take(char c) {
        switch (part) {
            case TEXT -> text(c);
            case ESCAPE -> afterEscape(c);
            case CONTROL -> control(c);
            case SINGLE -> single(c);
            case STRING, STRING_ESCAPE -> string(c);
            case PASTE -> paste(c);
            case MOUSE -> mouse(c);
        }
    }

    private void text(char c) {
        boolean cut = escapedBefore && (c == ']' || c == '[');
        escapedBefore = false;
        if (c == ESC) {
            become(Part.ESCAPE);
        } else if (cut) {
            become(c == ']' ? Part.STRING : Part.CONTROL);
        } else if (c == '\u009b') {
            become(Part.CONTROL);
        } else {
            plain(c).ifPresent(keys::add);
        }
    }

    private static Optional<KeyStroke> plain(char c) {
        if (c == '\uFFFD') {
            // What the charset put in place of bytes that are no character.
            return Optional.empty();
        }
        return Optional.of(
                switch (c) {
                    case '\r', '\n' -> new KeyStroke(KeyType.Enter);
                    case 0x7f, '\b' -> new KeyStroke(KeyType.Backspace);
                    case '\t' -> new KeyStroke(KeyType.Tab);
                    default -> character(c);
                });
    }

    private static KeyStroke character(char c) {
        if (c == 0) {
            return new KeyStroke(' ', true, false);
        }
        if (c < ' ') {
            return new KeyStroke(Character.toLowerCase((char) (c + 0x40)), true, false);
        }
        if (c > 0x7f && c < 0xa0) {
            return new KeyStroke(KeyType.Unknown);
        }
        return new KeyStroke(c, false, false);
    }

    private void afterEscape(char c) {
        switch (c) {
            case '[' -> become(Part.CONTROL);
            case 'O' -> become(Part.SINGLE);
            case ']', 'P', 'X', '^', '_' -> become(Part.STRING);
            case ESC -> keys.add(new KeyStroke(KeyType.Escape));
            default -> {
                become(Part.TEXT);
                if (c < ' ' || c == 0x7f) {
                    keys.add(new KeyStroke(KeyType.Escape));
                    text(c);
                } else {
                    keys.add(new KeyStroke(c, false, true));
                }
            }
        }
    }

    private void control(char c) {
        // The Linux console sends F1 to F5 as ESC [ [ and a letter: its second bracket does not end the sequence.
        boolean consoleBracket = c == '[' && held.isEmpty();
        if (c < ' ') {
            broken(c);
        } else if (c < 0x40 || consoleBracket) {
            held.append(c);
        } else if (c == 'M' && held.isEmpty()) {
            become(Part.MOUSE);
        } else {
            String body = held.append(c).toString();
            become(body.equals(PASTE_BEGINS) ? Part.PASTE : Part.TEXT);
            if (awaiting && body.startsWith("?") && c == 'c') {
                replies.add(body);
            } else if (part == Part.TEXT) {
                keys.add(TABLE.key(body));
            }
        }
    }

    private void single(char c) {
        if (c < ' ') {
            broken(c);
        } else if (c < 0x40) {
            held.append(c);
        } else {
            String body = held.append(c).toString();
            become(Part.TEXT);
            keys.add(TABLE.keypad(c).orElseGet(() -> TABLE.key(body)));
        }
    }

    private void string(char c) {
        if (c == BELL || (part == Part.STRING_ESCAPE && c == '\\')) {
            ended();
            become(Part.TEXT);
        } else if (part == Part.STRING_ESCAPE) {
            ended();
            become(Part.ESCAPE);
            take(c);
        } else if (c == ESC) {
            part = Part.STRING_ESCAPE;
        } else if (held.length() < LONGEST_REPLY) {
            held.append(c);
        } else if (awaiting) {
            // No reply is as long as this: what follows is typed.
            unknown();
            become(Part.TEXT);
        }
    }

    /** A string has ended: a colour, if that was asked for. */
    private void ended() {
        boolean colour = held.indexOf("10;") == 0 || held.indexOf("11;") == 0;
        if (awaiting && colour) {
            replies.add(held.toString());
        } else {
            unknown();
        }
    }

    private void paste(char c) {
        held.append(c);
        // Of a long one only the end is kept, where its end shows; it is no text that is asked for.
        if (held.length() > Pasted.LONGEST + 2 * PASTE_ENDS.length()) {
            held.delete(0, PASTE_ENDS.length());
        }
        int end = held.length() - PASTE_ENDS.length();
        if (end >= 0 && PASTE_ENDS.contentEquals(held.subSequence(end, held.length()))) {
            keys.add(new Pasted(held.substring(0, end)));
            become(Part.TEXT);
        }
    }

    /** The old mouse report has three characters after its letter. */
    private void mouse(char c) {
        if (held.append(c).length() == 3) {
            unknown();
            become(Part.TEXT);
        }
    }

    private void broken(char c) {
        unknown();
        become(Part.TEXT);
        text(c);
    }

    private void unknown() {
        keys.add(new KeyStroke(KeyType.Unknown));
    }

    private void become(Part next) {
        part = next;
        held.setLength(0);
    }
}
