// SPDX-License-Identifier: Apache-2.0
/**
 * How a trace is learned and fades: whether it would be recalled now, how fast, and how sure that is. Also how fast
 * the child's hands are, so that thinking and typing are kept apart.
 *
 * <p>Begin with {@link fourfold.memory.Memory}, one child's whole memory. {@link fourfold.memory.Parameters} holds
 * every constant with its unit, range and source; {@link fourfold.memory.Equations} the published formulas;
 * {@link fourfold.memory.MotorTime} the hands.
 *
 * <p>May use facts and log. Time is an argument; no clock, no chance, no input or output.
 */
@NullMarked
package fourfold.memory;

import org.jspecify.annotations.NullMarked;
