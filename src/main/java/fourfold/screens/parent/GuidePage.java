package fourfold.screens.parent;

import fourfold.screens.PageContext;
import fourfold.terminal.Footer;
import fourfold.terminal.Ink;
import fourfold.terminal.Key;
import fourfold.terminal.Navigation;
import fourfold.terminal.MutablePage;
import fourfold.terminal.Picture;
import fourfold.terminal.Wrapping;
import fourfold.words.Words;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** The parents' guide, to scroll through. It is packaged with the program, once for each language. */
public final class GuidePage implements MutablePage {
    private final Words words;
    private final List<String> text;
    private int first;
    private int last;
    private int room = 1;

    public GuidePage(PageContext context) {
        this.words = context.words();
        this.text = text(words.language()).lines().toList();
    }

    /** The whole guide in a language. */
    public static String text(Locale language) {
        String name = language.equals(Locale.ENGLISH) ? "guide.txt" : "guide_" + language.getLanguage() + ".txt";
        try (InputStream in = Words.class.getResourceAsStream(name)) {
            if (in == null) {
                throw new IllegalStateException("the program was packaged without its guide");
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @Override
    public void draw(Picture picture) {
        int width = Math.min(72, picture.width() - 4);
        List<String> lines = new ArrayList<>();
        text.forEach(paragraph -> lines.addAll(Wrapping.lines(paragraph, width)));
        room = Math.max(1, picture.height() - 3);
        last = Math.max(0, lines.size() - room);
        first = Math.max(0, Math.min(first, last));
        int x = (picture.width() - width) / 2;
        for (int i = 0; i < Math.min(room, lines.size() - first); i++) {
            String line = lines.get(first + i);
            boolean heading =
                    first + i == 0 || (first + i > 0 && lines.get(first + i - 1).isEmpty());
            picture.text(x, 1 + i, line, heading ? Ink.STRONG : Ink.PLAIN);
        }
        Footer.draw(picture, List.of(words.say("guide.foot").split("   ")));
    }

    @Override
    public Navigation on(Key key, Instant at) {
        switch (key.kind()) {
            case UP -> first--;
            case DOWN -> first++;
            case RIGHT, ENTER -> first = Math.min(last, first + room - 1);
            case LEFT -> first = Math.max(0, first - room + 1);
            case ESCAPE -> {
                return Navigation.BACK;
            }
            default -> {
                return Navigation.STAY;
            }
        }
        return Navigation.STAY;
    }
}
