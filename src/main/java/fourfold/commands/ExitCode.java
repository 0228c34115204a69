// SPDX-License-Identifier: Apache-2.0
package fourfold.commands;

/** How the program ends. */
final class ExitCode {
    /** All done. */
    static final int DONE = 0;

    /** The world failed: a file, the disk, the terminal. */
    static final int WORLD = 1;

    /** The command was written wrongly. */
    static final int USAGE = 2;

    private ExitCode() {}
}
