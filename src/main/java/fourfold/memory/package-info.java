/**
 * [pure] How a trace is learned and how it fades: what is remembered, how fast it would be answered, and how sure that
 * is. Time is an argument; nothing here looks at a clock.
 *
 * <p>Start with {@link fourfold.memory.Memory}, one child's whole memory. {@link fourfold.memory.Parameters} holds every
 * constant with its unit, range and source. {@link fourfold.memory.MotorTime} tells how fast the child's hands are.
 */
@NullMarked
package fourfold.memory;

import org.jspecify.annotations.NullMarked;
