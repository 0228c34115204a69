// SPDX-License-Identifier: Apache-2.0
/**
 * The command line: one command a class, the options they share, and the start of the program.
 *
 * <p>Begin with {@link fourfold.commands.Fourfold}, which runs a command line and turns every failure into one line
 * and an exit code, and {@link fourfold.commands.App}, the program without a command.
 *
 * <p>May use the rooms below it, but neither store nor the choice of questions. The only room that knows picocli. A
 * command parses, opens a home, calls one use case and prints what words make of it.
 */
@NullMarked
package fourfold.commands;

import org.jspecify.annotations.NullMarked;
