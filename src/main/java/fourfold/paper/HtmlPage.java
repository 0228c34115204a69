// SPDX-License-Identifier: Apache-2.0
package fourfold.paper;

import fourfold.insight.DrillRates;
import fourfold.words.SafeText;
import fourfold.words.Words;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Objects;

/**
 * The frame of a printed document: one HTML file that needs nothing else. Its styles are inside, it has no script and
 * points nowhere. Each sheet of paper is a section.
 */
final class HtmlPage {
    private final StringBuilder html = new StringBuilder();
    private final Words words;

    HtmlPage(Words words, Layout layout, String title) {
        this.words = words;
        html.append("<!DOCTYPE html>\n<html lang=\"")
                .append(words.language().toLanguageTag())
                .append("\">\n<head>\n<meta charset=\"utf-8\">\n<title>")
                .append(escaped(title))
                .append("</title>\n<style>\n")
                .append(String.format(
                        Locale.ROOT,
                        "@page { size: %s portrait; margin: %dmm; }\n:root { --width: %.1fmm; --height: %.1fmm; }\n",
                        layout.paper().word(),
                        Layout.MARGIN,
                        layout.width(),
                        layout.height()))
                .append(styles())
                .append("</style>\n</head>\n<body>\n");
    }

    private static String styles() {
        try (InputStream css = Objects.requireNonNull(HtmlPage.class.getResourceAsStream("page.css"))) {
            return new String(css.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Adds HTML as it is. */
    HtmlPage add(String markup) {
        html.append(markup);
        return this;
    }

    /** Adds HTML with numbers in it. */
    HtmlPage add(String markup, Object... gaps) {
        return add(String.format(Locale.ROOT, markup, gaps));
    }

    /** Adds an element that holds nothing but this text. */
    HtmlPage element(String tag, String text) {
        return element(tag, "", text);
    }

    /** Adds an element of a class that holds nothing but this text. */
    HtmlPage element(String tag, String kind, String text) {
        String named = kind.isEmpty() ? "" : " class=\"" + kind + "\"";
        return add("<" + tag + named + ">").add(escaped(text)).add("</" + tag + ">");
    }

    /** Begins a sheet. */
    HtmlPage sheet(String kind) {
        return add("<section" + (kind.isEmpty() ? "" : " class=\"" + kind + "\"") + ">\n");
    }

    /** A sheet's head: what it is, whose, of which day, and its number if it has one. */
    HtmlPage head(String title, String name, String day, int number) {
        add("<header>")
                .element("h1", title)
                .add(" ")
                .element("span", name)
                .add(" ")
                .element("span", day);
        if (number > 0) {
            add(" ").element("span", "number", words.say("paper.number", number));
        }
        return add("</header>\n");
    }

    /** The published ranges of digits correct a minute, and whose they are, in one paragraph. */
    HtmlPage ranges() {
        add("<p>");
        for (DrillRates.Range range : DrillRates.WRITTEN) {
            DrillRates.Grades years = range.grades();
            add(escaped(words.say("paper.range", years.first(), years.last(), range.low(), range.high())))
                    .add(" ");
        }
        return add(escaped(words.say("paper.range.source"))).add("</p>\n");
    }

    /** A sheet's foot, and its end. */
    HtmlPage foot(String left, String right) {
        return add("<footer>")
                .element("span", left)
                .add(" ")
                .element("span", right)
                .add("</footer>\n</section>\n");
    }

    /** The whole file. */
    String closed() {
        return html.append("</body>\n</html>\n").toString();
    }

    /** A text that can't be taken for markup. */
    static String escaped(String text) {
        return SafeText.safe(text)
                .replace("&", "&amp;")
                .replace("<", "&lt;")
                .replace(">", "&gt;")
                .replace("\"", "&quot;");
    }
}
