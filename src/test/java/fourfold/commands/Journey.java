// SPDX-License-Identifier: Apache-2.0
package fourfold.commands;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.googlecode.lanterna.TerminalSize;
import com.googlecode.lanterna.TextCharacter;
import com.googlecode.lanterna.input.KeyStroke;
import com.googlecode.lanterna.input.KeyType;
import com.googlecode.lanterna.terminal.virtual.DefaultVirtualTerminal;
import fourfold.drill.Drill;
import fourfold.drill.Phase;
import fourfold.home.Home;
import fourfold.log.Surface;
import fourfold.progress.DrillSoFar;
import fourfold.scheduling.LastingGain;
import fourfold.screens.DigitReader;
import fourfold.screens.HomePerformer;
import fourfold.screens.child.HomePage;
import fourfold.screens.child.PageContext;
import fourfold.store.Store;
import fourfold.terminal.Look;
import fourfold.terminal.PageLoop;
import fourfold.terminal.Pasted;
import fourfold.terminal.SessionClock;
import fourfold.terminal.TerminalSession;
import fourfold.terminal.Theme;
import fourfold.words.Words;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.SplittableRandom;

/**
 * The real program on a virtual terminal and a real file, with a clock set by hand: keys in, pictures out.
 *
 * <p>After every turn it holds the program to its first law: an answer that counts in the drill is in the file at that
 * moment, seen over a connection of its own.
 */
public final class Journey implements AutoCloseable {
    private final DefaultVirtualTerminal terminal;
    private final TerminalSession stage;
    private final Path file;
    private final Store store;
    private final Home home;
    private PageLoop loop;
    private final SessionClock moments;
    private long nanos = 1_000_000_000L;
    private Duration slept = Duration.ZERO;
    private boolean going = true;
    private boolean waitsForFile = true;
    private int counted;

    public Journey(Path file, Instant start, int columns, int rows, boolean unicode) {
        this(file, Store.open(file), start, columns, rows, unicode);
    }

    /** On a store that was opened in another way; it is closed with the journey. */
    public Journey(Path file, Store opened, Instant start, int columns, int rows, boolean unicode) {
        terminal = new DefaultVirtualTerminal(new TerminalSize(columns, rows));
        stage = TerminalSession.on(terminal, unicode, true, () -> nanos);
        this.file = file;
        store = opened;
        moments = new SessionClock(
                () -> start.plusNanos(nanos - 1_000_000_000L).plus(slept), ZoneId.of("Europe/Berlin"), () -> nanos);
        home = Home.on(store, moments, new SplittableRandom(1)::nextLong);
        loop = loop(Words.english());
        turn();
    }

    /** From now on, in this language. */
    Journey speak(String language) {
        loop = loop(Words.of(Locale.forLanguageTag(language)));
        return this;
    }

    /** From now on, in the colours of this theme. */
    Journey dress(Theme theme) {
        Look.dress(stage, theme);
        return this;
    }

    /** One character of the screen with its colours. */
    TextCharacter cell(int column, int row) {
        return terminal.getCharacter(column, row);
    }

    private PageLoop loop(Words words) {
        return new PageLoop(
                stage,
                moments,
                new HomePerformer(home, words),
                new HomePage.Open(new PageContext(words, new LastingGain(), Surface.TERMINAL)).first(home));
    }

    public Home home() {
        return home;
    }

    Store store() {
        return store;
    }

    Instant now() {
        return moments.now();
    }

    /** Lets time go by in steps of 50 ms, as the loop's ticks do. */
    Journey rest(long millis) {
        for (long left = millis; left >= 0 && going; left -= 50) {
            nanos += Math.min(50, left) * 1_000_000L;
            turn();
        }
        return this;
    }

    /** The computer sleeps: the wall clock goes on and the monotonic clock does not, as on Linux. */
    Journey sleep(Duration time) {
        slept = slept.plus(time);
        return rest(50);
    }

    /** Presses keys one after the other, 100 ms apart: names of keys or single characters. */
    public Journey keys(String keys) {
        for (String key : keys.split(" ")) {
            nanos += 100_000_000L;
            stage.press(stroke(key), nanos);
            turn();
        }
        return this;
    }

    /** Presses a key after so many milliseconds. */
    Journey press(KeyStroke key, long millis) {
        nanos += millis * 1_000_000L;
        stage.press(key, nanos);
        return turn();
    }

    /** Pastes a text: all of it arrives in the same moment. */
    Journey paste(String text) {
        text.chars().forEach(c -> stage.press(new KeyStroke((char) c, false, false), nanos));
        return turn();
    }

    /** Pastes a text in a terminal that hands it over as what it is. */
    public Journey pasteWhole(String text) {
        stage.press(new Pasted(text), nanos);
        return turn();
    }

    /** The terminal goes away. */
    Journey hangUp() {
        stage.press(new KeyStroke(KeyType.EOF), nanos);
        return turn();
    }

    private Journey turn() {
        if (going) {
            going = loop.turn(Duration.ZERO);
            checkKept();
            if (waitsForFile) {
                fileRests();
            }
        }
        return this;
    }

    /** The file's thread finishes, and what came of it is shown. No time goes by on the clock set by hand. */
    private void fileRests() {
        assertTrue(home.practice().fileWork().finish(Duration.ofMinutes(1)));
        while (going && Look.isWaiting(loop)) {
            going = loop.turn(Duration.ZERO);
            checkKept();
            assertTrue(home.practice().fileWork().finish(Duration.ofMinutes(1)));
        }
    }

    /** Turns follow each other, while a calculation goes on, until this is shown; fails after two minutes. */
    Journey until(String shown) {
        long last = System.nanoTime() + Duration.ofMinutes(2).toNanos();
        while (going && !picture().contains(shown) && System.nanoTime() < last) {
            going = loop.turn(Duration.ofMillis(20));
        }
        assertTrue(picture().contains(shown), picture());
        return this;
    }

    /** From now on turns follow each other whether the file's thread has finished or not. */
    Journey doesNotWaitForFile() {
        waitsForFile = false;
        return this;
    }

    /** From now on, and at once, each turn waits for the file's thread. */
    Journey waitsForFile() {
        waitsForFile = true;
        fileRests();
        return this;
    }

    /** The drill that is going on, as far as it counts. */
    Optional<Drill> drill() {
        return Look.drill(loop);
    }

    private void checkKept() {
        Drill drill = drill().orElse(null);
        DrillSoFar soFar = drill == null ? null : drill.progress().drill().orElseThrow();
        if (soFar == null || soFar.size() == counted || picture().contains("not kept yet")) {
            return;
        }
        counted = soFar.size();
        List<String> counting = soFar.answers().stream()
                .map(a -> a.position() + " " + a.prompt().expected() + " " + a.typed())
                .toList();
        String kept = "SELECT position || ' ' || expected || ' ' || COALESCE(typed, '') FROM answer_log WHERE drill = '"
                + soFar.session().id() + "' ORDER BY position";
        assertEquals(counting, Rows.column(file, kept));
    }

    /** Reads the big digits on the screen, types what they come to after a second, and waits until that has stood. */
    Journey answer() {
        return answer(0);
    }

    /** The same, off by so much. */
    Journey answer(int off) {
        String shown = DigitReader.read(picture()).orElse("");
        if (shown.isEmpty()) {
            return keys("Enter").rest(100);
        }
        rest(1000);
        keys(String.join(" ", Integer.toString(comesTo(shown) + off).split("")));
        return keys("Enter").rest(Drill.RIGHT_STANDS.toMillis() + 50);
    }

    /** As {@link #answer(int)}, told by the drill instead of read from the screen; where nothing is asked, Enter. */
    Journey give(int off) {
        if (drill().orElseThrow().phase() instanceof Phase.Asking asking) {
            rest(1000);
            return keys(String.join(
                            " ",
                            Integer.toString(asking.prompt().expected() + off).split("")))
                    .keys("Enter")
                    .rest(Drill.RIGHT_STANDS.toMillis() + 50);
        }
        return keys("Enter").rest(100);
    }

    /** Types what the question on the screen comes to, and stays while the right answer stands. */
    Journey answerAndLook() {
        String shown = DigitReader.read(picture()).orElseThrow();
        return keys(String.join(" ", Integer.toString(comesTo(shown)).split("")) + " Enter");
    }

    /** What a number or a question on the screen comes to. */
    static int comesTo(String shown) {
        String question = shown.contains("=") ? shown.substring(0, shown.indexOf('=')) : shown;
        if (question.contains("?")) {
            int known = Integer.parseInt(question.substring(0, question.indexOf('?') - 1));
            return Integer.parseInt(shown.substring(shown.indexOf('=') + 1)) / known;
        }
        if (question.contains("×") || question.contains("·")) {
            String[] factors = question.split("[×·]");
            return Integer.parseInt(factors[0]) * Integer.parseInt(factors[1]);
        }
        if (question.contains("÷") || question.contains(":")) {
            String[] numbers = question.split("[÷:]");
            return Integer.parseInt(numbers[0]) / Integer.parseInt(numbers[1]);
        }
        return Integer.parseInt(question);
    }

    /** Types letters, spaces too. */
    public Journey type(String text) {
        for (char c : text.toCharArray()) {
            press(new KeyStroke(c, false, false), 100);
        }
        return this;
    }

    Journey size(int columns, int rows) {
        terminal.setTerminalSize(new TerminalSize(columns, rows));
        return rest(50);
    }

    boolean isGoing() {
        return going;
    }

    /** What the terminal shows, without blanks at the ends of lines. */
    public String picture() {
        TerminalSize size = terminal.getTerminalSize();
        StringBuilder text = new StringBuilder();
        for (int y = 0; y < size.getRows(); y++) {
            StringBuilder row = new StringBuilder();
            for (int x = 0; x < size.getColumns(); x++) {
                row.append(terminal.getCharacter(x, y).getCharacterString());
            }
            text.append(row.toString().stripTrailing()).append('\n');
        }
        return text.toString();
    }

    private static KeyStroke stroke(String key) {
        return switch (key) {
            case "Enter" -> new KeyStroke(KeyType.Enter);
            case "Esc" -> new KeyStroke(KeyType.Escape);
            case "Up" -> new KeyStroke(KeyType.ArrowUp);
            case "Down" -> new KeyStroke(KeyType.ArrowDown);
            case "Left" -> new KeyStroke(KeyType.ArrowLeft);
            case "Right" -> new KeyStroke(KeyType.ArrowRight);
            case "Backspace" -> new KeyStroke(KeyType.Backspace);
            case "Ctrl-Z" -> new KeyStroke('z', true, false);
            case "Ctrl-C" -> new KeyStroke('c', true, false);
            case "Space" -> new KeyStroke(' ', false, false);
            default -> new KeyStroke(key.charAt(0), false, false);
        };
    }

    @Override
    public void close() {
        stage.close();
        home.practice().fileWork().close();
        store.close();
    }
}
