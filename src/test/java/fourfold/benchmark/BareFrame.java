// SPDX-License-Identifier: Apache-2.0
package fourfold.benchmark;

import com.googlecode.lanterna.TerminalSize;
import com.googlecode.lanterna.graphics.TextGraphics;
import com.googlecode.lanterna.screen.TerminalScreen;
import com.googlecode.lanterna.terminal.ansi.UnixLikeTerminal.CtrlCBehaviour;
import com.googlecode.lanterna.terminal.ansi.UnixTerminal;
import java.io.BufferedOutputStream;
import java.io.FileDescriptor;
import java.io.FileInputStream;
import java.io.FileOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;

/**
 * The floor of a start: a program that opens the library's own terminal and paints one frame of 80 by 24. It is told the
 * size, so it does not wait for the terminal's answer to the question.
 */
final class BareFrame extends UnixTerminal {
    private BareFrame() throws IOException {
        super(
                new FileInputStream(FileDescriptor.in),
                new BufferedOutputStream(new FileOutputStream(FileDescriptor.out), 65_536),
                StandardCharsets.UTF_8,
                CtrlCBehaviour.TRAP);
    }

    @Override
    protected TerminalSize findTerminalSize() {
        return new TerminalSize(80, 24);
    }

    public static void main(String[] none) throws IOException {
        TerminalScreen screen = new TerminalScreen(new BareFrame());
        screen.startScreen();
        TextGraphics pen = screen.newTextGraphics();
        pen.putString(10, 10, "The frame is there.");
        screen.refresh();
        System.in.read();
        screen.stopScreen(false);
        System.exit(0);
    }
}
