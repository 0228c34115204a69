// SPDX-License-Identifier: Apache-2.0
/**
 * Open formats: the answer log as CSV, learning-record statements, and JSON for grid, families, plan and history.
 *
 * <p>Begin with {@link fourfold.records.AnswersCsv}, the one format that is also read; then
 * {@link fourfold.records.ProgressJson} and {@link fourfold.records.Statements}.
 *
 * <p>May use facts, log, memory, progress, insight and outlook. Names of columns and fields never change with the
 * language. It writes to what it is handed and opens no file.
 */
@NullMarked
package fourfold.records;

import org.jspecify.annotations.NullMarked;
