package fourfold.screens;

import fourfold.facts.Deed;

/** Deeds in plain words. */
final class Deeds {
    private Deeds() {}

    static String told(Deed deed) {
        if (deed instanceof Deed.Focus focus) {
            return "focus on " + focus.family();
        } else if (deed instanceof Deed.Hold hold) {
            return "hold of " + hold.family();
        } else if (deed instanceof Deed.Release release) {
            return "release of " + release.family();
        } else if (deed instanceof Deed.Reset reset) {
            return "reset of " + reset.family();
        } else if (deed instanceof Deed.OpenTable open) {
            return "opening of table " + open.table();
        } else if (deed instanceof Deed.CloseTable close) {
            return "closing of table " + close.table();
        } else if (deed instanceof Deed.Order) {
            return "order of tables";
        } else if (deed instanceof Deed.Choose choose) {
            return "setting " + choose.setting() + " " + choose.chosen();
        }
        return "undo";
    }
}
