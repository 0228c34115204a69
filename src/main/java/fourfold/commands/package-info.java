/**
 * [options] The command line, one command a file: parse, open, call, write. The only part that puts the others together.
 *
 * <p>Start with {@link fourfold.commands.App}.
 */
@NullMarked
package fourfold.commands;

import org.jspecify.annotations.NullMarked;
