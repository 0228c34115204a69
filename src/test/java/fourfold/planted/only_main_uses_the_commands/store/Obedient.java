package fourfold.planted.only_main_uses_the_commands.store;

import fourfold.planted.only_main_uses_the_commands.commands.Order;

/** Breaks the map on purpose: only the program's beginning uses the commands. */
public final class Obedient {
    private Obedient() {}

    public static int number() {
        return Order.number();
    }
}
