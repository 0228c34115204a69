// SPDX-License-Identifier: Apache-2.0
/**
 * Care for the file: backup, restore, verify, salvage, merge, and the folder in which two computers meet. It also is the
 * border for files from elsewhere: {@link fourfold.upkeep.ForeignFile} is the one door by which they come in, and what they
 * hold is checked value by value before it is believed.
 *
 * <p>Begin with {@link fourfold.upkeep.Backups}, {@link fourfold.upkeep.Verification} and
 * {@link fourfold.upkeep.Merge}.
 *
 * <p>May use facts, log and store, and speaks SQL. A damaged or foreign file is only ever read, and the family's
 * file is changed all or nothing. What happened is returned as data, never as a sentence.
 */
@NullMarked
package fourfold.upkeep;

import org.jspecify.annotations.NullMarked;
