// SPDX-License-Identifier: Apache-2.0
package fourfold.paper;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.commands.CommandRun;
import fourfold.commands.Sample;
import fourfold.insight.PageKind;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Guards against paper that is ahead of the home's calendar: the sign of a division stands on no page before its date. The
 * clock stands at Monday, 2 March 2026, and the child has met most families. The report alone tells what was asked in the
 * past as it was asked then.
 */
class SignOnPaperTest {
    private static final Pattern DIVIDED_BY = Pattern.compile("÷ (\\d+)");
    private static final Pattern HIDDEN = Pattern.compile("\\d+ × (\\? |\\d+ )?= \\d+");

    @TempDir
    private Path folder;

    private Path file = Path.of("");

    @BeforeEach
    void sample() {
        file = folder.resolve("sample.db");
        Sample.fill(file);
    }

    /** England's order brings the division of table 2 in week 5 and of the others later; that of table 1 waits for a word. */
    private void begun(String start) {
        CommandRun run = CommandRun.of(
                file, "calendar", "--start", start, "--begin", "england", "--table", "1", "--divide", "later");
        assertEquals(0, run.code(), run.err());
    }

    private static List<String> pages() {
        List<String> pages = new ArrayList<>();
        for (PageKind kind : PageKind.values()) {
            if (kind.hasQuestions()) {
                pages.add(kind.key() + " --tables 2,7 --asked quotients");
            } else if (kind.hasFamilies()) {
                pages.add(kind.key() + " --tables 2");
                pages.add(kind.key() + " --tables 7");
            } else if (kind != PageKind.REPORT && kind != PageKind.WHOLE) {
                pages.add(kind.key());
            }
        }
        return pages;
    }

    private String printed(String page) {
        String[] words = Stream.concat(Stream.of("print"), Stream.of((page + " --output -").split(" ")))
                .toArray(String[]::new);
        CommandRun run = CommandRun.of(file, words);
        assertEquals(0, run.code(), run.err());
        Document html = Jsoup.parse(run.out());
        return html.body().text().replaceAll("[\\h ]+", " ");
    }

    @Test
    void noPageShowsTheSignBeforeItsDate() {
        begun("2026-02-09");
        for (String page : pages()) {
            String told = printed(page);
            assertEquals(-1, told.indexOf('÷'), page + ": " + told);
            if (page.contains("--tables 7") && !page.startsWith("picturecards")) {
                assertTrue(HIDDEN.matcher(told).find(), "no factor to find: " + page + ": " + told);
            }
        }
    }

    @Test
    void onItsDateTheSignIsThereAndNoOther() {
        begun("2026-02-02");
        Set<String> with = new TreeSet<>();
        for (String page : pages()) {
            Matcher signs = DIVIDED_BY.matcher(printed(page));
            while (signs.find()) {
                assertEquals("2", signs.group(1), page);
                with.add(page);
            }
        }
        for (String kind :
                List.of("practice", "minute", "life", "cards", "squarecards", "squares", "pictures", "pairs")) {
            assertTrue(with.stream().anyMatch(page -> page.startsWith(kind + " ")), kind + " is not in " + with);
        }
    }
}
