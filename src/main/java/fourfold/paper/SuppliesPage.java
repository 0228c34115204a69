package fourfold.paper;

import fourfold.words.Words;

/** What the pages and games of the coming weeks need. */
final class SuppliesPage {
    private static final int THINGS = 7;

    private SuppliesPage() {}

    static void draw(HtmlPage page, Words words) {
        page.sheet("").head(words.say("paper.supplies.title"), "", "", 0);
        page.element("p", "how", words.say("paper.supplies.how")).add("<ul class=\"list\">\n");
        for (int thing = 1; thing <= THINGS; thing++) {
            page.element("li", words.say("paper.supplies." + thing)).add("\n");
        }
        page.add("</ul>\n").foot(words.say("paper.supplies.foot"), "");
    }
}
