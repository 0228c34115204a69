// SPDX-License-Identifier: Apache-2.0
package fourfold.words;

import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;

/** The languages that there are words of: those whose files are there. */
public final class Languages {
    private Languages() {}

    /** All of them as ISO 639 codes, English first. */
    public static List<String> all() {
        return Stream.concat(
                        Stream.of("en"), Stream.of(Locale.getISOLanguages()).filter(Languages::isThere))
                .toList();
    }

    /** Whether there is a file of a language other than English. */
    static boolean isThere(String language) {
        return Languages.class.getResource("words_" + language + ".properties") != null;
    }
}
