// SPDX-License-Identifier: Apache-2.0
package fourfold.planted.only_commands_read_options.screens;

import picocli.CommandLine;

/** Breaks the map on purpose: only commands read options. */
public final class Flags {
    private Flags() {}

    public static String name(CommandLine line) {
        return line.getCommandName();
    }
}
