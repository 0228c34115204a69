// SPDX-License-Identifier: Apache-2.0
/**
 * What a parent is told, as numbers: the grid, one family's record, rates and trends, weeks, advice, and which facts
 * to put on paper. Each number is worked out here and nowhere else, so that screen, plain lines, paper and JSON
 * agree.
 *
 * <p>Begin with {@link fourfold.insight.Grid} and {@link fourfold.insight.FamilyRecord};
 * {@link fourfold.insight.Advice} chooses the one sentence, {@link fourfold.insight.Trend} and
 * {@link fourfold.insight.Spread} are the statistics.
 *
 * <p>May use facts, log, memory and progress. No sentence is written here, and nothing here changes what is asked
 * next. No clock, no chance, no input or output.
 */
@NullMarked
package fourfold.insight;

import org.jspecify.annotations.NullMarked;
