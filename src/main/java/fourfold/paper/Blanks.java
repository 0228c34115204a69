// SPDX-License-Identifier: Apache-2.0
package fourfold.paper;

import fourfold.words.Words;

/** Room to write into. */
final class Blanks {
    private Blanks() {}

    /** How many were right, how long it took, and the day it was done. */
    static void score(HtmlPage page, int of, Words words) {
        page.element("span", words.say("paper.score", of)).add(" ");
        page.element("span", words.say("paper.time")).add(" ");
        page.element("span", words.say("paper.done"));
    }
}
