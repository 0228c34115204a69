/** [terminal] The only part that draws. */
@NullMarked
package fourfold.screens;

import org.jspecify.annotations.NullMarked;
