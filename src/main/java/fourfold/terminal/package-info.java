// SPDX-License-Identifier: Apache-2.0
/**
 * Keys, cells, colours, the window, the clock, and the loop that shows one page after another. It knows nothing of
 * drills or children.
 *
 * <p>Begin with {@link fourfold.terminal.Page}, a value that a {@link fourfold.terminal.PageEvent} turns into the next
 * one and {@link fourfold.terminal.PageEffect}s. {@link fourfold.terminal.PageLoop} tells it events, shows its
 * {@link fourfold.terminal.Picture} and goes from page to page; what a page asks of the world outside a
 * {@link fourfold.terminal.Performer} does. {@link fourfold.terminal.TerminalSession} opens the terminal, hands out
 * stamped keys and leaves it as it was found; {@link fourfold.terminal.RawTerminal} mends what the library does wrong.
 * {@link fourfold.terminal.Theme} gives inks their colours; {@link fourfold.terminal.Ground} asks the terminal which fit.
 * {@link fourfold.terminal.DesktopWindow} is the window, which {@link fourfold.terminal.CellPainter} paints without seams.
 *
 * <p>May use log, for the surface on which an answer was typed. Only this room and screens may use the terminal
 * library.
 */
@NullMarked
package fourfold.terminal;

import org.jspecify.annotations.NullMarked;
