package fourfold.paper;

import fourfold.words.SafeText;
import fourfold.words.Words;

/**
 * The frame of a printed page: one HTML file that needs nothing else. Its styles are inside, it has no script and points
 * nowhere. Black on white, readable on a printer without colour.
 */
final class HtmlPage {
    private final StringBuilder html = new StringBuilder();

    HtmlPage(Words words, Paper paper, String title) {
        html.append("<!DOCTYPE html>\n<html lang=\"")
                .append(words.language().toLanguageTag())
                .append("\">\n<head>\n<meta charset=\"utf-8\">\n<title>")
                .append(escaped(title))
                .append("</title>\n<style>\n")
                .append(style(paper))
                .append("</style>\n</head>\n<body>\n");
    }

    private static String style(Paper paper) {
        return """
                @page { size: %s portrait; margin: 12mm; }
                * { box-sizing: border-box; }
                body { margin: 0; font-family: sans-serif; color: #000; background: #fff; }
                section { break-after: page; }
                section:last-child { break-after: auto; }
                h1 { font-size: 14pt; margin: 0 0 4mm; }
                p { font-size: 10pt; margin: 0 0 3mm; }
                table { border-collapse: collapse; }
                td, th { border: 0.3mm solid #000; text-align: center; }
                .cards { width: 100%%; height: %s; table-layout: fixed; }
                .cards tr, .cards td { break-inside: avoid; }
                .cards td { height: 12.5%%; border-style: dashed; border-color: #777; font-size: 24pt; }
                .questions { width: 100%%; border: 0; }
                .questions td { border: 0; text-align: left; font-size: 17pt; height: 11mm; width: 50%%; }
                .questions tr { break-inside: avoid; }
                .line { display: inline-block; width: 22mm; border-bottom: 0.3mm solid #000; }
                .square { width: 100%%; table-layout: fixed; margin-bottom: 6mm; }
                .square td, .square th { height: 10mm; font-size: 12pt; }
                .square th { background: #eee; }
                .small td, .small th { font-size: 9pt; padding: 0.8mm 2mm; }
                svg { display: block; width: 100%%; margin-bottom: 4mm; }
                .whole { text-align: center; }
                .whole h1 { font-size: 30pt; margin-top: 10mm; }
                .whole p { font-size: 14pt; }
                .foot { font-size: 8pt; color: #444; }
                """.formatted(paper.word(), paper == Paper.A4 ? "255mm" : "238mm");
    }

    /** Adds HTML as it is. */
    HtmlPage add(String markup) {
        html.append(markup);
        return this;
    }

    /** Adds an element that holds nothing but this text. */
    HtmlPage element(String tag, String text) {
        return add("<" + tag + ">").add(escaped(text)).add("</" + tag + ">");
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
