// SPDX-License-Identifier: Apache-2.0
package fourfold.paper;

import fourfold.facts.Families;
import fourfold.facts.Operation;
import fourfold.words.Words;

/** The table of all products, blank on the first page and filled on the second. */
final class TablePage {
    private TablePage() {}

    static void draw(HtmlPage page, Words words) {
        square(page, false, words);
        square(page, true, words);
    }

    private static void square(HtmlPage page, boolean filled, Words words) {
        page.sheet("").head(words.say(filled ? "paper.table.filled" : "paper.table.blank"), "", "", 0);
        page.element("p", "how", words.say(filled ? "paper.table.read" : "paper.table.how"));
        page.add("<table class=\"square\">\n<tr>").element("th", Character.toString(words.sign(Operation.MULTIPLY)));
        for (int n = 1; n <= Families.LARGEST_FACTOR; n++) {
            page.element("th", Integer.toString(n));
        }
        page.add("</tr>\n");
        for (int row = 1; row <= Families.LARGEST_FACTOR; row++) {
            page.add("<tr>").element("th", Integer.toString(row));
            for (int n = 1; n <= Families.LARGEST_FACTOR; n++) {
                page.element("td", filled ? Integer.toString(row * n) : "");
            }
            page.add("</tr>\n");
        }
        page.add("</table>\n").foot("", "");
    }
}
