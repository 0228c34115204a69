/**
 * [terminal] The only part that draws: the terminal or window, its keys, and the pictures shown there.
 *
 * <p>Start with {@link fourfold.screens.Stage}: it opens the place where pictures are shown, hands out stamped keys and
 * leaves the terminal as it was found. Under it, {@link fourfold.screens.RawTerminal} cures what the library does wrong in
 * a Unix terminal; {@link fourfold.screens.KeyDecoder}, {@link fourfold.screens.PasteGuard},
 * {@link fourfold.screens.Abilities} and {@link fourfold.screens.BigDigits} are plain calculations without a terminal.
 */
@NullMarked
package fourfold.screens;

import org.jspecify.annotations.NullMarked;
