/**
 * Keys, cells, colours, the window, the clock, and the loop that shows one page after another. It knows nothing of
 * drills or children.
 *
 * <p>Begin with {@link fourfold.terminal.Page} and {@link fourfold.terminal.PageLoop}; a page draws on a
 * {@link fourfold.terminal.Picture}. {@link fourfold.terminal.TerminalSession} opens the terminal, hands out stamped
 * keys and leaves it as it was found. {@link fourfold.terminal.RawTerminal} mends what the library does wrong in a
 * Unix terminal.
 *
 * <p>May use log, for the surface on which an answer was typed. Only this room and screens may use the terminal
 * library.
 */
@NullMarked
package fourfold.terminal;

import org.jspecify.annotations.NullMarked;
