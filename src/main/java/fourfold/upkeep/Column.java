// SPDX-License-Identifier: Apache-2.0
package fourfold.upkeep;

import fourfold.log.ChildName;
import org.jspecify.annotations.Nullable;

/**
 * What a column of a file from elsewhere may hold.
 *
 * @param name its name
 * @param text whether text, or else a whole number
 * @param nullable whether it may hold nothing
 * @param longest the most characters of a text
 */
record Column(String name, boolean text, boolean nullable, int longest) {
    static Column number(String name) {
        return new Column(name, false, false, 0);
    }

    static Column text(String name, int longest) {
        return new Column(name, true, false, longest);
    }

    Column orNull() {
        return new Column(name, text, true, longest);
    }

    /** Whether it may hold this value, as the database library gives it. */
    boolean admits(@Nullable Object value) {
        if (value == null) {
            return nullable;
        }
        return text
                ? value instanceof String written
                        && written.length() <= longest
                        && written.codePoints().noneMatch(ChildName::isControl)
                : value instanceof Integer || value instanceof Long;
    }
}
