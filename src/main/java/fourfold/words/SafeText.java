// SPDX-License-Identifier: Apache-2.0
package fourfold.words;

/** Text from people made safe to print: no control characters, so that no name can steer a terminal. */
public final class SafeText {
    private SafeText() {}

    /** The text with every control and format character replaced by a question mark. */
    public static String safe(String text) {
        StringBuilder safe = new StringBuilder(text.length());
        for (int i = 0; i < text.length(); i += Character.charCount(text.codePointAt(i))) {
            int c = text.codePointAt(i);
            int type = Character.getType(c);
            boolean unfit = Character.isISOControl(c) || type == Character.FORMAT || type == Character.SURROGATE;
            safe.appendCodePoint(unfit ? '?' : c);
        }
        return safe.toString();
    }
}
