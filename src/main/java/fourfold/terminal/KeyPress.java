// SPDX-License-Identifier: Apache-2.0
package fourfold.terminal;

import com.googlecode.lanterna.input.KeyStroke;

/**
 * A key and the moment it reached the program. The library's own event time is not used: it is stale for Enter, Tab,
 * Backspace and Escape.
 *
 * @param key which key
 * @param nanos when it arrived, on the scale of {@link TerminalSession#now()}
 */
public record KeyPress(KeyStroke key, long nanos) {}
