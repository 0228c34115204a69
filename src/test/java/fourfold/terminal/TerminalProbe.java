// SPDX-License-Identifier: Apache-2.0
package fourfold.terminal;

import com.googlecode.lanterna.TextColor;
import com.googlecode.lanterna.graphics.TextGraphics;
import com.googlecode.lanterna.input.KeyStroke;
import com.googlecode.lanterna.input.KeyType;
import java.time.Duration;

/**
 * A program for the tests of the stage: it shows which keys it got and when. Ctrl-L forgets them, Ctrl-Z suspends, Ctrl-C
 * ends with code 3, q with 0, x by an exception, b paints without end; a terminal that has gone ends it with code 4.
 */
final class TerminalProbe {
    private final TerminalSession stage;
    private final StringBuilder typed = new StringBuilder();
    private int keys;
    private String last = "none";

    private TerminalProbe(TerminalSession stage) {
        this.stage = stage;
    }

    /** Runs until a key or the terminal ends it. */
    public static void main(String[] arguments) {
        int code;
        try (TerminalSession stage = TerminalSession.open(System.getenv())) {
            code = new TerminalProbe(stage).run();
        } catch (TerminalException e) {
            System.err.println(e.getMessage());
            code = 2;
        }
        System.exit(code);
    }

    private int run() {
        draw(true);
        while (!stage.ended()) {
            var press = stage.next(Duration.ofMillis(20));
            if (press.isPresent()) {
                int code = on(press.get());
                if (code >= 0) {
                    return code;
                }
            }
            draw(stage.resized());
        }
        return 4;
    }

    private int on(KeyPress press) {
        KeyStroke key = press.key();
        keys++;
        last = name(key) + " at " + press.nanos() + ".";
        if (key.getKeyType() == KeyType.Enter) {
            typed.append('E');
        }
        if (key.getKeyType() != KeyType.Character) {
            return -1;
        }
        if (key.isCtrlDown()) {
            return control(key.getCharacter());
        }
        if (!key.isAltDown()) {
            typed.append(key.getCharacter().charValue());
        }
        return switch (key.getCharacter()) {
            case 'q' -> 0;
            case 'x' -> throw new IllegalStateException("asked to fail");
            case 'b' -> paintWithoutEnd();
            default -> -1;
        };
    }

    private int control(char letter) {
        switch (letter) {
            case 'c' -> {
                return 3;
            }
            case 'l' -> {
                typed.setLength(0);
                keys = 0;
            }
            case 'z' -> stage.suspend();
            default -> {}
        }
        return -1;
    }

    private int paintWithoutEnd() {
        while (!stage.ended()) {
            keys++;
            draw(true);
        }
        return 4;
    }

    private static String name(KeyStroke key) {
        String name = key.getKeyType() == KeyType.Character
                ? key.getCharacter().toString()
                : key.getKeyType().name();
        return (key.isCtrlDown() ? "Ctrl-" : "") + (key.isAltDown() ? "Alt-" : "") + name;
    }

    private void draw(boolean complete) {
        if (complete) {
            stage.screen().clear();
        }
        TextGraphics graphics = stage.graphics();
        int columns = stage.size().getColumns();
        int rows = stage.size().getRows();
        String pattern = "7 × 8 = 56 ÷ 1 ░▒▓█ ─│┌ ↔↕ · ";
        for (int row = 5; row < rows; row++) {
            graphics.putString(
                    0, row, pattern.repeat(columns / pattern.length() + 1).substring(0, columns));
        }
        line(
                0,
                "ready " + columns + "x" + rows + " pid "
                        + ProcessHandle.current().pid() + ".");
        line(1, "typed " + typed.substring(Math.max(0, typed.length() - 60)) + ".");
        line(2, "last " + last);
        line(3, "keys " + keys + ".");
        graphics.setForegroundColor(new TextColor.RGB(225, 204, 92));
        graphics.putString(0, 4, "colour");
        stage.paint(complete);
    }

    private void line(int row, String text) {
        stage.graphics()
                .putString(0, row, text + " ".repeat(Math.max(0, stage.size().getColumns() - text.length())));
    }
}
