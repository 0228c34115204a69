/**
 * [terminal] The only part that draws: the terminal or window, its keys, and the pictures shown there.
 *
 * <p>Start with {@link fourfold.terminal.TerminalSession}: it opens the place where pictures are shown, hands out stamped keys and
 * leaves the terminal as it was found. Under it, {@link fourfold.terminal.RawTerminal} cures what the library does wrong in
 * a Unix terminal; {@link fourfold.terminal.KeyDecoder}, {@link fourfold.terminal.PasteGuard},
 * {@link fourfold.terminal.Abilities} and {@link fourfold.screens.BigDigits} are plain calculations without a terminal.
 */
@NullMarked
package fourfold.screens;

import org.jspecify.annotations.NullMarked;
