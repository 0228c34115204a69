// SPDX-License-Identifier: Apache-2.0
/**
 * Keeps every child, drill, answer and action in one SQLite file: opens it, adds to it, reads it.
 *
 * <p>Begin with {@link fourfold.store.Store}, then {@link fourfold.store.StoreFile}, which opens the file;
 * {@link fourfold.store.Journal} says what keeps it whole, {@link fourfold.store.DataPath} where it lives.
 *
 * <p>May use facts and log. Rows are only added, one durable transaction an answer. Only this room and upkeep speak
 * SQL. It stores nothing that can be worked out from the log, and writes no sentence.
 */
@NullMarked
package fourfold.store;

import org.jspecify.annotations.NullMarked;
