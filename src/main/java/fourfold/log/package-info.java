// SPDX-License-Identifier: Apache-2.0
/**
 * What was recorded, and nothing that follows from it: answers, drill sessions, children, and what a parent did.
 * Records are only ever added; everything else is worked out from them.
 *
 * <p>Begin with {@link fourfold.log.Answer}, then {@link fourfold.log.DrillSession} and
 * {@link fourfold.log.ParentAction} with its {@link fourfold.log.ActionRecord}. {@link fourfold.log.Purpose} says
 * why a question was asked, and so what its answer counts for; {@link fourfold.log.RecordsFailure} what went wrong,
 * and {@link fourfold.log.InvalidValue} what a value can't be.
 *
 * <p>May use facts. No clock, no chance, no input or output: what is read and written is the store's business.
 */
@NullMarked
package fourfold.log;

import org.jspecify.annotations.NullMarked;
