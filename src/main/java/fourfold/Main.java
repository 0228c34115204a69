// SPDX-License-Identifier: Apache-2.0
package fourfold;

import fourfold.commands.Fourfold;

/** Hands the arguments to the commands and ends with their exit code. */
public final class Main {
    private Main() {}

    /** Runs the program. */
    public static void main(String[] arguments) {
        System.exit(Fourfold.run(arguments));
    }
}
