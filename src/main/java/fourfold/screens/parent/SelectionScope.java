// SPDX-License-Identifier: Apache-2.0
package fourfold.screens.parent;

import fourfold.facts.Families;
import fourfold.facts.Family;
import java.util.List;
import java.util.Locale;

/** How far the parent's keys reach: one family, its whole table, or all families. */
enum SelectionScope {
    FAMILY,
    TABLE,
    ALL;

    /** The next one, by the same key. */
    SelectionScope next() {
        return values()[(ordinal() + 1) % values().length];
    }

    /** Its name in texts. */
    String key() {
        return "grid.reach." + name().toLowerCase(Locale.ROOT);
    }

    /** The families it reaches from the chosen one. */
    List<Family> families(Family chosen) {
        return switch (this) {
            case FAMILY -> List.of(chosen);
            case TABLE -> Families.inTable(chosen.high());
            case ALL -> Families.all();
        };
    }
}
