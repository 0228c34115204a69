package fourfold.export;

/** Text from people made safe to print: no control characters, so that no name can steer a terminal. */
public final class PlainText {
    private PlainText() {}

    /** The text with every control and format character replaced by a question mark. */
    public static String safe(String text) {
        StringBuilder safe = new StringBuilder(text.length());
        text.codePoints().forEach(c -> {
            int type = Character.getType(c);
            boolean unfit = Character.isISOControl(c) || type == Character.FORMAT || type == Character.SURROGATE;
            safe.appendCodePoint(unfit ? '?' : c);
        });
        return safe.toString();
    }
}
