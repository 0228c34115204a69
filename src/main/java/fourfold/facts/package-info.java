// SPDX-License-Identifier: Apache-2.0
/**
 * Arithmetic: operations, facts, families of facts, questions, and the traces in which a child remembers them.
 * Nothing here knows a child, a time or an answer.
 *
 * <p>Begin with {@link fourfold.facts.Family} (6 × 7, 7 × 6, 42 ÷ 6 and 42 ÷ 7 are one family) and
 * {@link fourfold.facts.Families}, which knows all 55; then {@link fourfold.facts.Question} and
 * {@link fourfold.facts.Trace}.
 *
 * <p>This is the ground floor: it uses no other room. No clock, no chance, no input or output.
 */
@NullMarked
package fourfold.facts;

import org.jspecify.annotations.NullMarked;
