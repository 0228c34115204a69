// SPDX-License-Identifier: Apache-2.0
package fourfold.terminal;

import java.text.Bidi;

/**
 * Puts letters into the order in which they are drawn. A sheet of single cells has one direction; a name that runs
 * from right to left is turned in place, so that it reads rightly and nothing beside it moves (Unicode Standard Annex 9).
 * What lies between a first strong isolate and its end is turned by itself.
 */
final class BidiText {
    private static final char ISOLATE = '\u2068';
    private static final char END = '\u2069';
    private static final String PAIRS = "()[]{}<>«»‹›";

    private BidiText() {}

    /** The text as it is drawn, left to right. */
    static String order(String text) {
        char[] letters = text.toCharArray();
        if (!Bidi.requiresBidi(letters, 0, letters.length)) {
            return text;
        }
        StringBuilder ordered = new StringBuilder();
        int from = 0;
        while (from < text.length()) {
            int isolate = text.indexOf(ISOLATE, from);
            int end = isolate < 0 ? -1 : text.indexOf(END, isolate);
            if (end < 0) {
                return ordered.append(turned(text.substring(from))).toString();
            }
            ordered.append(turned(text.substring(from, isolate))).append(turned(text.substring(isolate + 1, end)));
            from = end + 1;
        }
        return ordered.toString();
    }

    private static String turned(String text) {
        if (!Bidi.requiresBidi(text.toCharArray(), 0, text.length())) {
            return text;
        }
        Bidi bidi = new Bidi(text, Bidi.DIRECTION_LEFT_TO_RIGHT);
        int runs = bidi.getRunCount();
        byte[] levels = new byte[runs];
        Object[] parts = new Object[runs];
        for (int i = 0; i < runs; i++) {
            levels[i] = (byte) bidi.getRunLevel(i);
            String part = text.substring(bidi.getRunStart(i), bidi.getRunLimit(i));
            parts[i] = levels[i] % 2 == 1 ? backwards(part) : part;
        }
        Bidi.reorderVisually(levels, 0, parts, 0, runs);
        StringBuilder ordered = new StringBuilder();
        for (Object part : parts) {
            ordered.append(part);
        }
        return ordered.toString();
    }

    private static String backwards(String part) {
        StringBuilder turned = new StringBuilder();
        for (int i = part.length() - 1; i >= 0; i--) {
            int pair = PAIRS.indexOf(part.charAt(i));
            turned.append(pair < 0 ? part.charAt(i) : PAIRS.charAt(pair ^ 1));
        }
        return turned.toString();
    }
}
