/**
 * [disk] Keeps every child, drill, answer and act in one file, and is the only part that speaks SQL.
 *
 * <p>Start with {@link fourfold.store.Store}; {@link fourfold.store.DataPath} says where the file lives.
 */
@NullMarked
package fourfold.store;

import org.jspecify.annotations.NullMarked;
