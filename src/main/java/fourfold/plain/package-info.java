// SPDX-License-Identifier: Apache-2.0
/**
 * The second face, line by line, for screen readers, braille and terminals that can't draw: the drill, the grid, a
 * family, the plan.
 *
 * <p>Begin with {@link fourfold.plain.PlainDrill}; {@link fourfold.plain.GridText} and
 * {@link fourfold.plain.FamilyText} are what a parent prints.
 *
 * <p>May use the pure rooms, words, terminal's clock and home. Each line makes sense when heard alone, with signs in
 * words; nothing is drawn.
 */
@NullMarked
package fourfold.plain;

import org.jspecify.annotations.NullMarked;
