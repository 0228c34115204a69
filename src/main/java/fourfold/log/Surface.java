package fourfold.log;

/** Where the answer was typed; hands are not equally fast everywhere. */
public enum Surface {
    /** A text terminal. */
    TERMINAL,
    /** A desktop window. */
    WINDOW,
    /** Lines without drawing, for screen readers, braille lines and pipes. */
    PLAIN;

    /** The word used in files. */
    public String word() {
        return name().toLowerCase(java.util.Locale.ROOT);
    }

    /**
     * The surface a file's word names.
     *
     * @throws IllegalArgumentException if there is none
     */
    public static Surface ofWord(String word) {
        for (Surface surface : values()) {
            if (surface.word().equals(word)) {
                return surface;
            }
        }
        throw new IllegalArgumentException("surface must be terminal, window or plain, not \"" + word + "\"");
    }
}
