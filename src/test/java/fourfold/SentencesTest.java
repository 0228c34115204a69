// SPDX-License-Identifier: Apache-2.0
package fourfold;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Guards against a text in the code, where no other language can say it: texts are in the bundles of words. */
class SentencesTest {
    private static final Path CODE = Path.of("src/main/java/fourfold");

    /** A comment, or a literal on one line; whichever begins first. */
    private static final Pattern TOKEN = Pattern.compile(
            "/\\*.*?\\*/|//[^\\n]*|'(?:[^'\\\\]|\\\\.)+'|\"((?:[^\"\\\\\\n]|\\\\.)*)\"", Pattern.DOTALL);

    private static final Pattern SENTENCE = Pattern.compile("\\b[a-z]{2,} [a-z]{2,}\\b");

    private record Allowed(String path, Pattern literal) {
        static Allowed of(String line) {
            List<String> parts = List.of(line.split(" ; ", 3));
            assertEquals(3, parts.size(), "path ; pattern ; reason: " + line);
            return new Allowed(parts.get(0), Pattern.compile(parts.get(1)));
        }

        boolean covers(String file, String text) {
            return file.startsWith(path) && literal.matcher(text).matches();
        }
    }

    private static List<String> sentences(String code) {
        return TOKEN.matcher(code)
                .results()
                .map(token -> token.group(1))
                .filter(literal -> literal != null && SENTENCE.matcher(literal).find())
                .toList();
    }

    private static Stream<Allowed> exceptions() throws IOException {
        return Files.readAllLines(Path.of("src/test/resources/fourfold/sentences.txt")).stream()
                .filter(line -> !line.startsWith("#"))
                .map(Allowed::of);
    }

    @Test
    void noSentenceStandsInTheCodeOutsideWords() throws IOException {
        List<Allowed> exceptions = exceptions().toList();
        try (Stream<Path> files = Files.walk(CODE)) {
            for (Path file : files.filter(f -> f.toString().endsWith(".java")).toList()) {
                String name = CODE.relativize(file).toString().replace('\\', '/');
                if (name.startsWith("words/")) {
                    continue;
                }
                List<String> found = sentences(Files.readString(file)).stream()
                        .filter(text -> exceptions.stream().noneMatch(e -> e.covers(name, text)))
                        .toList();
                assertEquals(List.of(), found, name);
            }
        }
    }

    @Test
    void aSentenceIsFoundAndACommentOrAKeyIsNot() {
        assertEquals(List.of("nothing was changed"), sentences("say(\"nothing was changed\"); // not \"said to you\""));
        assertEquals(List.of("it's \\\"so it\\\" is"), sentences("'\"'; say(\"it's \\\"so it\\\" is\")"));
        assertTrue(sentences("/** a \"line of text\" */ say(\"command.grid\", \"%s is\")")
                .isEmpty());
    }
}
