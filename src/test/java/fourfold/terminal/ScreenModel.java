// SPDX-License-Identifier: Apache-2.0
package fourfold.terminal;

import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * A small terminal that shows what a program sent. Whatever it does not know it remembers, so that a test can insist that
 * nothing but the usual was sent. It knows cursor position, erase, colours, and the modes a full-screen program sets
 * (ECMA-48 with its mode 8, in which letters stand in the order sent; xterm's private modes 1, 7, 25, 1049 and 2004).
 */
public final class ScreenModel {
    private static final Set<Integer> MODES = Set.of(1, 7, 25, 1049, 2004);

    private final CharsetDecoder utf8 = StandardCharsets.UTF_8
            .newDecoder()
            .onMalformedInput(CodingErrorAction.REPLACE)
            .onUnmappableCharacter(CodingErrorAction.REPLACE);
    /** What a terminal is asked about its colours and its kind; this one does not answer. */
    private static final Set<String> QUESTIONS = Set.of("]10;?\u0007", "]11;?\u0007", "[c");

    private final Set<String> unknown = new TreeSet<>();
    private boolean orderAsSent;
    private final Set<String> styles = new TreeSet<>();
    private final Set<Integer> modes = new TreeSet<>(Set.of(7, 25));
    private final StringBuilder sequence = new StringBuilder();
    private byte[] rest = new byte[0];
    private char[][] main;
    private char[][] alternate;
    private int column;
    private int row;
    private int savedColumn;
    private int savedRow;
    private boolean inSequence;

    /** A blank screen. */
    public ScreenModel(int columns, int rows) {
        main = blank(columns, rows);
        alternate = blank(columns, rows);
    }

    private static char[][] blank(int columns, int rows) {
        char[][] cells = new char[rows][columns];
        for (char[] line : cells) {
            Arrays.fill(line, ' ');
        }
        return cells;
    }

    /** Changes the size; what was shown is lost, as a program must draw it anew. */
    public void resize(int columns, int rows) {
        main = blank(columns, rows);
        alternate = blank(columns, rows);
        column = 0;
        row = 0;
    }

    /** Shows what these bytes say; they may be cut anywhere. */
    public void accept(byte[] bytes) {
        byte[] all = Arrays.copyOf(rest, rest.length + bytes.length);
        System.arraycopy(bytes, 0, all, rest.length, bytes.length);
        ByteBuffer in = ByteBuffer.wrap(all);
        CharBuffer out = CharBuffer.allocate(all.length);
        utf8.reset().decode(in, out, false);
        rest = Arrays.copyOfRange(all, in.position(), all.length);
        out.flip().chars().forEach(c -> accept((char) c));
    }

    private void accept(char c) {
        if (inSequence) {
            sequence.append(c);
            inSequence = !isWhole();
            if (!inSequence) {
                obey(sequence.toString());
            }
        } else if (c == 0x1b) {
            inSequence = true;
            sequence.setLength(0);
        } else {
            show(c);
        }
    }

    private boolean isWhole() {
        char first = sequence.charAt(0);
        char last = sequence.charAt(sequence.length() - 1);
        return switch (first) {
            case '[' -> sequence.length() > 1 && last >= 0x40;
            case ']' -> last == 0x07;
            case '(', ')' -> sequence.length() == 2;
            default -> true;
        };
    }

    private void obey(String text) {
        char last = text.charAt(text.length() - 1);
        String body = text.substring(Math.min(1, text.length() - 1), text.length() - 1);
        if (text.matches("\\[[0-9;]*H")) {
            moveTo(body);
        } else if (text.matches("\\[[0-9;]*m")) {
            styles.add(body);
        } else if (text.equals("[2J")) {
            clear(0, 0);
        } else if (text.equals("[J") || text.equals("[K")) {
            clear(row, column);
        } else if (text.matches("\\[\\?[0-9]+[hl]") && MODES.contains(Integer.valueOf(body.substring(1)))) {
            mode(Integer.parseInt(body.substring(1)), last == 'h');
        } else if (text.equals("[8l") || text.equals("[8h")) {
            orderAsSent = last == 'l';
        } else if (!text.equals(">") && !QUESTIONS.contains(text)) {
            unknown.add("ESC " + text);
        }
    }

    private void moveTo(String body) {
        String[] place = body.isEmpty() ? new String[] {"1", "1"} : body.split(";", -1);
        row = Math.min(Integer.parseInt(place[0]), cells().length) - 1;
        column = Math.min(Integer.parseInt(place[1]), cells()[0].length) - 1;
    }

    private void mode(int number, boolean on) {
        if (number == 1049 && on != isAlternate()) {
            if (on) {
                savedRow = row;
                savedColumn = column;
            } else {
                row = savedRow;
                column = savedColumn;
            }
        }
        if (on) {
            modes.add(number);
        } else {
            modes.remove(number);
        }
    }

    private void clear(int fromRow, int fromColumn) {
        for (int r = fromRow; r < cells().length; r++) {
            Arrays.fill(cells()[r], r == fromRow ? fromColumn : 0, cells()[r].length, ' ');
        }
    }

    private void show(char c) {
        switch (c) {
            case '\r' -> column = 0;
            case '\n' -> newLine();
            case '\b' -> column = Math.max(0, column - 1);
            case '\t' -> column = Math.min((column / 8 + 1) * 8, cells()[0].length - 1);
            case 0x07 -> {}
            default -> put(c);
        }
    }

    private void put(char c) {
        if (c < ' ') {
            unknown.add("control character " + (int) c);
            return;
        }
        if (column >= cells()[0].length) {
            if (modes.contains(7)) {
                column = 0;
                newLine();
            } else {
                column = cells()[0].length - 1;
            }
        }
        cells()[row][column++] = c;
    }

    private void newLine() {
        if (row < cells().length - 1) {
            row++;
            return;
        }
        char[][] cells = cells();
        System.arraycopy(cells, 1, cells, 0, cells.length - 1);
        cells[row] = blank(cells[0].length, 1)[0];
    }

    private char[][] cells() {
        return isAlternate() ? alternate : main;
    }

    /** What is shown now: one line for each row, without blanks at the ends. */
    public String text() {
        return Stream.of(cells()).map(line -> new String(line).stripTrailing()).collect(Collectors.joining("\n"));
    }

    /** Whether the screen for full-screen programs is shown. */
    public boolean isAlternate() {
        return modes.contains(1049);
    }

    /** Whether the modes are those of a terminal nobody has touched. */
    public boolean isAsFound() {
        return modes.equals(Set.of(7, 25)) && !orderAsSent;
    }

    /** Everything that was sent and is not known here. */
    public Set<String> unknown() {
        return Set.copyOf(unknown);
    }

    /** The parameters of every colour and emphasis that was sent, as in {@code 38;2;1;2;3}. */
    public Set<String> styles() {
        return Set.copyOf(styles);
    }
}
