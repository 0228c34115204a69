// SPDX-License-Identifier: Apache-2.0
package fourfold.paper;

import java.util.Locale;

/** A size of paper. */
public enum Paper {
    /** ISO 216: 210 by 297 mm. */
    A4,
    /** US Letter: 8.5 by 11 inches. */
    LETTER;

    /** Its name in style sheets (CSS Paged Media) and options. */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }
}
