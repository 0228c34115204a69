// SPDX-License-Identifier: Apache-2.0
package fourfold.words;

import fourfold.facts.Families;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * For each table five sentences for whoever teaches it: what makes it easy, which facts carry it, a picture, a way from known
 * facts, and where its facts are met in life. Common practice in teaching, without a single source.
 */
public final class TeachingNotes {
    private TeachingNotes() {}

    /** The title, the five sentences of a table, and whence they come. */
    public static List<String> of(Words words, int table) {
        Families.checkTable(table);
        List<String> lines = new ArrayList<>(List.of(words.say("note.title", table), ""));
        List<String> all = text(words.language()).lines().toList();
        int heading = all.indexOf(Integer.toString(table));
        all.subList(heading + 1, all.size()).stream()
                .takeWhile(line -> !line.isEmpty())
                .forEach(lines::add);
        lines.add("");
        lines.add(words.say("note.source"));
        return lines;
    }

    private static String text(Locale language) {
        String name = language.equals(Locale.ENGLISH) ? "notes.txt" : "notes_" + language.getLanguage() + ".txt";
        try (InputStream in = Words.class.getResourceAsStream(name)) {
            if (in == null) {
                throw new IllegalStateException("the program was packaged without its notes");
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
