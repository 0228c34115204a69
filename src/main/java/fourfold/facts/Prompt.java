// SPDX-License-Identifier: Apache-2.0
package fourfold.facts;

/** What a child is asked to type a number for: a question, one with a factor hidden, or a number shown to be copied. */
public sealed interface Prompt permits Question, MissingFactor, NumberToCopy {
    /** The number that is right, 1 to 100. */
    int expected();
}
