package fourfold.planted.arrows.home;

import fourfold.plain.GridText;

/** Breaks the map on purpose: home does not know the plain face. */
public final class Backwards {
    private Backwards() {}

    public static boolean isThere(GridText it) {
        return it != null;
    }
}
