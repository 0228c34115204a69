// SPDX-License-Identifier: Apache-2.0
package fourfold.plain;

/** Signs of arithmetic where nothing beyond ASCII can be printed. */
public final class Signs {
    private Signs() {}

    /**
     * The text as it can be printed.
     *
     * @param unicode false to write × as x, · as * and ÷ as /
     */
    public static String printable(String text, boolean unicode) {
        return unicode ? text : text.replace('×', 'x').replace('·', '*').replace('÷', '/');
    }
}
