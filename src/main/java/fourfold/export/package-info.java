/**
 * [text] What leaves the program: answers as CSV, the grid and a family as text and JSON. Everything is written to an
 * {@link java.lang.Appendable} or a writer that the caller owns.
 */
@NullMarked
package fourfold.export;

import org.jspecify.annotations.NullMarked;
