/**
 * What the child's and the parent's pages share: pictures of facts, tall digits, shapes and colours of the levels.
 *
 * <p>Begin with {@link fourfold.screens.FactPicture}, {@link fourfold.screens.BigDigits} and
 * {@link fourfold.screens.Shades}. The pages themselves are in the rooms child and parent.
 *
 * <p>May use facts, log, memory, progress, drill, insight, words, terminal and home. Texts come from words, numbers
 * from insight; only this room, its two sub-rooms and terminal draw.
 */
@NullMarked
package fourfold.screens;

import org.jspecify.annotations.NullMarked;
