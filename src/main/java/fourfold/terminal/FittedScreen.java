// SPDX-License-Identifier: Apache-2.0
package fourfold.terminal;

import com.googlecode.lanterna.TextCharacter;
import com.googlecode.lanterna.input.KeyStroke;
import com.googlecode.lanterna.input.KeyType;
import com.googlecode.lanterna.screen.TerminalScreen;
import com.googlecode.lanterna.terminal.Terminal;
import java.io.IOException;
import java.time.Duration;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * The library's screen with two changes: keys come from the queue, and every cell is fitted to what the terminal can show
 * just before it leaves. Whoever draws need not think of either.
 */
final class FittedScreen extends TerminalScreen {
    private static final Duration TICK = Duration.ofMillis(50);

    private final KeyQueue keys;
    private final Abilities abilities;

    FittedScreen(Terminal terminal, KeyQueue keys, Abilities abilities) throws IOException {
        super(terminal);
        this.keys = keys;
        this.abilities = abilities;
    }

    @Override
    public synchronized void refresh(RefreshType type) throws IOException {
        if (!abilities.showAll()) {
            fitCells();
        }
        super.refresh(type);
    }

    private void fitCells() {
        for (int row = 0; row < getTerminalSize().getRows(); row++) {
            for (int column = 0; column < getTerminalSize().getColumns(); column++) {
                TextCharacter cell = getBackBuffer().getCharacterAt(column, row);
                TextCharacter fitted = abilities.fit(cell);
                if (!fitted.equals(cell)) {
                    getBackBuffer().setCharacterAt(column, row, fitted);
                }
            }
        }
    }

    @Override
    public @Nullable KeyStroke pollInput() {
        return keyWithin(Duration.ZERO).orElse(null);
    }

    @Override
    public KeyStroke readInput() {
        Optional<KeyStroke> key = keyWithin(TICK);
        while (key.isEmpty()) {
            key = keyWithin(TICK);
        }
        return key.get();
    }

    private Optional<KeyStroke> keyWithin(Duration wait) {
        Optional<KeyStroke> key = keys.next(wait).map(KeyPress::key);
        return key.isEmpty() && keys.ended() ? Optional.of(new KeyStroke(KeyType.EOF)) : key;
    }
}
