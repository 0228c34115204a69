package fourfold.planted.only_main_uses_the_commands.commands;

/** A command; see the class beside the store that uses it. */
public final class Order {
    private Order() {}

    public static int number() {
        return 1;
    }
}
