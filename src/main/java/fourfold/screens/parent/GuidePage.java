package fourfold.screens.parent;

import fourfold.screens.KeyPage;
import fourfold.terminal.Footer;
import fourfold.terminal.Ink;
import fourfold.terminal.PageEffect;
import fourfold.terminal.PageEvent;
import fourfold.terminal.PageResult;
import fourfold.terminal.Picture;
import fourfold.terminal.Wrapping;
import fourfold.words.Words;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;

/** The parents' guide, to scroll through. It is packaged with the program, once for each language. */
public record GuidePage(Words words, List<String> text, int first) implements KeyPage {
    /** The guide's first page, in this language. */
    public static GuidePage of(Words words) {
        return new GuidePage(words, text(words.language()).lines().toList(), 0);
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
        int width = width(picture.width());
        List<String> lines = lines(picture.width());
        int room = room(picture.height());
        int from = Math.min(first, Math.max(0, lines.size() - room));
        int x = (picture.width() - width) / 2;
        for (int i = 0; i < Math.min(room, lines.size() - from); i++) {
            String line = lines.get(from + i);
            boolean heading = from + i == 0 || lines.get(from + i - 1).isEmpty();
            picture.text(x, 1 + i, line, heading ? Ink.STRONG : Ink.PLAIN);
        }
        Footer.draw(picture, List.of(words.say("guide.foot").split("   ")));
    }

    private static int width(int columns) {
        return Math.min(72, columns - 4);
    }

    private static int room(int rows) {
        return Math.max(1, rows - 3);
    }

    private List<String> lines(int columns) {
        return text.stream()
                .flatMap(paragraph -> Wrapping.lines(paragraph, width(columns)).stream())
                .toList();
    }

    @Override
    public PageResult pressed(PageEvent.Pressed key) {
        int page = room(key.rows()) - 1;
        int last = Math.max(0, lines(key.columns()).size() - room(key.rows()));
        int from = Math.min(first, last);
        return switch (key.key().kind()) {
            case RIGHT, ENTER -> at(Math.min(last, from + page));
            case LEFT -> at(Math.max(0, from - page));
            case ESCAPE -> PageResult.of(this, PageEffect.BACK);
            default -> at(key.key().scrolled(from, last));
        };
    }

    private PageResult at(int line) {
        return PageResult.of(new GuidePage(words, text, line));
    }
}
