// SPDX-License-Identifier: Apache-2.0
package fourfold.terminal;

import com.googlecode.lanterna.TerminalSize;
import com.googlecode.lanterna.input.DefaultKeyDecodingProfile;
import com.googlecode.lanterna.input.InputDecoder;
import com.googlecode.lanterna.terminal.virtual.DefaultVirtualTerminal;
import fourfold.log.Surface;
import java.io.IOException;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.util.Map;
import java.util.Optional;

/** What a session does, done once where nobody sees it, so that its classes are loaded before they are needed. */
public final class Rehearsal {
    private Rehearsal() {}

    /**
     * Loads the terminal library and looks at the terminal, which {@link TerminalSession#open} and the first picture would do;
     * any thread may call it.
     */
    public static void ofLibrary() {
        TerminalModes.find();
        Signals.load();
        try (TerminalSession session =
                TerminalSession.on(new DefaultVirtualTerminal(new TerminalSize(40, 12)), true, true)) {
            Picture picture = new Picture(40, 12, true);
            picture.centred(0, "×", Ink.STRONG);
            picture.show(session.screen(), new Picture(1, 1, true), Theme.PLAIN);
            session.paint(true);
        }
        RawTerminal.load();
    }

    /** A session on a terminal that reads nothing and shows nobody anything, but does all that a real one does. */
    public static TerminalSession ofSession() {
        try {
            RawTerminal nowhere = RawTerminal.nowhere();
            return new TerminalSession(
                            nowhere,
                            new Abilities(true, ColourDepth.FULL),
                            Surface.TERMINAL,
                            System::nanoTime,
                            KeyQueue.Waiting.LIVE)
                    .read(Map.of("COLORFGBG", "15;0"), Optional.empty());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Loads the library's own way to read keys, which asking a terminal would do. */
    public static void ofKeyReader() {
        new InputDecoder(Reader.nullReader()).addProfile(new DefaultKeyDecodingProfile());
    }
}
