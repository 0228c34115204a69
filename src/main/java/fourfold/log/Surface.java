// SPDX-License-Identifier: Apache-2.0
package fourfold.log;

import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Where the answer was given; hands are not equally fast everywhere. */
public enum Surface {
    /** A text terminal. */
    TERMINAL,
    /** A desktop window. */
    WINDOW,
    /** Lines without drawing, for screen readers, braille lines and pipes. */
    PLAIN,
    /** A printed page, entered afterwards. */
    PAPER,
    /** Said aloud, entered by who heard it. */
    ALOUD;

    /** The word used in files. */
    public String word() {
        return name().toLowerCase(java.util.Locale.ROOT);
    }

    /**
     * The surface a file's word names.
     *
     * @throws InvalidValue if there is none
     */
    public static Surface ofWord(String word) {
        for (Surface surface : values()) {
            if (surface.word().equals(word)) {
                return surface;
            }
        }
        throw new InvalidValue(
                Reason.SURFACE, Stream.of(values()).map(Surface::word).collect(Collectors.joining(", ")), word);
    }
}
