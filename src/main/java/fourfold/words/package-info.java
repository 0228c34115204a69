/** Words. */
@NullMarked
package fourfold.words;

import org.jspecify.annotations.NullMarked;
