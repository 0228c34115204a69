// SPDX-License-Identifier: Apache-2.0
package fourfold.terminal;

import com.googlecode.lanterna.SGR;
import java.util.EnumSet;

/**
 * What a character is drawn for; a {@link Theme} gives it a colour. Colour never stands alone: levels have a shape of
 * their own, a chosen line is reversed, a strong word is bold.
 */
public enum Ink {
    PLAIN,
    /** Out of the way. */
    QUIET,
    STRONG(SGR.BOLD),
    CHOSEN(SGR.REVERSE),
    /** The five levels, from new to lasting. */
    STEP_0,
    STEP_1,
    STEP_2,
    STEP_3,
    STEP_4;

    @SuppressWarnings("ImmutableEnumChecker") // Nothing here changes it.
    private final EnumSet<SGR> style;

    Ink(SGR... style) {
        this.style = EnumSet.noneOf(SGR.class);
        for (SGR one : style) {
            this.style.add(one);
        }
    }

    EnumSet<SGR> style() {
        return style;
    }
}
