// SPDX-License-Identifier: Apache-2.0
package fourfold.commands;

import fourfold.words.Words;
import picocli.CommandLine.TypeConversionException;

/** A word on the command line that can't be read, as the key of a text and what fills its gaps. */
final class WrongValue extends TypeConversionException {
    private static final long serialVersionUID = 1L;

    private final String key;
    private final transient Object[] gaps;

    WrongValue(String key, Object... gaps) {
        super(key);
        this.key = key;
        this.gaps = gaps;
    }

    String in(Words words) {
        return words.say(key, gaps);
    }
}
