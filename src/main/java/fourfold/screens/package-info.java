// SPDX-License-Identifier: Apache-2.0
/**
 * What the child's and the parent's pages share: pictures of facts, tall digits, shapes and colours of the levels, and
 * how pages ask the home for something.
 *
 * <p>Begin with {@link fourfold.screens.KeyPage}, a page that hears keys, and {@link fourfold.screens.HomeEffect}, the
 * records that alone read or write, on the file's thread; {@link fourfold.screens.HomePerformer} does them. Then
 * {@link fourfold.screens.FactPicture} and {@link fourfold.screens.BigDigits}. The pages are in child and parent.
 *
 * <p>May use facts, log, memory, progress, drill, insight, words, terminal and home. Texts come from words, numbers
 * from insight; only this room, its two sub-rooms and terminal draw.
 */
@NullMarked
package fourfold.screens;

import org.jspecify.annotations.NullMarked;
