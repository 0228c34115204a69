// SPDX-License-Identifier: Apache-2.0
/**
 * The application: a home that is open, and what can be done in it, one use case a class.
 *
 * <p>Begin with {@link fourfold.home.Home}, which opens the family's file, gives the use cases and closes it; then
 * {@link fourfold.home.Practice}, a drill as the file sees it, and {@link fourfold.home.PracticeRecords}, what is
 * recorded. {@link fourfold.home.Environment} is what surrounds the program (streams, variables, clock),
 * {@link fourfold.home.FileWork} the thread on which all pages use the file.
 *
 * <p>May use the pure rooms, terminal's clock, store, upkeep and records. Here the clock is read and effects are
 * performed. No sentence, no SQL, no drawing and no command-line option.
 */
@NullMarked
package fourfold.home;

import org.jspecify.annotations.NullMarked;
